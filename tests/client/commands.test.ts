/** Each command has words, a picture, a condition and a place; the guide names only what is there. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { STARTS } from '../../server/features/starts/starts.ts';
import { MANIFEST, read } from './manifest.ts';

const { commands, languages, menus, walkthroughs } = MANIFEST.contributes;
const own = commands.map(c => c.command);

/** Of use wherever somebody is. */
const ALWAYS: Readonly<Record<string, string>> = {
  'platewright.newSetup': 'a page begins where there is none yet', 'platewright.firstSteps': 'a guide for who has no page yet',
  'platewright.showOutput': 'what went wrong may be that no page opens', 'platewright.restartServer': 'as may be what has to begin anew',
};
/** In the list of commands only. */
const NO_MENU: Readonly<Record<string, string>> = {
  'platewright.firstSteps': 'the editor lists it among its guides', 'platewright.darkenPlan': 'the panel has a button for it', 'platewright.showOutput': 'nothing of a page', 'platewright.restartServer': 'nothing of a page',
};

describe.each(commands.map(c => [c.command, c] as const))('%s', (name, { title, category, icon, enablement }) => {
  test('has a title, and stands under Platewright in the list of commands', () => {
    expect(category).toBe('Platewright');
    expect(title).toMatch(/^[A-Z]/);
    expect(title).not.toMatch(/[.…]$/);
  });
  test('has a picture, of the editor’s own or in two colours', () => {
    if (typeof icon === 'string') expect(icon).toMatch(/^\$\([a-z]+(-[a-z]+)*\)$/);
    else for (const file of [icon!.light, icon!.dark]) expect(read(file)).toMatch(/^<svg /);
  });
  test('can be given where there is a page, or says why everywhere', () => {
    if (name in ALWAYS) expect(enablement).toBeUndefined();
    else expect(enablement).toMatch(/^editorLangId == plate( \|\||$)/);
  });
  test('has a place besides the list of commands, or is known to need none', () => {
    expect(Object.values(menus).flat().some(m => m.command === name)).toBe(!(name in NO_MENU));
  });
  test('is registered once', () => {
    const registered = sources.match(new RegExp(`registerCommand\\((?:'${name}'|${name === 'platewright.why' ? 'WHY_COMMAND' : '(?!)'})`, 'g'));
    expect(registered).toHaveLength(1);
  });
});

const sources = readdirSync(new URL('../../client', import.meta.url), { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts')).map(f => read(`client/${f}`)).join('\n');

test('nothing is registered that has no words, but for what the server’s lenses call', () => {
  const names = [...sources.matchAll(/registerCommand\('([^']+)'/g)].map(m => m[1]!);
  expect(names.filter(n => !own.includes(n))).toEqual([]);
  expect([...sources.matchAll(/registerCommand\(([A-Z_]+),/g)].map(m => m[1])).toEqual(expect.arrayContaining(['REVIEW_COMMAND', 'WHY_COMMAND']));
});

test('menus show nothing on other files', () => {
  const loose = Object.entries(menus).filter(([menu]) => menu !== 'file/newFile').flatMap(([menu, items]) => items.filter(i => !/\b(?:resourceLangId|editorLangId) == plate\b/.test(i.when ?? '')).map(i => `${menu}: ${i.command}`));
  // On a folder a page can begin.
  expect(loose).toEqual(['explorer/context: platewright.newSetup']);
  expect(menus['explorer/context']!.find(i => i.command === 'platewright.newSetup')!.when).toBe('explorerResourceIsFolder');
  for (const item of Object.values(menus).flat()) expect(own).toContain(item.command);
});

test('pages have a picture of our own on light and on dark ground', () => {
  const { light, dark } = languages[0]!.icon;
  expect(light).not.toBe(dark);
  for (const file of [light, dark]) expect(read(file)).toMatch(/^<svg [^>]*viewBox="0 0 16 16"/);
});

describe('the guide', () => {
  /** The editor's own. */
  const EDITORS = ['workbench.actions.view.problems', 'editor.action.quickFix'];
  const [guide] = walkthroughs;
  const steps = guide!.steps;
  const linked = steps.flatMap(s => [...s.description.matchAll(/\]\(command:([^)?]+)(?:\?([^)]*))?\)/g)].map(m => ({ command: m[1]!, said: m[2] })));

  test('goes from an empty page to a shot', () => {
    expect(steps.map(s => s.id)).toEqual(['begin', 'finding', 'fix', 'plan', 'card', 'shoot']);
    expect(read('client/new-setup.ts')).toContain(`'${MANIFEST.publisher}.${MANIFEST.name}#${guide!.id}'`);
  });
  test('names commands that are there, and pages to begin with', () => {
    expect(linked.length).toBeGreaterThan(5);
    for (const { command, said } of linked) {
      expect([...own, ...EDITORS]).toContain(command);
      if (said !== undefined) expect(STARTS.map(s => s.name)).toContain(JSON.parse(decodeURIComponent(said)));
    }
  });
  test.each(steps.map(s => [s.id, s] as const))('%s is done when its command was given', (_, { completionEvents }) => {
    expect(completionEvents).toHaveLength(1);
    expect([...own, ...EDITORS]).toContain(completionEvents[0]!.replace('onCommand:', ''));
  });
  test.each(steps.map(s => [s.id, s] as const))('%s has a small picture that follows the theme and loads nothing', (_, { media }) => {
    const picture = read(media.svg);
    expect(picture.length).toBeLessThan(2000);
    expect(picture).toContain('var(--vscode-foreground)');
    expect(picture).not.toMatch(/href|url\(|<script|<style|<image|style=/);
    expect(media.altText).not.toBe('');
  });
});
