// Packs the extension into out/platewright.vsix, and fails when that is not below one million bytes: it is fetched over studio connections too.
import { mkdirSync, statSync } from 'node:fs';
import { createVSIX } from '@vscode/vsce';

const VSIX = 'out/platewright.vsix';
const LIMIT = 1_000_000;

mkdirSync('out', { recursive: true });
// Bundled: nothing of node_modules goes along.
await createVSIX({ packagePath: VSIX, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
const { size } = statSync(VSIX);
console.log(`${VSIX}: ${(size / 1000).toFixed(0)} kB, limit ${LIMIT / 1000} kB`);
if (size >= LIMIT) {
  console.error('The packed extension is too large. `npx vsce ls --tree` shows what is in it.');
  process.exit(1);
}
