// Starts the VS Code server of an installed host, on a free port of this machine.
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** User settings under which every run starts: nothing that asks, fetches or takes the keyboard away from the editor. */
const SETTINGS = {
  'chat.disableAIFeatures': true,
  'editor.hover.delay': 100,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'files.autoSave': 'off',
  'git.enabled': false,
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
};

const entry = (host) => join(host, 'package/lib/vscode/out/server-main.js');
// An empty gallery: no request leaves the machine. The rest: nothing is read from, or left in, the caller's own folders.
const environment = (state) => ({ ...process.env, HOME: state, TMPDIR: state, XDG_RUNTIME_DIR: state, EXTENSIONS_GALLERY: '{"serviceUrl":""}' });

/** Installs a packed extension into `state`, with the server's own command line. */
export function installExtension(host, state, vsix) {
  const args = [entry(host), '--server-data-dir', state, '--accept-server-license-terms', '--install-extension', vsix];
  return execFileSync(join(host, 'node'), args, { env: environment(state), encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}

/** Gives the port, the log so far and a way to stop it. All that it keeps lies in `state`. */
export async function startServer(host, state) {
  const user = join(state, 'data/User');
  mkdirSync(user, { recursive: true });
  writeFileSync(join(user, 'settings.json'), JSON.stringify(SETTINGS));
  const args = [
    entry(host), '--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms',
    '--telemetry-level', 'off', '--disable-workspace-trust', '--server-data-dir', state,
  ];
  const child = spawn(join(host, 'node'), args, { env: environment(state), stdio: ['ignore', 'pipe', 'pipe'], detached: true });
  const exited = once(child, 'exit');
  let log = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => { log += text; });
  const stop = async () => {
    signal(child, 'SIGTERM');
    const hard = setTimeout(() => signal(child, 'SIGKILL'), 3000);
    await exited;
    clearTimeout(hard);
  };
  const end = Date.now() + 60_000;
  for (;;) {
    const port = /Extension host agent listening on (\d+)/.exec(log)?.[1];
    if (port) return { port: Number(port), log: () => log, stop };
    if (child.exitCode !== null) throw new Error(`the VS Code server ended with ${child.exitCode}\n${log}`);
    if (Date.now() > end) {
      await stop();
      throw new Error(`the VS Code server did not start within a minute\n${log}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** To the whole group: the server has started extension hosts and watchers. */
function signal(child, name) {
  try { process.kill(-child.pid, name); } catch { /* gone already */ }
}
