// What has become of a page since an earlier version, in the workbench: by mouse and keyboard, in four themes.
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, expect } from './host/desk.mjs';
import { besideThePage, THEMES } from './host/panel.mjs';

const { folder, page, editor, command, open } = desk;
const { dialogs, grave, into, panel, picture, press, read, setHere, toText, until, written } = besideThePage();
const { keyboard } = page;

// The notebook of a few weeks: the shell is laid out, a plate is shot, a mirror goes and another moves.
const PAGE = 'whelk-again.plate';
const FIRST = 'whelk-first.plate';
const SHOT = '  shot 1 on 2026-02-01 {\n    outcome: "dull at the back"\n  }\n';
const now = readFileSync(join(folder, 'whelk-on-the-table.plate'), 'utf8').replace(/\}\s*$/, `${SHOT}}\n`);
const committed = now.replace('mirror M2 at (94, 420) mm', 'mirror M2 at (140, 420) mm');
const shot = committed.replace('mirror M3 at (400, 640) mm', 'mirror M3 at (400, 600) mm\n  mirror M9 at (900, 700) mm');
const first = shot.replace(SHOT, '').replace('"Whelk shell"', '"Whelk shell"');
// No commit has this one: its dates tell how it stood.
const DATED = 'dated.plate';
const dated = now.replace(/\}\s*$/, '  measured object at P1: 1475 mm by string on 2026-02-03\n}\n');
const HOSTILE = '<img src=x onerror=alert(1)>';
const hostile = (x) => `setup "${HOSTILE}" {\n  table: 900 x 600 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (${x}, 100) mm\n  beam stop B1 at (600, 500) mm\n  beam raw from red\n    -> M1\n    -> B1\n  note: "</svg><script>alert(2)</script>"\n}\n`;
const write = (name, text) => writeFileSync(join(folder, name), text);

const identity = { GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null', GIT_AUTHOR_NAME: 'Saltmarsh', GIT_AUTHOR_EMAIL: 'bench@saltmarsh.example', GIT_COMMITTER_NAME: 'Saltmarsh', GIT_COMMITTER_EMAIL: 'bench@saltmarsh.example' };
const git = (args, env = {}) => execFileSync('git', args, { cwd: folder, env: { ...process.env, ...identity, ...env }, encoding: 'utf8' }).trim();
/** Commits all pages that git knows, and these; gives the first letters of its name. */
function commit(subject, date, ...names) {
  git(['add', '-u']);
  git(['add', ...names]);
  git(['commit', '-q', '-m', subject], { GIT_AUTHOR_DATE: date, GIT_COMMITTER_DATE: date });
  return git(['rev-parse', '--short=7', 'HEAD']);
}
git(['init', '-q', '-b', 'main']);
write(FIRST, first);
write('hostile.plate', hostile(600));
const laidOut = commit('The whelk is laid out', '2026-01-14T20:00:00+0000', FIRST, 'hostile.plate', 'saltmarsh-lab.plate');
renameSync(join(folder, FIRST), join(folder, PAGE));
write(PAGE, shot);
const wasShot = commit('Shot 1, dull at the back', '2026-02-01T22:00:00+0000', PAGE);
write(PAGE, committed);
const last = commit(`${HOSTILE} M9 is gone`, '2026-02-11T21:00:00+0000', PAGE);
write(PAGE, now);
write(DATED, dated);
write('hostile.plate', hostile(650));
setHere({ 'git.enabled': true });

const lineOf = (what, text = now) => text.slice(0, text.indexOf(what)).split('\n').length;
const title = page.locator('.quick-input-widget .quick-input-title', { hasText: 'with an earlier version' });
const offered = page.locator('.quick-input-widget .monaco-list-row');
const sides = async () => `${await panel.locator('#before').textContent()} → ${await panel.locator('#after').textContent()}`;
const between = (before, after = PAGE) => until(async () => await sides() === `${before} → ${after}`, `it is not ${before} → ${after}`);
const headline = (words) => panel.locator('.headline', { hasText: words }).first().waitFor();
const row = (kind, words) => panel.locator(`.${kind} .row`, { hasText: words }).first();
const shape = (id) => panel.locator(`figure [data-item="${id}"]`).first();
const cursorIn = (line) => page.locator('.statusbar-item', { hasText: new RegExp(`Ln ${line}, Col`) }).waitFor();
const marked = async (line) => {
  await editor.locator('.line-numbers.active-line-number', { hasText: new RegExp(`^${line}$`) }).first().waitFor();
  await editor.locator('.selected-text').first().waitFor();
};
const lens = (words) => editor.locator('.codelens-decoration', { hasText: words });
/** A line above the text may be written anew under the mouse, and a click on it then goes nowhere: it is clicked once more. */
async function clickLens(words, shows, again = 2) {
  await lens(words).click();
  await shows(again > 0 ? 7000 : 20_000).catch((error) => { if (again > 0) return clickLens(words, shows, again - 1); throw error; });
}

/** Answers what the page is compared with, where this is offered `beside` it: asked while the window is busy it may close again, and is asked once more. */
async function compareWith(typed, wanted, beside = '', again = 3) {
  await command('Compare with an Earlier Version');
  const there = page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: wanted });
  const asked = async () => {
    await title.waitFor({ timeout: 7000 });
    await offered.filter({ hasText: beside }).first().waitFor({ timeout: 7000 });
    await keyboard.type(typed);
    await there.waitFor({ timeout: 7000 });
  };
  if (!(await asked().then(() => true, () => false))) {
    expect(again > 0, `“${wanted}” is not offered, but ${await offered.allTextContents()}`);
    await press('Escape');
    await toText();
    return compareWith(typed, wanted, beside, again - 1);
  }
  await press('Enter');
  await title.waitFor({ state: 'hidden' });
}

/** What the command line says, without its layout. */
const told = (...args) => spawnSync(process.execPath, ['dist/cli.cjs', 'diff', ...args], { encoding: 'utf8', env: { ...process.env, ...identity } }).stdout.replaceAll(/\s+/g, ' ');
/** Each row of the panel, as the command line writes it. */
const rows = (kind) => panel.locator(`.${kind} .row:not(.names)`).evaluateAll((all) => all.map((r) => Object.fromEntries(['words', 'before', 'after', 'by'].map((c) => [c, r.querySelector(`.${c}`)?.textContent ?? '']))));
async function saysThe(said) {
  const results = await rows('results');
  expect(results.length > 3, 'there are hardly any results');
  for (const { words, before, after, by } of results) {
    const line = `${words} ${before} → ${after}${by.replace(/^([+−][^,]*)/, ' ($1)').replace(/,? ?not for sure/, ' · not for sure')}`;
    expect(said.includes(line), `the command line does not say “${line}” but ${said}`);
  }
  for (const { words } of await rows('changes')) expect(said.includes(words), `the command line does not say “${words}”`);
  expect(said.includes((await panel.locator('.headline').first().textContent()).trim()), 'the headline is another one');
}

export const STEPS = {
  async 'a button above the page asks what it is compared with, and lists what there is'() {
    // The page may be further down than the list of files shows.
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: DATED }).waitFor({ timeout: 60_000 });
    await open(PAGE);
    const button = page.locator('.editor-actions a.action-label[aria-label*="Compare with an Earlier Version"]').first();
    // It takes a while until the editor knows the repository.
    let all = '';
    for (const end = Date.now() + 60_000; !all.includes('the last commit');) {
      expect(Date.now() < end, `offered is ${all}`);
      await button.click({ timeout: 60_000 });
      await title.waitFor();
      await offered.first().waitFor();
      all = (await offered.allTextContents()).join('\n');
      if (all.includes('the last commit')) await picture('what-to-compare-with');
      await press('Escape');
      await title.waitFor({ state: 'hidden' });
    }
    for (const words of ['shot 1', 'on 2026-02-01', 'Another file…', 'variant “closer plate”', `${HOSTILE} M9 is gone`, last, 'Shot 1, dull at the back', wasShot, 'The whelk is laid out', `${laidOut} · Jan 14, 2026 · as ${FIRST}`]) expect(all.includes(words), `“${words}” is not offered, but ${all}`);
  },
  async 'a revision is chosen, under another name of the page, and the tables say what the command line says'() {
    await compareWith('laid out', 'The whelk is laid out');
    await between(`${laidOut} “The whelk is laid out”, Jan 14, 2026`);
    await headline('Object beam');
    await saysThe(told('--git', laidOut, join(folder, PAGE)));
    expect((await rows('findings')).length > 0, 'there are no findings');
  },
  async 'the picture has the table as it is, over a ghost of how it was'() {
    for (const id of ['before:M2', 'before:M3', 'before:M9', 'M2', 'M3']) await shape(id).waitFor({ state: 'attached' });
    await panel.locator('figure text', { hasText: 'M9' }).first().waitFor();
    expect(await panel.locator('figure [data-item="M9"], figure [data-item="before:M1"]').count() === 0, 'what is gone stands there, or what stayed has a ghost');
    expect(/M2 moved 46 mm/.test(await panel.locator('figure svg').getAttribute('aria-label')), 'it is not read out');
    // What was drawn goes through the page's own list of elements.
    await picture('review-picture');
  },
  async 'a click on a row shows it in the text, and the keyboard stays in the panel'() {
    await row('changes', 'M3 was moved').click();
    await marked(lineOf('mirror M3'));
    expect(await row('changes', 'M3 was moved').evaluate((element) => element === document.activeElement), 'the keyboard is elsewhere');
    await row('results', 'object length').click();
    await marked(lineOf('beam object'));
    // On the picture too.
    await shape('M2').locator('.mount').first().click();
    await marked(lineOf('mirror M2'));
  },
  async 'rows are reached by keys, and Ctrl+Enter goes there'() {
    await row('changes', 'M2 was moved').focus();
    await press('ArrowDown', 'Enter');
    await marked(lineOf('mirror M3'));
    await press('ArrowUp', 'Control+Enter');
    await page.locator('.monaco-editor.focused').waitFor();
    await cursorIn(lineOf('mirror M2'));
    expect(await page.locator('.tab.dirty').count() === 0, 'looking changed the text');
  },
  async 'what is gone is shown in the earlier text, which nobody writes in'() {
    await row('changes', 'M9 is gone').click();
    await page.locator('.tab.active', { hasText: FIRST }).first().waitFor();
    await marked(lineOf('mirror M9', first));
    await toText();
    await keyboard.type('x');
    expect(await editor.locator('.view-line', { hasText: 'xmirror' }).count() === 0, 'something was written');
    expect(await lens('since').count() === 0, 'the earlier text has a line above its setup');
    await picture('review-gone');
    await read(PAGE);
  },
  async 'typing brings it up to date, unsaved, and nothing that is the same is drawn anew'() {
    await into(now, '(94, 420)', 3);
    await shape('M3').evaluate((element) => { element.sameAsBefore = true; });
    await press('Shift+ArrowLeft', 'Shift+ArrowLeft');
    await keyboard.type('99');
    await written('  mirror M2 at (99, 420) mm');
    await row('changes', 'M2 was moved, 41 mm to the left').waitFor();
    await row('changes', 'at (99, 420) mm').waitFor();
    expect(await page.locator('.tab.dirty').count() === 1, 'it was saved');
    expect(await shape('M3').evaluate((element) => element.sameAsBefore === true), 'the picture was drawn anew');
    await press('Control+Z');
    await row('changes', 'M2 was moved, 46 mm to the left').waitFor();
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'above the setup stands what the last commit did not have yet, and a click shows it'() {
    await into(now, 'setup "Whelk', 1);
    await clickLens('since the last commit: object beam +63 mm; 1 finding cured', (timeout) => panel.locator('#before', { hasText: 'the last commit' }).waitFor({ timeout }));
    await between('the last commit');
    await headline('Object beam +63 mm; 1 finding cured.');
    await until(async () => (await rows('changes')).length === 1, 'more than one change is told');
    await saysThe(told('--git', 'HEAD', join(folder, PAGE)));
    await picture('review-lens');
  },
  async 'the line follows while one types, and a setting takes it away'() {
    await into(now, '(94, 420)', 3);
    await press('Shift+ArrowLeft', 'Shift+ArrowLeft');
    await keyboard.type('140');
    await lens('since').waitFor({ state: 'detached' });
    await headline('Nothing differs');
    await press('Control+Z');
    await lens('object beam +63 mm').waitFor();
    setHere({ 'git.enabled': true, 'platewright.lens': false });
    await lens('since').waitFor({ state: 'detached' });
    setHere({ 'git.enabled': true });
    await lens('object beam +63 mm').waitFor();
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'another file is chosen, and what it differs by is followed in both'() {
    await toText();
    await compareWith('another', 'Another file…');
    const path = page.locator('.quick-input-widget input').first();
    await until(async () => (await path.inputValue()).endsWith('/'), 'no file is asked for');
    await page.locator('.quick-input-widget .monaco-list-row', { hasText: DATED }).first().click();
    await between(DATED);
    await row('changes', 'measured').waitFor();
    await row('changes', 'measured').click();
    await page.locator('.tab.active', { hasText: DATED }).first().waitFor();
    await marked(lineOf('measured object at P1', dated));
    await into(dated, '(1100, 100)', 5);
    await press('Shift+ArrowLeft');
    await keyboard.type('9');
    await row('changes', 'M1 was moved').waitFor();
    await press('Control+Z');
    await row('changes', 'M1 was moved').waitFor({ state: 'detached' });
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'a shot is chosen: how the page stood is what the oldest revision says that has it'() {
    await read(PAGE);
    await compareWith('shot 1', 'shot 1');
    await between(`shot 1 on 2026-02-01, as committed in ${wasShot}`);
    await saysThe(told(join(folder, PAGE), '--shot', '1'));
  },
  async 'in no revision it is what the dates on the page say'() {
    await read(DATED);
    await compareWith('shot 1', 'shot 1', 'This page is in no commit yet.');
    await between('shot 1 on 2026-02-01, by the dates on the page', DATED);
    await row('changes', 'measured').waitFor();
    await saysThe(told(join(folder, DATED), '--shot', '1'));
    // It is made of the page, and follows it.
    await into(dated, '1475 mm by string', 2);
    await press('Shift+ArrowRight');
    await keyboard.type('8');
    await row('changes', '1485 mm').waitFor();
    await press('Control+Z');
    await row('changes', '1475 mm').waitFor();
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'a variant is chosen by a button in the panel'() {
    await read(PAGE);
    await compareWith('last', 'the last commit');
    await between('the last commit');
    const asked = page.locator('.quick-input-widget .monaco-list-row', { hasText: 'variant “closer plate”' });
    await panel.locator('#other').click();
    await asked.click();
    await between('“Whelk shell” as written', 'variant “closer plate”');
    await saysThe(told(join(folder, PAGE), '--variant', 'closer plate'));
    await shape('before:P1').waitFor({ state: 'attached' });
    await picture('review-variant');
  },
  async 'where the page is broken it says what is amiss, and compares what can be'() {
    await compareWith('last', 'the last commit');
    await between('the last commit');
    await into(now, 'from S1 reflected', 'from S1'.length);
    await press('Shift+ArrowLeft');
    await keyboard.type('7');
    await row('findings', 'S7').waitFor();
    await row('changes', 'M2 was moved').waitFor();
    await row('results', 'object').first().waitFor();
    await shape('before:M2').waitFor({ state: 'attached' });
    await picture('review-broken');
    await row('findings', 'S7').click();
    await marked(lineOf('beam object'));
    await toText();
    await press('Control+Z');
    await row('findings', 'S7').waitFor({ state: 'detached' });
    await until(async () => (await page.locator('.tab.dirty').count()) === 0, 'the text is not what it was');
  },
  async 'a name that looks like markup is only ever text'() {
    await read('hostile.plate');
    await compareWith('last', 'the last commit');
    await between('the last commit', 'hostile.plate');
    await panel.locator('h2', { hasText: HOSTILE }).waitFor();
    await panel.locator('figure text', { hasText: HOSTILE }).first().waitFor();
    expect(await panel.locator('img, body > script:not([src]), figure script, iframe, object, embed').count() === 0, 'there is an element that nobody drew');
    expect(dialogs.length === 0, `there was a dialog: ${dialogs}`);
  },
  async 'the window loaded anew has the comparison again'() {
    await read(PAGE);
    await compareWith('laid out', 'The whelk is laid out');
    await row('changes', 'M9 is gone').waitFor();
    const anew = page.waitForEvent('load', { timeout: 60_000 });
    await command('Developer: Reload Window');
    await anew;
    await row('changes', 'M9 is gone').waitFor({ timeout: 120_000 });
    await headline('Object beam');
    await into(now, 'setup "Whelk', 1);
    await lens('since the last commit').waitFor({ timeout: 60_000 });
  },
  async 'a commit of what there is leaves nothing above the setup'() {
    await toText();
    await compareWith('last', 'the last commit');
    await headline('Object beam +63 mm');
    commit('M2 to the left', '2026-02-12T20:00:00+0000', PAGE);
    await command('Git: Refresh');
    await headline('Nothing differs');
    await lens('since').waitFor({ state: 'detached' });
  },
  async 'it can be read in a narrow window'() {
    await compareWith('laid out', 'The whelk is laid out');
    await row('changes', 'M9 is gone').waitFor();
    await page.setViewportSize({ width: 1000, height: 800 });
    const wide = () => panel.locator('html').evaluate((html) => [html.scrollWidth, html.clientWidth]);
    await until(async () => (await wide())[1] <= 400, 'it is not narrow');
    const [content, width] = await wide();
    expect(content <= width, `it is ${content} pixels wide in ${width}`);
    await picture('review-narrow');
    await page.setViewportSize({ width: 1280, height: 800 });
  },
};

for (const [theme, name] of Object.entries(THEMES)) STEPS[`in the theme ${theme} it can be read and used by all`] = async () => {
  setHere({ 'git.enabled': true, 'workbench.colorTheme': theme });
  await panel.locator(`body.${name}`).waitFor();
  await row('changes', 'M9 is gone').focus();
  await page.waitForTimeout(300);
  await picture(`review-${name}`);
  const found = await grave();
  expect(found === '', found);
};
