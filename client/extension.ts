/** The extension on the desktop: the server is a process of its own. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { start, stop } from './start.ts';

export function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.cjs');
  return start(context, options => new LanguageClient('platewright', 'Platewright', { module, transport: TransportKind.ipc }, options));
}

export const deactivate = stop;
