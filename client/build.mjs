// Bundles what is shipped into dist/: the extension for desktop and web, the server for both, and the command line.
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

const node = { platform: 'node', target: 'node20', format: 'cjs' };
const browser = { platform: 'browser', target: 'es2022' };

/** One a file of dist/. An entry that is missing fails the build. */
const BUNDLES = [
  { ...node, entryPoints: ['client/extension.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] },
  { ...browser, entryPoints: ['client/extension.web.ts'], outfile: 'dist/extension.web.js', format: 'cjs', external: ['vscode'] },
  { ...node, entryPoints: ['server/lsp/node.ts'], outfile: 'dist/server.cjs' },
  { ...browser, entryPoints: ['server/lsp/worker.ts'], outfile: 'dist/server.worker.js', format: 'iife' },
  { ...node, entryPoints: ['server/cli/main.ts'], outfile: 'dist/cli.cjs', banner: { js: '#!/usr/bin/env node' } },
];

rmSync('dist', { recursive: true, force: true });
const results = await Promise.allSettled(BUNDLES.map((bundle) => build({ ...bundle, bundle: true, minify: true, logLevel: 'warning' })));
// esbuild has said what is wrong, at its place
if (results.some(({ status }) => status === 'rejected')) process.exit(1);
