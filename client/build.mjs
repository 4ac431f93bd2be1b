// Bundles what is shipped into dist/: the extension for desktop and web, the server for both, the pages of the panels, and the command line.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import commonjs from '@rollup/plugin-commonjs';
import resolve from '@rollup/plugin-node-resolve';
import { build, transform } from 'esbuild';
import { rollup } from 'rollup';
import esbuild, { minify } from 'rollup-plugin-esbuild';
import { cutDown } from './letters.mjs';
import { noticesOf, packageOf } from './notices.mjs';

const web = { target: 'es2022', conditions: ['browser'] };
const node = { target: 'node20', conditions: ['node'] };
/** What prints cards on Node.js, as the files that ask for it name it: it is a bundle of its own. */
const PRESS = { source: './press.ts', file: './server.press.cjs' };
const both = { target: 'es2022', conditions: ['node', 'browser'] };

/** What is bundled together, as files of dist/ and the sources that they begin with. A file that is missing fails the build. */
const BUNDLES = [
  {
    // A browser gives an extension one file: it holds all that both need. The other one adds what is different on Node.js.
    ...both, files: { 'extension.web.js': 'client/extension.web.ts', 'extension.cjs': 'client/extension.ts' }, external: ['vscode'],
    output: { manualChunks: { 'extension.web.js': ['client/extension.web.ts'] } },
  },
  {
    // What these share becomes a file of its own, as does what is only asked for later. In a worker names of one file would be names of all, and nobody but server.worker.js makes `exports`.
    ...both, seldom: ['child_process', 'crypto'], files: { 'server.cjs': 'server/lsp/node.ts', 'server.browser.js': 'server/lsp/browser.ts', 'server.worker.js': 'server/lsp/worker.ts' },
    output: { chunkFileNames: ({ isDynamicEntry }) => (isDynamicEntry ? 'server.[name].js' : 'server.core.js'), banner: '(function(exports){', footer: '})(typeof exports==="undefined"?{}:exports)' },
  },
  // Fonts are its own, neither packed nor locked, and it prints no photographs. A package knows its patterns by the name of what makes them.
  { ...node, keepNames: true, without: ['brotli/decompress.js', 'png-js'], files: { 'server.press.cjs': 'server/lsp/press.ts' } },
  { ...web, files: { 'plan.js': 'client/plan/view/main.ts' }, output: { format: 'iife' } },
  { ...web, files: { 'review.js': 'client/review/view/main.ts' }, output: { format: 'iife' } },
  { ...web, files: { 'shoot.js': 'client/shoot/view/main.ts' }, output: { format: 'iife' } },
  {
    // What makes other pictures than SVG brings data files of its own, which a bundle would part it from.
    ...node, files: { 'cli.cjs': 'server/cli/main.ts' }, external: ['@resvg/resvg-wasm', 'pdfkit', 'svg-to-pdfkit'],
    output: { chunkFileNames: 'cli-[name].cjs', banner: '#!/usr/bin/env node' },
  },
];

/** Folders of packages of which something is bundled. */
const used = new Set();

rmSync('dist', { recursive: true, force: true });
for (const bundle of BUNDLES) await write(bundle);
await writeStyle();
await writeLetters();
writeFileSync('dist/NOTICES.txt', noticesOf(used));

/** Parts of Node.js that a package asks for at once and needs seldom or never: each is loaded when something of it is used, so that a start does not wait for it. */
function later(parts) {
  const mark = '\0later:';
  return {
    is: id => id.startsWith(mark),
    plugin: {
      name: 'later',
      resolveId: name => (parts.includes(name) ? mark + name : null),
      load: id => (id.startsWith(mark) ? `export default new Proxy({}, { get: (_, name) => require(${JSON.stringify(`node:${id.slice(mark.length)}`)})[name] });` : null),
    },
  };
}

/** Modules that a package asks for and that nothing here comes to: there is nothing in them. */
function empty(names) {
  const mark = '\0empty:';
  return { name: 'empty', resolveId: name => (names.includes(name) ? mark + name : null), load: id => (id.startsWith(mark) ? 'export default undefined' : null) };
}

/** Modules of packages are laid side by side instead of each in a function of its own, which halves what a start has to read twice. */
async function write({ files, target, conditions, external = [], seldom = [], without = [], keepNames = false, output }) {
  const preferBuiltins = conditions.includes('node');
  const { is, plugin } = later(seldom);
  const bundle = await rollup({
    input: files,
    external: name => external.includes(name) || name.startsWith('node:') || name === PRESS.source,
    // A file may give others more than its source exports.
    preserveEntrySignatures: 'allow-extension',
    plugins: [
      plugin,
      empty(without),
      resolve({ browser: !preferBuiltins, exportConditions: conditions, preferBuiltins, extensions: ['.ts', '.mjs', '.js', '.json'] }),
      commonjs({ requireReturnsDefault: is }),
      esbuild({ target, loaders: { '.json': 'json' } }),
    ],
    onLog(level, log, handle) {
      // A package's own rings and a `this` at its top are its own affair.
      if (['CIRCULAR_DEPENDENCY', 'THIS_IS_UNDEFINED'].includes(log.code) && log.message.includes('node_modules')) return;
      // So is a key that one writes twice; in ours the linter finds it.
      if (log.message.includes('[duplicate-object-key]')) return;
      handle(level === 'warn' ? 'error' : level, log);
    },
  });
  const { output: written } = await bundle.write({ dir: 'dist', format: 'cjs', exports: 'auto', entryFileNames: '[name]', paths: id => (id.endsWith('server/lsp/press.ts') ? PRESS.file : id), ...output, plugins: [minify({ target, charset: 'ascii', keepNames })] });
  for (const chunk of written) for (const [module, { renderedLength }] of Object.entries(chunk.modules ?? {})) { const folder = renderedLength > 0 ? packageOf(module) : undefined; if (folder) used.add(folder); }
  await bundle.close();
}

/** The looks of each panel, and those of the marks, of which there is one table for all pictures. */
async function writeStyle() {
  const { outputFiles: [table] } = await build({ entryPoints: ['server/drawing/style.ts'], bundle: true, format: 'esm', write: false });
  const { cssOf, dim, DIM_HUES, PALETTES } = await import(`data:text/javascript;base64,${Buffer.from(table.contents).toString('base64')}`);
  // By the classes that VS Code gives a body. The last one also has the one before it.
  const themes = { body: 'light', '.vscode-dark': 'dark', '.vscode-high-contrast': 'contrast', '.vscode-high-contrast-light': 'contrastLight' };
  const rule = (where, palette) => `${where} { ${Object.entries(palette).map(([ink, colour]) => `--${ink}: ${colour}`).join('; ')} }`;
  const colours = [...Object.entries(themes).map(([theme, palette]) => rule(theme, PALETTES[palette])), ...DIM_HUES.map(hue => rule(`body[data-dim="${hue}"]`, dim(hue)))];
  for (const panel of ['plan', 'review', 'shoot']) {
    const css = `${colours.join('\n')}\n.sheet {\n${cssOf(ink => `var(--${ink})`)}}\n${readFileSync(`client/${panel}/view/${panel}.css`, 'utf8')}`;
    // Marks are in a sheet: the rules of one lie in those of the other, which older browsers want written out.
    const { code } = await transform(css, { loader: 'css', minify: true, target: 'chrome108' });
    writeFileSync(`dist/${panel}.css`, code);
  }
}

/** The fonts that cards are printed in, with no more letters than go along with the extension. */
async function writeLetters() {
  const { outputFiles: [table] } = await build({ entryPoints: ['server/pdf/letters.ts'], bundle: true, format: 'esm', write: false });
  const { LETTERS } = await import(`data:text/javascript;base64,${Buffer.from(table.contents).toString('base64')}`);
  const fonts = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json').replace(/package\.json$/, '');
  mkdirSync('dist/letters');
  for (const cut of ['SerifCondensed', 'SerifCondensed-Bold']) writeFileSync(`dist/letters/${cut}.ttf`, cutDown(readFileSync(`${fonts}ttf/DejaVu${cut}.ttf`), LETTERS));
  // Which goes along with each copy.
  writeFileSync('dist/letters/LICENSE', readFileSync(`${fonts}LICENSE`));
}
