// Bundles what is shipped into dist/: the extension for desktop and web, the server for both, and the command line.
import { rmSync } from 'node:fs';
import commonjs from '@rollup/plugin-commonjs';
import resolve from '@rollup/plugin-node-resolve';
import { rollup } from 'rollup';
import esbuild, { minify } from 'rollup-plugin-esbuild';

const node = { target: 'node20', exportConditions: ['node'] };
const web = { target: 'es2022', browser: true };

/** One a file of dist/. An entry that is missing fails the build. */
const BUNDLES = [
  { ...node, entry: 'client/extension.ts', file: 'extension.cjs', external: ['vscode'] },
  { ...web, entry: 'client/extension.web.ts', file: 'extension.web.js', external: ['vscode'] },
  { ...node, entry: 'server/lsp/node.ts', file: 'server.cjs' },
  { ...web, entry: 'server/lsp/worker.ts', file: 'server.worker.js', format: 'iife' },
  { ...node, entry: 'server/cli/main.ts', file: 'cli.cjs', banner: '#!/usr/bin/env node' },
];

rmSync('dist', { recursive: true, force: true });
for (const bundle of BUNDLES) await write(bundle);

/** Modules of packages are laid side by side instead of each in a function of its own, which halves what a start has to read twice. */
async function write({ entry, file, target, external = [], browser = false, exportConditions = [], format = 'cjs', banner = '' }) {
  const bundle = await rollup({
    input: entry,
    external: name => external.includes(name) || name.startsWith('node:'),
    plugins: [
      resolve({ browser, exportConditions, preferBuiltins: !browser, extensions: ['.ts', '.mjs', '.js', '.json'] }),
      commonjs(),
      esbuild({ target, loaders: { '.json': 'json' } }),
    ],
    onLog(level, log, handle) {
      // A package's own rings and a `this` at its top are its own affair.
      if (['CIRCULAR_DEPENDENCY', 'THIS_IS_UNDEFINED'].includes(log.code) && log.message.includes('node_modules')) return;
      handle(level === 'warn' ? 'error' : level, log);
    },
  });
  await bundle.write({
    dir: 'dist', entryFileNames: file, chunkFileNames: `${file.split('.')[0]}-[name].cjs`, format, banner, name: 'platewright', exports: 'auto', inlineDynamicImports: browser,
    plugins: [minify({ target, charset: 'ascii' })],
  });
  await bundle.close();
}
