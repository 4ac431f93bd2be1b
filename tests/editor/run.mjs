// npm run test:editors: packs both packages, then runs the extension in an old and a new VS Code (node host, web worker host, by mouse and keyboard),
// the packages alone, the installed server in other editors, and the documentation site in a browser. Prints `N passed, N failed` as its last line; ends with 1 on any failure.
//   --built      dist/ is of now: it is packed as it is
//   --packed     so is out/
//   --download   runs the suite in a downloaded VS Code instead, where the hosts from npm do not fit (they need Linux on x64, and Chromium)
//   SCREENSHOTS  folder for pictures of the run by mouse and keyboard
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installHost, VERSIONS } from './host/install.mjs';
import { installExtension } from './host/server.mjs';
import { install, pack, VSIX } from '../packages/install.mjs';
import { NEEDED } from './others.mjs';

const NOTEBOOK = 'tests/editor/notebook';
/** What is done by hand in hosts that are not the newest: each part takes a minute or two, and the suites run in all. */
const OLDER = ['user'];
const script = (name, ...args) => [process.execPath, `tests/editor/${name}.mjs`, ...args];

const download = process.argv.includes('--download');
needs(download ? NEEDED : [process.env.CHROMIUM ?? 'chromium', 'git', 'rg', ...NEEDED]);
if (!process.argv.includes('--packed')) pack(process.argv.includes('--built'));
const state = mkdtempSync(join(tmpdir(), 'platewright-editors-'));
const total = { passed: 0, failed: 0 };
try {
  const bin = install(join(state, 'installed'));
  const hosts = download ? [] : VERSIONS.map(placed);
  const newest = hosts.at(-1);
  if (download) await part('a downloaded VS Code, node host', script('node-host', process.cwd(), notebook(NOTEBOOK)));
  for (const host of hosts) {
    await part(`code-server ${host.version}, node host`, script('node-host', host.extension, notebook(NOTEBOOK)), host.env);
    await part(`code-server ${host.version}, web worker host`, script('worker-host', host.extension, notebook(NOTEBOOK)), host.env);
    // Two hosts at a time are more than two processors bear; what needs none goes on beside the short run.
    if (host === newest) await byHand(host);
    else await Promise.all([byHand(host, OLDER).then(() => byHand(host, ['german'], { EDITOR_LANGUAGE: 'de' })), withoutHost(bin)]);
  }
  if (download) await withoutHost(bin);
} finally {
  rmSync(state, { recursive: true, force: true });
}
console.log(`\neditors: ${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 || total.passed === 0 ? 1 : 0);

async function withoutHost(bin) {
  await part('the packages alone', [process.execPath, 'tests/packages/run.mjs', '--packed'], { INSTALLED: bin });
  await part('other editors', script('others', bin));
  if (!download) await part('the documentation site', script('site'));
}

function byHand({ version, unpacked, env }, parts = [], more = {}) {
  return part(`code-server ${version}, by mouse and keyboard`, script('by-hand', unpacked, notebook('examples', NOTEBOOK), ...parts), { ...env, ...more });
}

/** An installed host, with the extension in it: the suite runs against what was packed, not against the working copy. */
function placed(version) {
  const host = installHost(version);
  const unpacked = join(state, version);
  installExtension(host, unpacked, VSIX);
  const extension = join(unpacked, 'extensions', readdirSync(join(unpacked, 'extensions')).find((name) => name.startsWith('platewright.')));
  return { version, unpacked, extension, env: { HOST: host, ...(process.env.SCREENSHOTS && { SCREENSHOTS: join(process.env.SCREENSHOTS, version) }) } };
}

/** A fresh copy of pages: runs save into it. */
function notebook(...pages) {
  const copy = mkdtempSync(join(state, 'notebook-'));
  for (const folder of pages) cpSync(folder, copy, { recursive: true });
  return copy;
}

/** Runs one part and adds its counts; prints what it says once it has ended, since others run beside it. One that ends badly, or counts nothing, is at least one failure. */
async function part(name, [command, ...args], env = {}) {
  const start = Date.now();
  const child = spawn(command, args, { env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.on('data', (text) => { said += text; });
  const [code] = await once(child, 'close');
  console.log(`\n${name}, ${Math.round((Date.now() - start) / 1000)} s\n${said.trimEnd()}`);
  const counts = [...said.matchAll(/(\d+) passed, (\d+) failed/g)].at(-1);
  const [passed, failed] = counts ? [Number(counts[1]), Number(counts[2])] : [0, 0];
  total.passed += passed;
  total.failed += failed > 0 || (code === 0 && passed > 0) ? failed : 1;
}

function needs(commands) {
  const missing = commands.filter((command) => {
    try { execFileSync('sh', ['-c', 'command -v "$0"', command], { stdio: 'ignore' }); } catch { return true; }
  });
  if (missing.length === 0) return;
  console.error(`${missing.join(', ')}: not installed. On Debian: apt-get install chromium git ripgrep fonts-dejavu-core neovim emacs-nox elpa-eglot vim vim-ale`);
  process.exit(1);
}
