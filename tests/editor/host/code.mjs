#!/usr/bin/env node
// Stands in for the `code` executable: takes the arguments that runTests() of @vscode/test-electron passes, and runs the suite in the extension
// host of an installed host. Exit code 0: the suite passed.
//   HOST   folder of the installed host
//   HOST_LOG=1   print all that the extension host says, not the suite's lines alone
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from './server.mjs';
import { openWorkbench } from './workbench.mjs';

const LIMIT = 180_000;
const MARK = '::suite:: ';

const option = (name) => path(process.argv.find((arg) => arg.startsWith(`--${name}=`))?.slice(name.length + 3));
const path = (place) => place?.replace(/^file:\/\//, '');

const state = mkdtempSync(join(tmpdir(), 'platewright-host-'));
const server = await startServer(process.env.HOST, state);
const suite = [];
const other = [];
const workbench = await openWorkbench({
  port: server.port,
  folder: path(process.argv.slice(2).find((arg) => !arg.startsWith('--'))),
  extension: option('extensionDevelopmentPath'),
  tests: option('extensionTestsPath'),
  onLog(text) {
    const isSuite = text.startsWith(MARK);
    (isSuite ? suite : other).push(text);
    if (isSuite || process.env.HOST_LOG) console.log(text.replace(MARK, ''));
  },
});
const tooLong = new Promise((resolve) => setTimeout(resolve, LIMIT, new Error(`the suite did not end within ${LIMIT / 1000} s`)).unref());
const result = await Promise.race([workbench.ended, tooLong]);
if (result instanceof Error) console.error(`${result.message}\n${server.log().slice(-2000)}`);
// A suite that did not even start has left its reason among the rest.
if (result !== 0 && suite.length === 0 && !process.env.HOST_LOG) console.error(other.slice(-20).join('\n'));
if (workbench.refused.size > 0) console.error('refused requests to other machines:', [...workbench.refused]);
await workbench.close();
await server.stop();
rmSync(state, { recursive: true, force: true });
process.exit(result === 0 ? 0 : 1);
