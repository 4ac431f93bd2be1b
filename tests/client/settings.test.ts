/** Settings: each that is read can be set, and each that can be set is read; what it says of itself holds. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ALL_HINTS } from '../../server/features/hint-kinds.ts';
import { MAX_LISTED } from '../../server/lsp/protocol.ts';
import { MANIFEST, read } from './manifest.ts';

const groups = MANIFEST.contributes.configuration;
const settings = groups.flatMap(g => Object.entries(g.properties));
const sources = ['client', 'server'].flatMap(folder => readdirSync(new URL(`../../${folder}`, import.meta.url), { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts')).map(f => read(`${folder}/${f}`)));

/** The library of the client reads it, by the name that the client gives itself. */
const BY_LIBRARY = ['platewright.trace.server'];

function wanted(): string[] {
  const all = sources.flatMap(text => [
    ...[...text.matchAll(/getConfiguration\('platewright'[^)]*\)\.get<[^>]*>\('([\w.]+)'/g)].map(m => `platewright.${m[1]!}`),
    // A section of the server, of which each kind is asked for.
    ...[...text.matchAll(/^const [A-Z]+ = '(platewright\.\w+)';/gm)].filter(m => text.includes(`connection.workspace.getConfiguration(`) && m[1]!.length > 0)
      .flatMap(m => (m[1]!.endsWith('.hints') ? Object.keys(ALL_HINTS) : lensKinds(text)).map(k => `${m[1]!}.${k}`)),
  ]);
  return [...new Set(all)].sort();
}
const lensKinds = (text: string): string[] => [.../ALL_LENSES: Lenses = \{([^}]*)\}/.exec(text)![1]!.matchAll(/(\w+):/g)].map(m => m[1]!);

test('what is read can be set, and what can be set is read', () => {
  expect([...wanted(), ...BY_LIBRARY].sort()).toEqual(settings.map(([name]) => name).sort());
  expect(sources.some(s => s.includes("new LanguageClient('platewright',"))).toBe(true);
});
test('what is watched for changes can be set', () => {
  const watched = sources.flatMap(s => [...s.matchAll(/affectsConfiguration\('([\w.]+)'/g)].map(m => m[1]!));
  expect(watched.length).toBeGreaterThan(1);
  for (const w of watched) expect(settings.some(([name]) => name === w || name.startsWith(`${w}.`)), w).toBe(true);
});

test('groups have words and an order', () => {
  expect(groups.map(g => g.order)).toEqual(groups.map((_, i) => i + 1));
  for (const g of groups) expect(Object.values(g.properties).map(p => p.order)).toEqual(Object.values(g.properties).map((_, i) => i + 1));
  expect(new Set(groups.map(g => g.title)).size).toBe(groups.length);
});

describe.each(settings)('%s', (_, { type, default: by, markdownDescription, scope }) => {
  const words = markdownDescription;
  test('says what it does, and what it is by default', () => {
    expect(words).toMatch(/^[A-Z].*\.$/s);
    if (type === 'boolean') expect(words).toContain(by === true ? 'On by default' : 'Off by default');
    else expect(words).toMatch(/by default/i);
  });
  test('is read with the same default', () => {
    const name = _.replace('platewright.', '');
    const given = sources.flatMap(s => [...s.matchAll(new RegExp(`\\.get<[^>]*>\\('${name.replace('.', '\\.')}', ([^)]+)\\)`, 'g'))].map(m => JSON.parse(m[1]!) as unknown));
    for (const g of given) expect(g).toEqual(by);
  });
  if (type === 'array') test('lets no opened folder decide where files are read', () => { expect(scope).toBe('machine'); });
});

test('bounds that are told are those of the program', () => {
  expect(settings.find(([name]) => name === 'platewright.checkAllPages')![1].markdownDescription).toContain(`at most ${MAX_LISTED} pages`);
});
