// npm run soak: many edits by an editor that does all it can, beside fresh servers, and what they leave in memory.
//   npm run soak -- EDITS SEED
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

const folder = mkdtempSync(join(tmpdir(), 'platewright-soak-'));
try {
  const outfile = join(folder, 'soak.mjs');
  const banner = { js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);' };
  await build({ entryPoints: ['tests/lsp/model/soak.ts'], outfile, bundle: true, platform: 'node', target: 'node20', format: 'esm', banner, external: ['./press.ts'], logLevel: 'error' });
  // No card is printed here, so that what prints is left outside. The server grows its heap as it does where an editor starts it.
  process.exitCode = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: 'inherit' }).status ?? 1;
} finally {
  rmSync(folder, { recursive: true });
}
