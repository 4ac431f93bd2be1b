// npm run test:packages: packs what is shipped, and tries both packages in folders of their own. Prints `packages: N passed, M failed` as its last line.
//   --packed    out/ is of now
//   INSTALLED   the folder of commands of one that is installed already
//   UPDATE=1    writes the lists of packed files anew
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { install, listed, pack, unpack, unpackExtension } from './install.mjs';
import { end, step } from './steps.mjs';

if (!process.argv.includes('--packed')) pack(process.argv.includes('--built'));
const state = realpathSync(mkdtempSync(join(tmpdir(), 'platewright-packages-')));
process.on('exit', () => { rmSync(state, { recursive: true, force: true }); });
const [alone, extension, installed, pages] = ['alone', 'extension', 'installed', 'pages'].map(name => join(state, name));
cpSync('examples', pages, { recursive: true });
const offline = join(state, 'offline.cjs');
cpSync('tests/packages/offline.cjs', offline);
const page = 'whelk-too-long.plate';
// From the README: the object beam of last winter's whelk is 84 mm too long.
const MISMATCH = /\b84 mm\b/;

/** Node itself refuses what lies elsewhere: the program sees its own package, the pages and nothing else, and no network. */
const bounds = (...readable) => [
  process.allowedNodeEnvironmentFlags.has('--permission') ? '--permission' : '--experimental-permission',
  ...[offline, `${pages}/*`, ...readable.map(folder => `${folder}/*`)].map(path => `--allow-fs-read=${path}`), `--allow-fs-write=${pages}/*`, '--no-warnings', '--require', offline,
];
const ENV = { PATH: process.env.PATH, HOME: state, NO_COLOR: '1' };
const run = (cli, readable, ...args) => {
  try { return { code: 0, out: execFileSync(process.execPath, [...bounds(...readable), cli, ...args], { cwd: pages, env: ENV, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] }) }; } catch (error) { return { code: error.status, out: `${error.stdout}${error.stderr}` }; }
};

/** Asks a server in such bounds, as a client over standard input and output does. */
async function serve(program, readable, ask) {
  const child = spawn(process.execPath, [...bounds(...readable), ...program, '--stdio'], { cwd: pages, env: ENV, stdio: ['pipe', 'pipe', 'pipe'] });
  let said = '';
  child.stderr.on('data', text => { said += text; });
  const closed = once(child, 'close');
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  connection.listen();
  const lost = closed.then(() => { throw new Error(`the server ended: ${said}`); });
  const talk = (async () => {
    const { capabilities, serverInfo } = await connection.sendRequest('initialize', { processId: process.pid, rootUri: pathToFileURL(pages).href, capabilities: {} });
    assert.equal(serverInfo.name, 'platewright');
    await connection.sendNotification('initialized', {});
    const uri = pathToFileURL(join(pages, page)).href;
    const found = new Promise(resolve => { connection.onNotification('textDocument/publishDiagnostics', told => { if (told.uri === uri) resolve(told.diagnostics); }); });
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'plate', version: 1, text: readFileSync(join(pages, page), 'utf8') } });
    const [first] = await found;
    assert.equal(first.code, 'arms-mismatched');
    assert.match(first.message, MISMATCH);
    await ask?.(connection, uri, capabilities);
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
  })();
  await Promise.race([talk, lost]);
  assert.deepEqual([(await closed)[0], said], [0, '']);
}
const card = async (connection, uri, capabilities) => {
  assert.equal(capabilities.experimental.printsCards, true);
  const { pdf } = await connection.sendRequest('platewright/card', { textDocument: { uri }, line: 3, form: 'pdf' });
  assert.match(Buffer.from(pdf, 'base64').toString('latin1'), /^%PDF-1\./);
};

/** The pinned list of a package: what is packed by mistake, or forgotten, is seen in it. */
function pinned(name, folder) {
  const file = `tests/packages/${name}`;
  const list = `${listed(folder).join('\n')}\n`;
  if (process.env.UPDATE) writeFileSync(file, list);
  assert.equal(list, existsSync(file) ? readFileSync(file, 'utf8') : '');
}
/** Each package that a build takes in is named with its licence. */
const notices = (folder, licence) => {
  const text = readFileSync(join(folder, 'dist/NOTICES.txt'), 'utf8');
  for (const name of ['chevrotain', 'commander', 'vscode-languageserver', 'd3-contour', 'pdfkit']) assert.match(text, new RegExp(`^${name} \\d[^\\n]*\\n-+\\n[^]`, 'm'));
  assert.match(readFileSync(join(folder, licence), 'utf8'), /^MIT License/);
};

await step('what is tried in bounds stays in them', () => {
  const tried = code => run('--eval', [], code).out;
  assert.match(tried(`require('fs').readFileSync(${JSON.stringify(join(process.cwd(), 'package.json'))})`), /ERR_ACCESS_DENIED/);
  assert.match(tried("require('net').connect(9, '127.0.0.1')"), /the network is out of bounds/);
  assert.match(tried("require('child_process').execSync('true')"), /ERR_ACCESS_DENIED/);
});

const cli = join(alone, 'dist/cli.cjs');
unpack(alone);
await step('the files of the command line', () => { pinned('command-line.txt', alone); });
await step('it names whose work goes along', () => { notices(alone, 'LICENSE'); });
await step('its pages lead to each other, but for pictures and what is for those who work on it', () => {
  const wrong = listed(alone).filter(file => file.endsWith('.md')).flatMap(file => [...readFileSync(join(alone, file), 'utf8').matchAll(/\]\((?!https?:|#)([^)#\s]+)/g)].map(m => join(file, '..', m[1])))
    .filter(to => !/^(?:client\/media\/|DEVELOPERS\.md$|server\/(?:core|security)\.md$)/.test(to) && !existsSync(join(alone, to)));
  assert.deepEqual(wrong, []);
});
await step('alone in a folder it checks an example', () => {
  const { code, out } = run(cli, [alone], 'check', '--strict', page);
  assert.match(out, MISMATCH);
  assert.equal(code, 1, out);
});
await step('it reports it', () => { assert.match(run(cli, [alone], 'report', page).out, MISMATCH); });
await step('it draws, and writes a card, without any other package', () => {
  for (const [command, file, begins] of [['draw', 'plan.svg', /<svg [^]*Whelk shell/], ['card', 'card.html', /^<!doctype html>[^]*Whelk shell/i]]) {
    const { code, out } = run(cli, [alone], command, 'whelk-on-the-table.plate', '-o', file);
    assert.equal(code, 0, out);
    assert.match(readFileSync(join(pages, file), 'utf8'), begins);
  }
});
await step('its server answers over standard input and output, and prints a card', () => serve([cli, 'lsp'], [alone], card));

const bin = process.env.INSTALLED ?? install(installed);
const [command, home] = [realpathSync(join(bin, 'platewright')), realpathSync(join(bin, '..'))];
await step('installed, the command tells its version', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  assert.equal(execFileSync(join(bin, 'platewright'), ['--version'], { env: ENV, encoding: 'utf8' }), `${version}\n`);
});
await step('installed, the plainest client tells the findings of a page', () => {
  const said = execFileSync(process.execPath, [join(home, 'platewright/client/editors/client.mjs'), page], { cwd: pages, env: { ...ENV, PATH: `${bin}${delimiter}${ENV.PATH}` }, encoding: 'utf8', timeout: 20_000 });
  assert.match(said, /^\d+: arms-mismatched: .*\b84 mm\b/);
});
await step('installed, it writes PDF and PNG with what npm put beside it', () => {
  for (const [what, file, begins] of [['draw', 'plan.png', '\x89PNG\r\n\x1a\n'], ['draw', 'plan.pdf', '%PDF-1.'], ['card', 'card.pdf', '%PDF-1.']]) {
    const { code, out } = run(command, [home], what, 'whelk-on-the-table.plate', '-o', file);
    assert.equal(code, 0, out);
    assert.equal(readFileSync(join(pages, file)).subarray(0, begins.length).toString('latin1'), begins);
  }
});

await unpackExtension(join(state, 'vsix'));
cpSync(join(state, 'vsix/extension'), extension, { recursive: true });
await step('the files of the extension', () => { pinned('extension.txt', extension); });
await step('it names whose work goes along, too', () => { notices(extension, 'LICENSE.txt'); });
await step('alone in a folder its server answers, and prints a card', () => serve([join(extension, 'dist/server.cjs')], [extension], card));
end('packages: ');
