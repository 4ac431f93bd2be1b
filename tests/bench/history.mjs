// How long the command line takes to tell what each of 200 revisions of a setup of 300 lines did.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';

const REVISIONS = 200;
const LINES = 300;
const RUNS = 3;

/** A placed setup: what makes the hologram is that of an example, and a shelf of things, none in the way of another, fills the rest of a larger table. */
function page(n) {
  const example = readFileSync('examples/whelk-on-the-table.plate', 'utf8').replace('640) mm', `${640 + (n * 7) % 23}) mm`).replace('1200 x 900 mm', '2400 x 1200 mm').replace('loss: 3%', `loss: ${(3 + (n % 5) / 10).toFixed(1)}%`);
  const shelf = [];
  while (example.split('\n').length + shelf.length * 3 < LINES) shelf.push(`  mirror shelf-${shelf.length} at (${1240 + (shelf.length % 12) * 90}, ${60 + Math.floor(shelf.length / 12) * 90}) mm {\n    diameter: ${20 + ((shelf.length + n) % 3)} mm\n  }`);
  return example.replace('  beam raw', () => `${shelf.join('\n')}\n  beam raw`);
}

/** Median milliseconds of whole runs, git among them. */
export function timeHistory() {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  try {
    const git = (args, input) => execFileSync('git', args, { cwd: folder, input, env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' } });
    git(['init', '-q', '-b', 'main']);
    const data = (text) => `data ${Buffer.byteLength(text)}\n${text}\n`;
    const lab = readFileSync('examples/saltmarsh-lab.plate', 'utf8');
    git(['fast-import', '--quiet'], Array.from({ length: REVISIONS }, (_, n) => `commit refs/heads/main\ncommitter Saltmarsh <bench@saltmarsh.example> ${1_770_000_000 + n * 60} +0000\n${data(`revision ${n}`)}${n === 0 ? `M 644 inline saltmarsh-lab.plate\n${data(lab)}` : ''}M 644 inline whelk.plate\n${data(page(n))}`).join(''));
    git(['reset', '-q', '--hard']);
    const cli = join(process.cwd(), 'dist/cli.cjs');
    const times = [];
    for (let n = 0; n < RUNS; n++) {
      const start = performance.now();
      const out = execFileSync(process.execPath, [cli, 'log', 'whelk.plate'], { cwd: folder, encoding: 'utf8' });
      times.push(performance.now() - start);
      const told = out.match(/Whelk shell: /g)?.length;
      if (told !== REVISIONS) throw new Error(`log tells of ${told} revisions, not of ${REVISIONS}`);
    }
    const ms = times.sort((a, b) => a - b)[Math.floor(RUNS / 2)];
    console.log(`${`what ${REVISIONS} revisions of ${LINES} lines did`.padEnd(64)}${ms.toFixed(0)} ms`);
    return ms;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
if (process.argv[1]?.endsWith('history.mjs')) timeHistory();
