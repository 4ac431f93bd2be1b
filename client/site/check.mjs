// What is wrong with a built site: links and anchors that lead nowhere, markup that a browser would have to mend, anything loaded from elsewhere.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'parse5';

const LOADS = { img: ['src'], script: ['src'], link: ['href'], source: ['src', 'srcset'], iframe: ['src'] };
const HERE = 'http://site.invalid/';
/** Elements that have no end. */
const VOID = new Set(['br', 'hr', 'img', 'input', 'link', 'meta']);

/** @returns a sentence each; empty for a site as it should be */
export function troublesOf(folder) {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(f => f.replaceAll('\\', '/'));
  const pages = new Map(files.filter(f => f.endsWith('.html')).map(file => [file, read(folder, file)]));
  return [...pages].flatMap(([file, { elements, errors }]) => [
    ...errors.map(words => `${file}: not well formed: ${words}`),
    ...doubles(elements.flatMap(({ attributes: { id } }) => id ?? [])).map(id => `${file}: two elements are called “${id}”`),
    ...elements.flatMap(({ name, attributes }) => [...loads(name, attributes), ...follows(name, attributes, file)].map(words => `${file}: ${words}`)),
  ]);

  function loads(name, attributes) {
    return [
      ...(LOADS[name] ?? []).filter(a => attributes[a] !== undefined && !isHere(attributes[a])).map(a => `${name} loads ${attributes[a]} from elsewhere`),
      ...Object.keys(attributes).filter(a => a.startsWith('on') || a === 'style').map(a => `${name} has ${a}, which the content policy refuses`),
      ...(name === 'script' && attributes.src === undefined ? ['a script stands in the page, which the content policy refuses'] : []),
    ];
  }

  function follows(name, attributes, file) {
    const addresses = ['href', 'src', 'data-beside'].map(a => attributes[a]).filter(a => a !== undefined && isHere(a));
    return addresses.flatMap(address => {
      const { pathname, hash } = new URL(address, HERE + file);
      const to = decodeURIComponent(pathname.slice(1));
      const page = to === '' || to.endsWith('/') ? `${to}index.html` : to;
      if (!existsSync(join(folder, page)) || statSync(join(folder, page)).isDirectory()) return [`${name} leads to ${address}, where nothing is`];
      const id = decodeURIComponent(hash.slice(1));
      if (id === '' || !pages.has(page)) return [];
      return pages.get(page).elements.some(e => e.attributes.id === id) ? [] : [`${name} leads to ${address}, but nothing is called “${id}” there`];
    });
  }
}

const isHere = address => new URL(address, HERE).origin === new URL(HERE).origin;
const doubles = names => [...new Set(names.filter((n, i) => names.indexOf(n) !== i))];

function read(folder, file) {
  const text = readFileSync(join(folder, file), 'utf8');
  const errors = [];
  const elements = [];
  // Some ends may be left out, and a browser mends others: here each element has its own.
  let ends = 0;
  const walk = node => {
    const { tagName: name, sourceCodeLocation: at } = node;
    if (name) {
      elements.push({ name, attributes: Object.fromEntries(node.attrs.map(a => [a.name, a.value])) });
      if (at?.endTag) ends++;
      else if (!VOID.has(name)) errors.push(at ? `line ${at.startLine}: ${name} is not closed` : `${name} is not opened`);
    }
    for (const child of node.childNodes ?? []) walk(child);
  };
  walk(parse(text, { sourceCodeLocationInfo: true, onParseError: e => errors.push(`line ${e.startLine}: ${e.code}`) }));
  const stray = [...text.matchAll(/<\/[a-z]/gi)].length - ends;
  if (stray > 0) errors.push(`${stray} ends belong to nothing`);
  return { elements, errors };
}
