import { RegistrationRequest, type Connection } from 'vscode-languageserver';

/**
 * Asks the client to tell of what a method is about; a client that will not is none the worse for it.
 * The library's own way draws a random id, for which each start would load Node's cryptography: 5 ms of 160. A method that is registered once is an id as well.
 */
export function askToBeTold(connection: Connection, { method }: { method: string }, registerOptions: object): void {
  void connection.sendRequest(RegistrationRequest.type, { registrations: [{ id: method, method, registerOptions }] }).catch(() => undefined);
}
