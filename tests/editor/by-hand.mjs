// Uses the extension as someone at the bench does: with mouse and keyboard, in the workbench. All parts in one window, since it takes longer to open than most of what is done there.
//   node tests/editor/by-hand.mjs STATE FOLDER_TO_OPEN [PART…]
//   STATE         where the extension is installed
//   HOST          folder of an installed host
//   EDITOR_LANGUAGE  which language the editor has; for the part of that language, which is done when it is named
//   SCREENSHOTS   folder for one picture a step; none are kept without it
//   WEB           folder of the unpacked extension: it is served from there and runs in the web worker host, and none is installed in STATE
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, openDesk } from './host/desk.mjs';
import { serveExtension } from './host/serve-extension.mjs';

const PARTS = { user: 'a page and its finding', begin: 'the first page', writing: 'writing and reading pages', plan: 'the bench plan', review: 'what a change does', shoot: 'an evening at the table' };

/** Only where they are named. */
const APART = { german: 'in a German editor', pictures: 'pictures of the README' };

const [state, folder, ...chosen] = process.argv.slice(2);
const parts = chosen.length === 0 ? Object.keys(PARTS) : Object.keys({ ...PARTS, ...APART }).filter((part) => chosen.includes(part));
const site = process.env.WEB && await served(process.env.WEB);
const open = () => openDesk({ host: process.env.HOST, state, folder, extension: site?.url, language: process.env.EDITOR_LANGUAGE });
const total = { passed: 0, failed: 0 };
let failed = 0;
await open();
for (const part of parts) {
  // What failed may have left anything behind.
  if (failed > 0) {
    await desk.close();
    await open();
  } else if (total.passed > 0) await desk.clear();
  console.log(` ${PARTS[part] ?? APART[part]}`);
  const counts = await desk.run(part, (await import(`./${part}.mjs`)).STEPS);
  failed = counts.failed;
  total.passed += counts.passed;
  total.failed += counts.failed;
}
await desk.close();
await site?.stop();
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed > 0 ? 1 : 0);

/** In a browser an extension has no `main`: VS Code would run that, in the node host. */
function served(extension) {
  const manifest = JSON.parse(readFileSync(join(extension, 'package.json'), 'utf8'));
  delete manifest.main;
  return serveExtension(extension, { '/package.json': JSON.stringify(manifest) });
}
