// Whose work goes along in what is built, with the licence of each: most licences ask for that.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const PACKAGE = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;

/** The folder of the package that a module belongs to; nothing of our own ones, nor of what a bundler makes up. */
export const packageOf = module => PACKAGE.exec(module.replace(/^\0/, '').split('?')[0])?.[1];

/** A text with each package in these folders, in the order of their names. Throws where one has no licence, for then nobody may hand it on. */
export function noticesOf(folders) {
  const told = [...folders].map(folder => {
    const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find(f => /^(?:licen[cs]e|copying)(?:[.-].*)?$/i.test(f));
    if (license === undefined && file === undefined) throw new Error(`${folder} says nothing of its licence`);
    const by = typeof author === 'string' ? author : author?.name;
    const notice = readdirSync(folder).find(f => /^notice(?:\..*)?$/i.test(f));
    const text = file === undefined ? `Licence: ${typeof license === 'string' ? license : JSON.stringify(license)}${by === undefined ? '' : `\nCopyright ${by}`}` : readFileSync(join(folder, file), 'utf8').trim();
    return { name, version, text: [text, ...(notice === undefined ? [] : [readFileSync(join(folder, notice), 'utf8').trim()])].join('\n\n') };
  });
  // One package may lie in two folders.
  const each = new Map(told.map(t => [`${t.name} ${t.version}`, t]));
  const parts = [...each].sort(([a], [b]) => (a < b ? -1 : 1)).map(([title, { text }]) => `${title}\n${'-'.repeat(title.length)}\n${text.replace(/\r\n?/g, '\n')}\n`);
  return `Platewright is built with the packages below. Each is handed on under its own licence, which follows its name.\n\n${parts.join('\n')}`;
}
