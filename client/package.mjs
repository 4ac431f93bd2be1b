// Packs the extension into out/platewright.vsix, and fails when that is not below one million bytes: it is fetched over studio connections too.
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { promisify } from 'node:util';
import { createVSIX } from '@vscode/vsce';

const VSIX = 'out/platewright.vsix';
const LIMIT = 1_000_000;
const run = promisify(execFile);

/** Takes a while, and a twentieth off the size, so that a build for the bench or a test goes without. Each file in a process of its own. */
async function tighten(file) {
  await run(process.execPath, ['node_modules/terser/bin/terser', file, '--ecma', '2020', '--compress', 'ecma=2020', '--mangle', ...(file.endsWith('.cjs') ? ['--toplevel'] : []), '--output', file]);
}

mkdirSync('out', { recursive: true });
await Promise.all(readdirSync('dist').filter(name => /\.c?js$/.test(name) && !name.startsWith('cli')).map(name => tighten(`dist/${name}`)));
// Bundled: nothing of node_modules goes along.
await createVSIX({ packagePath: VSIX, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
const { size } = statSync(VSIX);
console.log(`${VSIX}: ${(size / 1000).toFixed(0)} kB, limit ${LIMIT / 1000} kB`);
if (size >= LIMIT) {
  console.error('The packed extension is too large. `npx vsce ls --tree` shows what is in it.');
  process.exit(1);
}
