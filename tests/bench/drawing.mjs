// What somebody waits for who looks at a table with 500 things on it: its first picture, and each step of a drag from the pointer to the new picture; and how large the panel is.
//   node tests/bench/drawing.mjs   prints them; npm run bench calls it
import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const THINGS = 500;
const WARM_UP = 10;
const TURNS = 15;
const FILE = 'file:///saltmarsh/many.plate';

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await timeDrawing();

/** Address and text of a page with a full table. */
export const fullTable = () => [FILE, many()];

/** A beam that is folded from one end of a table to the other, in ten rows of mirrors. */
function many() {
  const rows = Array.from({ length: THINGS - 2 }, (_, i) => { const pair = Math.floor(i / 2); return [100 + (pair % 25) * 225 + (i % 2 ? 100 : 0), (i % 2 ? 300 : 150) + Math.floor(pair / 25) * 330]; });
  return [
    'setup "Many" {', '  table: 6000 x 4000 mm', '  hole spacing: 25 mm', '  laser red at (50, 50) mm heading 0° {', '    wavelength: 632.8 nm', '  }',
    ...rows.map(([x, y], i) => `  mirror M${i} at (${x}, ${y}) mm`), '  beam stop B1 at (5900, 3900) mm', '  beam raw from red', ...rows.map((_, i) => `    -> M${i}`), '    -> B1', '}', '',
  ].join('\n');
}

/** What makes pictures, and the page that they are shown in. */
export async function drawings() {
  const outfile = resolve('.bench/drawing.mjs');
  await build({
    stdin: { contents: "export { analyse } from './server/analysis.ts'; export { LineCache } from './grammar/parse.ts'; export { pictureOf } from './server/drawing/picture.ts'; export { dragged } from './server/drawing/drag/drag.ts'; export { pageOf } from './client/plan/html.ts'; export { shownOf, wouldOf } from './client/plan/shown.ts';", resolveDir: process.cwd() },
    outfile, bundle: true, format: 'esm', platform: 'node', target: 'node20', logLevel: 'warning',
  });
  return import(pathToFileURL(outfile).href);
}

/** Median milliseconds of the first picture and of a step of a drag, and bytes of the panel; the last undefined where nothing is built. */
export async function timeDrawing() {
  const { analyse, LineCache, pictureOf, dragged } = await drawings();
  const text = many();
  const first = () => timed(() => JSON.stringify(pictureOf(analyse(FILE, text), { view: 'plan' }).sheet));
  const lines = new LineCache();
  const snapshot = analyse(FILE, text, undefined, lines);
  const drawn = pictureOf(snapshot, { view: 'plan' });
  if (drawn.items.length < THINGS) throw new Error('not all things are drawn');
  let step = 0;
  const drag = () => timed(() => {
    const made = dragged(snapshot, { view: 'plan' }, { item: 'M100', gesture: 'move', to: [1 + 0.025 * (step++ % 40), 0.5], free: false, dropped: false }, { text: () => undefined, resolve: path => path });
    pictureOf(made.after, { view: 'plan' });
  });
  const alone = () => timed(() => pictureOf(snapshot, { view: 'plan' }));
  const [picture, again, moved] = [first, alone, drag].map((one) => { for (let n = 0; n < WARM_UP; n++) one(); return median(Array.from({ length: TURNS }, one)); });
  const size = existsSync('dist/plan.js') ? statSync('dist/plan.js').size + statSync('dist/plan.css').size : undefined;
  console.log(`${THINGS} things, from the text to their picture: ${picture.toFixed(1)} ms, of which the drawing ${again.toFixed(1)} ms; a step of a drag, from the pointer to the new picture: ${moved.toFixed(1)} ms`);
  if (size !== undefined) console.log(`the panel of the bench plan: ${(size / 1000).toFixed(0)} kB`);
  return { picture, moved, size };
}

function timed(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}
function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
