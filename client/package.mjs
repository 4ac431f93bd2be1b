// Packs the extension into out/platewright.vsix, and fails when that is not below one million bytes: it is fetched over studio connections too.
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createVSIX } from '@vscode/vsce';
import { minify } from 'terser';

const VSIX = 'out/platewright.vsix';
const LIMIT = 1_000_000;

/** Takes a while, and a twentieth off the size, so that a build for the bench or a test goes without. */
async function tighten(file) {
  const { code } = await minify(readFileSync(file, 'utf8'), { ecma: 2020, toplevel: file.endsWith('.cjs'), compress: { ecma: 2020 } });
  writeFileSync(file, code);
}

mkdirSync('out', { recursive: true });
for (const name of readdirSync('dist')) if (/\.c?js$/.test(name) && !name.startsWith('cli')) await tighten(`dist/${name}`);
// Bundled: nothing of node_modules goes along.
await createVSIX({ packagePath: VSIX, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
const { size } = statSync(VSIX);
console.log(`${VSIX}: ${(size / 1000).toFixed(0)} kB, limit ${LIMIT / 1000} kB`);
if (size >= LIMIT) {
  console.error('The packed extension is too large. `npx vsce ls --tree` shows what is in it.');
  process.exit(1);
}
