// Bundles what is shipped into dist/: the extension for desktop and web, the server for both, the page of the bench plan, and the command line.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import commonjs from '@rollup/plugin-commonjs';
import resolve from '@rollup/plugin-node-resolve';
import { build, transform } from 'esbuild';
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
  { ...web, entry: 'client/plan/view/main.ts', file: 'plan.js', format: 'iife' },
  // What makes other pictures than SVG brings data files of its own, which a bundle would part it from.
  { ...node, entry: 'server/cli/main.ts', file: 'cli.cjs', banner: '#!/usr/bin/env node', external: ['@resvg/resvg-wasm', 'pdfkit', 'svg-to-pdfkit'] },
];

rmSync('dist', { recursive: true, force: true });
for (const bundle of BUNDLES) await write(bundle);
await writeStyle();

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

/** The looks of the bench plan: those of the panel, and those of the marks, of which there is one table for all pictures. */
async function writeStyle() {
  const { outputFiles: [table] } = await build({ entryPoints: ['server/drawing/style.ts'], bundle: true, format: 'esm', write: false });
  const { cssOf, dim, DIM_HUES, PALETTES } = await import(`data:text/javascript;base64,${Buffer.from(table.contents).toString('base64')}`);
  // By the classes that VS Code gives a body. The last one also has the one before it.
  const themes = { body: 'light', '.vscode-dark': 'dark', '.vscode-high-contrast': 'contrast', '.vscode-high-contrast-light': 'contrastLight' };
  const rule = (where, palette) => `${where} { ${Object.entries(palette).map(([ink, colour]) => `--${ink}: ${colour}`).join('; ')} }`;
  const colours = [...Object.entries(themes).map(([theme, palette]) => rule(theme, PALETTES[palette])), ...DIM_HUES.map(hue => rule(`body[data-dim="${hue}"]`, dim(hue)))];
  const css = `${colours.join('\n')}\n.sheet {\n${cssOf(ink => `var(--${ink})`)}}\n${readFileSync('client/plan/view/plan.css', 'utf8')}`;
  // Marks are in a sheet: the rules of one lie in those of the other, which older browsers want written out.
  const { code } = await transform(css, { loader: 'css', minify: true, target: 'chrome108' });
  writeFileSync('dist/plan.css', code);
}
