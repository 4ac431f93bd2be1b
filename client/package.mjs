// Packs the extension into out/platewright.vsix, and fails when that is not below one million bytes: it is fetched over studio connections too.
// The command line, with the server over standard input and output, goes into out/platewright-VERSION.tgz. Both are of dist/ as it is.
import { execFileSync } from 'node:child_process';
import { mkdirSync, statSync } from 'node:fs';
import { createVSIX } from '@vscode/vsce';

const VSIX = 'out/platewright.vsix';
/** Tightened once more. What is in them is smaller by a twentieth then. */
const TIGHTENED = ['dist/server.core.js', 'dist/server.features.js', 'dist/server.press.cjs', 'dist/extension.web.js', 'dist/plan.js'];
const LIMIT = 1_000_000;

mkdirSync('out', { recursive: true });
// A start reads all of it, and is some hundredths quicker for it. A build for a test goes without. All of it stays ASCII: with a single other letter a start
// reads and holds each letter as two bytes.
for (const file of TIGHTENED) execFileSync(process.execPath, ['node_modules/terser/bin/terser', file, '--ecma', '2020', '--compress', 'ecma=2020', '--mangle', '--format', 'ascii_only=true', '--output', file]);
// Bundled: nothing of node_modules goes along.
await createVSIX({ packagePath: VSIX, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
const { size } = statSync(VSIX);
console.log(`${VSIX}: ${(size / 1000).toFixed(0)} kB, limit ${LIMIT / 1000} kB`);
if (size >= LIMIT) {
  console.error('The packed extension is too large. `npx vsce ls --tree` shows what is in it.');
  process.exit(1);
}
// Not built again: that would undo the tightening.
execFileSync('npm', ['pack', '--silent', '--ignore-scripts', '--pack-destination', 'out'], { stdio: 'inherit' });
