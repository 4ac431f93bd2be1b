// Bundles the suite for one of the two extension hosts; gives the file.
import { build } from 'esbuild';

export async function bundleSuite(host) {
  // Two hosts may be run at a time.
  const outfile = `out/editor/${host}-${process.pid}.cjs`;
  await build({
    entryPoints: ['tests/editor/suite/index.ts'],
    outfile,
    bundle: true,
    format: 'cjs',
    platform: host === 'node' ? 'node' : 'browser',
    external: ['vscode', 'node:fs'], // the latter only where there is one
   
    loader: { '.plate': 'text' },
    // mocha's browser build, itself an ES module, would otherwise put itself in the place of the suite's exports
    define: { EXPECTED_HOST: JSON.stringify(host), global: 'globalThis', exports: 'undefined' },
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  return outfile;
}
