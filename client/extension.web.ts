/** The extension in a browser: the server is a web worker. */
import { Uri, type ExtensionContext } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient, type MessageTransports } from 'vscode-languageclient/browser';
import { start, stop } from './start.ts';

/** The types of a browser are not among those of this project. */
declare const Worker: new (url: string) => { postMessage(message: string): void; terminate(): void };

export function activate(context: ExtensionContext): Promise<void> {
  const folder = `${Uri.joinPath(context.extensionUri, 'dist').toString(true)}/`;
  let worker: InstanceType<typeof Worker> | undefined;
  // A server that is started again is a new worker; the old one may hang. Given the worker itself, the library would use
  // the old one again, and it doesn't know the workers of every host for what they are.
  const begin = (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(`${folder}server.worker.js`);
    worker.postMessage(folder);
    return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  return start(context, options => new LanguageClient('platewright', 'Platewright', begin, options));
}

export const deactivate = stop;
