// Builds the command line once for all tests that run it, and tells them where it is.
import { mkdtempSync, rmSync, chmodSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildSync, type BuildOptions } from 'esbuild';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext { cli: string }
}

export const BUILD: BuildOptions = {
  entryPoints: ['server/cli/main.ts'], bundle: true, platform: 'node', target: 'node20', format: 'cjs', logLevel: 'silent', supported: { 'dynamic-import': false }, external: ['@resvg/resvg-wasm', 'pdfkit', 'svg-to-pdfkit'],
  define: { 'import.meta.url': 'here' }, banner: { js: "const here = require('node:url').pathToFileURL(__filename).href;" },
};

export default function setup({ provide }: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-cli-'));
  // Some tests start it as another user.
  chmodSync(folder, 0o755);
  const outfile = join(folder, 'cli.cjs');
  // Hundreds of processes read it: the shorter it is, the sooner they start.
  buildSync({ ...BUILD, outfile, minifyWhitespace: true, minifySyntax: true });
  provide('cli', outfile);
  return () => { rmSync(folder, { recursive: true, force: true }); };
}
