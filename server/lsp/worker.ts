/** The server in a web worker. There is no disk: the client reads the files that are used. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { Arrivals } from './arrivals.ts';
import { serve } from './connection.ts';
import { STRATEGY } from './strategy.ts';

/** The scope of the worker; its types are those of a browser. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0] & { close(): void };

const arrivals = new Arrivals(new BrowserMessageReader(self));
const connection = createConnection(ProposedFeatures.all, arrivals, new BrowserMessageWriter(self), STRATEGY);
connection.onExit(() => { self.close(); });
serve(connection, arrivals);
