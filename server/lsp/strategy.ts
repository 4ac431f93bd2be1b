/** How requests that wait for their turn are cancelled: at once, without being computed. */
import { LSPErrorCodes, type ConnectionOptions, type RequestMessage } from 'vscode-languageserver';

export const STRATEGY: ConnectionOptions = {
  connectionStrategy: {
    cancelUndispatched: message => ({ jsonrpc: '2.0', id: (message as RequestMessage).id, error: { code: LSPErrorCodes.RequestCancelled, message: 'Cancelled before its turn came.' } }),
  },
};
