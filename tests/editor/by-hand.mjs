// Uses the extension as someone at the bench does: with mouse and keyboard, in the workbench. All parts in one window, since it takes longer to open than most of what is done there.
//   node tests/editor/by-hand.mjs STATE FOLDER_TO_OPEN [PART…]
//   STATE         where the extension is installed
//   HOST          folder of an installed host
//   SCREENSHOTS   folder for one picture a step; none are kept without it
import { desk, openDesk } from './host/desk.mjs';

const PARTS = { user: 'a page and its finding', writing: 'writing and reading pages', plan: 'the bench plan', review: 'what a change does', shoot: 'an evening at the table' };

const [state, folder, ...chosen] = process.argv.slice(2);
const parts = Object.keys(PARTS).filter((part) => chosen.length === 0 || chosen.includes(part));
const open = () => openDesk({ host: process.env.HOST, state, folder });
const total = { passed: 0, failed: 0 };
let failed = 0;
await open();
for (const part of parts) {
  // What failed may have left anything behind.
  if (failed > 0) {
    await desk.close();
    await open();
  } else if (total.passed > 0) await desk.clear();
  console.log(` ${PARTS[part]}`);
  const counts = await desk.run(part, (await import(`./${part}.mjs`)).STEPS);
  failed = counts.failed;
  total.passed += counts.passed;
  total.failed += counts.failed;
}
await desk.close();
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 ? 1 : 0);
