// What a browser has to do in the panel while a thing is dragged over a table with 500 things: for each picture that comes, from the pointer to the marks in place and laid out. Painting is not in it.
//   node tests/bench/panel.mjs   prints it; npm run bench calls it
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { drawings, fullTable } from './drawing.mjs';

const WARM_UP = 30;
const STEPS = 120;
const AT = 'https://panel.example/';
/** mm from one step to the next: half a hole, so that the thing jumps at each second one */
const STRIDE = 12.5;

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await timePanel();

/** Mean milliseconds of work for each step of a drag, in the thread of the page. */
export async function timePanel() {
  const { page: html, shown, woulds } = await pictures();
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
    await page.route(`${AT}**`, route => {
      const name = new URL(route.request().url()).pathname.slice(1);
      const [body, contentType] = name === '' ? [html, 'text/html'] : [readFileSync(`dist/${name}`, 'utf8'), name.endsWith('.css') ? 'text/css' : 'text/javascript'];
      return route.fulfill({ body, contentType });
    });
    // Stands in for the editor: each question of the page is answered at once, by the next picture.
    await page.addInitScript(({ shown, woulds }) => {
      window.answered = 0;
      const send = data => { window.dispatchEvent(new MessageEvent('message', { data })); };
      window.acquireVsCodeApi = () => ({
        getState: () => undefined, setState: () => undefined,
        postMessage: m => {
          if (m.kind === 'ready') setTimeout(() => { send(shown); });
          if (m.kind === 'drag') setTimeout(() => { send({ kind: 'would', n: m.n, would: woulds[window.answered++ % woulds.length] }); });
        },
      });
    }, { shown, woulds });
    await page.goto(AT);
    const thing = page.locator('[data-item="M100"]').first();
    await thing.waitFor();
    const { x, y, width, height } = await thing.boundingBox();
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    const answered = () => page.evaluate(() => window.answered);
    const work = async () => Object.fromEntries((await session.send('Performance.getMetrics')).metrics.map(m => [m.name, m.value]));
    let n = 0;
    const drag = async steps => {
      for (let k = 0; k < steps; k++) {
        n++;
        await page.mouse.move(x + width / 2 + 10 + (n % 40), y + height / 2);
        await page.evaluate(() => new Promise(done => { requestAnimationFrame(() => { requestAnimationFrame(done); }); }));
      }
    };
    await drag(WARM_UP);
    const [before, first] = [await work(), await answered()];
    await drag(STEPS);
    const [after, last] = [await work(), await answered()];
    if (last - first < STEPS / 2) throw new Error('the panel does not follow the drag');
    const ms = ['ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'].map(part => (1000 * (after[part] - before[part])) / (last - first));
    const sum = ms.reduce((a, b) => a + b);
    console.log(`a step of a drag in the panel, ${shown.items.length} things and legs: ${sum.toFixed(1)} ms of work (${ms.map((v, i) => `${['scripts', 'layout', 'styles'][i]} ${v.toFixed(1)}`).join(', ')})`);
    return sum;
  } finally { await browser.close(); }
}

async function pictures() {
  const { analyse, pictureOf, dragged, pageOf, shownOf, wouldOf } = await drawings();
  const [file, text] = fullTable();
  const snapshot = analyse(file, text);
  // As the server answers: where in the text an item stands only gives the order here.
  const answered = picture => ({ ...picture, version: 1, figures: [], errors: picture.errors(), items: picture.items.map((item, line) => ({ ...item, range: { start: { line, character: 0 }, end: { line, character: 0 } } })) });
  const p = pictureOf(snapshot, { view: 'plan' });
  const shown = shownOf(answered(p), { page: file, marked: [] });
  const { x, y } = p.items.find(i => i.id === 'M100');
  const woulds = Array.from({ length: 20 }, (_, n) => {
    const made = dragged(snapshot, { view: 'plan' }, { item: 'M100', gesture: 'move', to: [(x + STRIDE * n) / 1000, y / 1000], stepped: false, free: false, dropped: false }, { text: () => undefined, resolve: path => path });
    return wouldOf(answered(pictureOf(made.after, { view: 'plan' })));
  });
  return { page: pageOf({ script: `${AT}plan.js`, style: `${AT}plan.css`, source: AT, nonce: 'bench' }), shown, woulds };
}
