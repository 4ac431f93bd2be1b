/** The server in a web worker, when it is loaded. There is no disk: the client reads the files that are used. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { Arrivals } from './arrivals.ts';
import { serve } from './connection.ts';
import { STRATEGY } from './strategy.ts';

/** The scope of the worker. The types of a browser are not among those of this project. */
declare const self: { close(): void };

const arrivals = new Arrivals(new BrowserMessageReader(self));
const connection = createConnection(ProposedFeatures.all, arrivals, new BrowserMessageWriter(self), STRATEGY);
connection.onExit(() => { self.close(); });
serve(connection, arrivals);
