// Editors besides VS Code, each set up in a home of its own by the very lines of client/editors/README.md, beside each other: they wait more than they compute.
//   node tests/editor/others.mjs BIN [EDITOR…]     BIN: the folder in which the command `platewright` lies
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const SETUP = resolve('client/editors');
const sections = Object.fromEntries(readFileSync(join(SETUP, 'README.md'), 'utf8').split(/^## /m).slice(1).map(section => [section.split('\n')[0], [...section.matchAll(/^```sh\n([^]*?)^```$/gm)].map(m => m[1])]));

/** What each is run with. None reads or leaves anything outside of its home. */
const EDITORS = {
  Neovim: () => ['nvim', '--headless', '-i', 'NONE', '-n', '-c', 'luafile tests/editor/neovim.lua'],
  Emacs: home => ['emacs', '--batch', '--load', join(home, '.emacs.d/init.el'), '--load', 'tests/editor/emacs.el'],
  Vim: home => ['vim', '-N', '-e', '-s', '-u', join(home, '.vimrc'), '-i', 'NONE', '-n', '-S', 'tests/editor/vim.vim'],
  Helix: (home, page) => [process.execPath, 'tests/editor/helix.mjs', home, page],
};
export const NEEDED = ['nvim', 'emacs', 'vim'];

if (process.argv[1] === fileURLToPath(import.meta.url)) await main(...process.argv.slice(2));

async function main(bin, ...chosen) {
  const state = mkdtempSync(join(tmpdir(), 'platewright-others-'));
  try {
    const counts = await Promise.all((chosen.length > 0 ? chosen : Object.keys(EDITORS)).map(name => use(name, state, bin)));
    const [passed, failed] = [0, 1].map(at => counts.reduce((sum, count) => sum + count[at], 0));
    console.log(`${passed} passed, ${failed} failed`);
    process.exitCode = failed > 0 ? 1 : 0;
  } finally {
    rmSync(state, { recursive: true, force: true });
  }
}

/** Runs one, tells in one piece what it said, and gives how many steps passed and failed. One that ends badly, or counts nothing, is at least one failure. */
async function use(name, state, bin) {
  const home = join(state, name);
  mkdirSync(home);
  cpSync('tests/editor/notebook', join(home, 'notebook'), { recursive: true });
  const [page, colours] = ['whelk.plate', 'colours.plate'].map(file => join(home, 'notebook', file));
  cpSync('tests/editor/colours/page.plate', colours);
  const env = {
    PATH: `${resolve(bin)}${delimiter}${process.env.PATH}`, HOME: home, XDG_CONFIG_HOME: join(home, '.config'), XDG_DATA_HOME: join(home, '.local/share'), XDG_STATE_HOME: join(home, '.local/state'), XDG_CACHE_HOME: join(home, '.cache'),
    TMPDIR: home, LC_ALL: 'C.UTF-8', TERM: 'dumb', PAGE: page, COLOURS: colours, WORDS: resolve('tests/editor/colours/words.txt'),
  };
  for (const lines of sections[name]) execFileSync('sh', ['-e', '-c', lines], { cwd: SETUP, env });
  const [command, ...args] = EDITORS[name](home, page);
  const child = spawn(command, args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
  let [out, err] = ['', ''];
  child.stdout.on('data', text => { out += text; });
  child.stderr.on('data', text => { err += text; });
  const limit = setTimeout(() => child.kill('SIGKILL'), 120_000);
  const [code] = await once(child, 'close');
  clearTimeout(limit);
  const counts = [...out.matchAll(/(\d+) passed, (\d+) failed/g)].at(-1);
  const [passed, failed] = counts ? [Number(counts[1]), Number(counts[2])] : [0, 0];
  const fine = code === 0 && failed === 0 && passed > 0;
  // What went wrong is told by the messages of an editor, too.
  console.log(`\n${name}\n${out}${fine ? '' : `${err}\nended with ${code}\n`}`);
  return [passed, fine ? 0 : Math.max(failed, 1)];
}
