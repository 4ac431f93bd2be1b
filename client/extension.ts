/** The extension on the desktop: the server is a process of its own. */
import { workspace, type ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { keptCode } from './kept-code.ts';
import { start, stop } from './start.ts';

export function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.cjs');
  const { version } = context.extension.packageJSON as { version: string };
  return start(context, options => new LanguageClient('platewright', 'Platewright', { module, transport: TransportKind.ipc, options: { env: keptCode(workspace.fs, context.globalStorageUri, version) } }, options));
}

export const deactivate = stop;
