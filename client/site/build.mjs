// npm run site: the documentation site from the project's own pages, into out/site/. Fails where a link or an anchor leads nowhere.
//   DIRECTORY   into another folder; what was in it goes
//   --serve     then serves it on this machine, until the program is stopped
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import Eleventy from '@11ty/eleventy';
import { build, transform } from 'esbuild';
import { noticesOf, packageOf } from '../notices.mjs';
import { troublesOf } from './check.mjs';
import { markdown } from './markdown.mjs';
import { exampleAt, exampleTitle, GROUPS, way } from './pages.mjs';
import { Running } from './running.mjs';
import { sectionsOf, wordsOf } from './search.mjs';
import { serve } from './serve.mjs';

process.chdir(fileURLToPath(new URL('../../', import.meta.url)));
const out = process.argv.slice(2).find(a => !a.startsWith('-')) ?? 'out/site';
if (existsSync(out) && !existsSync(join(out, 'site.css')) && readdirSync(out).length > 0) throw new Error(`${out} holds something else than the site. Name another folder, or empty this one.`);

const HERE = 'client/site';
const core = await coreOf();
const running = new Running(core);
const examples = Object.fromEntries(readdirSync('examples').filter(f => f.endsWith('.plate')).sort().map(f => [f, readFileSync(`examples/${f}`, 'utf8')]));
const copied = new Map([['client/icon.svg', 'icon.svg']]);
const md = markdown({ target, sizeOf, page, escaped: core.escaped });
const site = pagesOf();

rmSync(out, { recursive: true, force: true });
await write();
for (const [from, to] of copied) { mkdirSync(dirname(join(out, to)), { recursive: true }); copyFileSync(from, join(out, to)); }
for (const [to, text] of running.files) put(to, text);
put('search.json', JSON.stringify(site.flatMap(p => p.sections)));
await writeScripts();
await writeStyle();

const troubles = troublesOf(out);
if (troubles.length > 0) { console.error(troubles.join('\n')); process.exit(1); }
console.log(`${out}: ${site.length} pages, ${running.count} of the language can be run in them`);
if (process.argv.includes('--serve')) console.log(`${(await serve(out, { port: 8080 })).url}/`);

/** Eleventy lays the pages out; what they say is given to it. */
async function write() {
  const eleventy = new Eleventy(HERE, out, {
    quietMode: true, configPath: false,
    config(config) {
      config.setTemplateFormats(['md', 'html']);
      config.setIncludesDirectory('.');
      config.setLibrary('md', md);
      config.addGlobalData('layout', 'layout.njk');
      for (const { file, at, title, text } of site) {
        config.addTemplate(`${at || 'start/'}page.md`, text, { permalink: `${at}index.html`, file, at, title, root: way(at, ''), groups: groupsFor(at), caution: cautionOf(), templateEngineOverride: 'md' });
      }
    },
  });
  await eleventy.init();
  await eleventy.write();
}

/** All pages of the site, in the order of its list. */
function pagesOf() {
  const own = GROUPS.flatMap(g => g.pages).map(({ file, at }) => described(file, at, file === 'examples/' ? galleryOf() : readFileSync(file, 'utf8')));
  const each = Object.entries(examples).map(([name, text]) => described(`examples/${name}`, exampleAt(name), `# ${exampleTitle(name)}\n\n\`\`\`plate ${name}\n${text}\`\`\`\n`));
  return [...own, ...each];
}

function described(file, at, text) {
  const tokens = md.parse(text, { file, at });
  const first = tokens.findIndex(t => t.type === 'heading_open' && t.tag === 'h1');
  if (first < 0) throw new Error(`${file}: it has no heading of the first rank, by which the site could call it.`);
  const title = wordsOf(tokens[first + 1]);
  const parts = tokens.flatMap((t, i) => (t.type === 'heading_open' && t.tag === 'h2' ? [{ title: wordsOf(tokens[i + 1]), href: `#${t.attrGet('id')}` }] : []));
  return { file, at, text, title, parts, sections: sectionsOf(tokens, title, at), steps: core.stepsOf(text) };
}

/** The examples, each with what its note says first. */
function galleryOf() {
  const rows = Object.entries(examples).map(([name, text]) => {
    const note = [...text.matchAll(/^\/\/\/ (.*)$/gm)].map(m => m[1]).join(' ');
    const [sentence] = /^.*?[.!?](?= [A-Z]|$)/.exec(note) ?? [note];
    const plain = words => words.replace(/[\\`*_[\]<>&]/g, '\\$&');
    const picture = running.picture(running.looked(name, text, examples));
    return `- [${picture ? `![${plain(picture.words)}](site:${picture.at}) ` : ''}${exampleTitle(name)}](${name}): ${plain(sentence)}`;
  });
  return `# Examples\n\nSetups of the Saltmarsh workshop. Each can be changed where it stands.\n\n${rows.join('\n')}\n`;
}

/** What the list of pages shows on a page: the parts of that page, and of an example its neighbours. */
function groupsFor(at) {
  const isExample = at.startsWith('examples/');
  return GROUPS.map(({ title, pages }) => ({
    title,
    pages: pages.map(p => {
      const own = site.find(s => s.at === p.at);
      const below = p.file === 'examples/' ? (isExample ? Object.keys(examples).map(name => ({ title: exampleTitle(name), href: way(at, exampleAt(name)), current: exampleAt(name) === at })) : []) : p.at === at ? own.parts : [];
      return { title: own.title, href: way(at, p.at), current: p.at === at, below };
    }),
  }));
}

/** The caution of the first page stands below each. */
function cautionOf() {
  const [words] = /^It advises;.*|(?<=\. )It advises; [^]*?\.$/m.exec(examplesFree(readFileSync('README.md', 'utf8'))) ?? [];
  if (words === undefined) throw new Error('README.md: the caution that begins with “It advises;” is missing, which stands below each page of the site.');
  return words;
}
function examplesFree(text) { return text.replace(/^```[^]*?^```$/gm, ''); }

/** Where a file of the project stands in the site; whatever else a page links to goes along as it is. */
function target(path) {
  if (/^examples\/?$/.test(path)) return 'examples/';
  const name = path.replace(/^examples\//, '');
  if (path !== name && name in examples) return exampleAt(name);
  const page = GROUPS.flatMap(g => g.pages).find(p => p.file === path);
  if (page) return page.at;
  if (!existsSync(path) || !statSync(path).isFile()) return undefined;
  copied.set(path, `files/${path}`);
  return `files/${path}`;
}

/** Of a picture in PNG, which says it in its first chunk. */
function sizeOf(path) {
  if (!path.endsWith('.png') || !existsSync(path)) return undefined;
  const head = readFileSync(path).subarray(16, 24);
  return [head.readUInt32BE(0), head.readUInt32BE(4)];
}

/** A page of the language in a page of the site. What lies beside it: in the manual the pages before it, of a finding the files of its example, else the examples. */
function page({ text, name, line, heading, env: { file, at } }) {
  const step = site.find(p => p.file === file).steps.find(s => s.block.line === line);
  const files = step?.files ?? {};
  const whole = name !== undefined && !core.isWhole(text) ? files[name] : undefined;
  // A piece was added before the last brace of its page.
  const within = whole === undefined ? undefined : { text: whole, from: whole.slice(0, whole.lastIndexOf(text)).split('\n').length - 1 };
  const beside = file === 'server/checks/FINDINGS.md' ? core.findCheck(heading)?.files ?? {} : (whole ?? text).includes('use "') && file !== `examples/${name}` ? files : examples;
  return running.markup({ name, text, beside, at, within });
}

/** What of the program the site is made with. */
async function coreOf() {
  const { outputFiles: [bundle] } = await build({ entryPoints: [`${HERE}/core.ts`], bundle: true, format: 'esm', platform: 'neutral', mainFields: ['module', 'main'], write: false });
  return import(`data:text/javascript;base64,${Buffer.from(bundle.contents).toString('base64')}`);
}

/** The script of the pages, the program as their worker, and whose work is in them. */
async function writeScripts() {
  const { warnings, metafile } = await build({ entryPoints: { site: `${HERE}/view/main.ts`, worker: `${HERE}/view/worker.ts` }, bundle: true, minify: true, format: 'iife', target: 'es2022', charset: 'utf8', outdir: out, conditions: ['browser'], logLevel: 'silent', metafile: true });
  if (warnings.length > 0) throw new Error(warnings.map(w => w.text).join('\n'));
  const modules = Object.values(metafile.outputs).flatMap(o => Object.entries(o.inputs)).filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([module]) => resolve(module));
  put('NOTICES.txt', noticesOf(new Set(modules.map(packageOf).filter(f => f !== undefined))));
}

/** The looks of the site, and those of marks, of which there is one table for all pictures. */
async function writeStyle() {
  const rule = (where, palette) => `${where} { ${Object.entries(palette).map(([ink, colour]) => `--${ink}: ${colour}`).join('; ')} }`;
  const { light, dark, contrast, contrastLight } = core.PALETTES;
  const colours = [
    rule(':root', light), `@media (prefers-color-scheme: dark) { ${rule(':root', dark)} }`, `@media (prefers-contrast: more), (forced-colors: active) { ${rule(':root', contrastLight)} }`,
    `@media (prefers-color-scheme: dark) and (prefers-contrast: more), (prefers-color-scheme: dark) and (forced-colors: active) { ${rule(':root', contrast)} }`,
  ];
  const css = `${colours.join('\n')}\n.sheet {\n${core.cssOf(ink => `var(--${ink})`)}}\n${readFileSync(`${HERE}/site.css`, 'utf8')}`;
  const { code } = await transform(css, { loader: 'css', minify: true, target: 'chrome108' });
  put('site.css', code);
}

function put(to, text) {
  mkdirSync(dirname(join(out, to)), { recursive: true });
  writeFileSync(join(out, to), text);
}
