/** A shot as it is written down, what the page says of the evening, and the outcome next morning. */
import { describe, expect, it, test } from 'vitest';
import { alone } from '../../../server/analysis.ts';
import { shotEntry, type Entry, type Exposed } from '../../../server/features/shoot/entry.ts';
import { eveningOf } from '../../../server/features/shoot/evening.ts';
import { noteOutcome, openShot } from '../../../server/features/shoot/outcome.ts';
import { nextName, oddDays, shotsIn } from '../../../server/features/shoot/shots.ts';
import { lines as cardLines } from '../card/source.ts';
import { cardOf } from '../../../server/features/card/card.ts';
import { but, whelk } from '../source.ts';
import { added, made, page } from './source.ts';

const also = (more: string, text = whelk): string => text.replace(/\}\s*$/, `${more}}\n`);
const SHOT: Exposed = { on: '2026-02-18', exposures: [{ seconds: 20 }], settle: 180 };
function entry(text: string, shot: Exposed = SHOT): Entry {
  const s = page(text);
  const e = shotEntry(s, s.results[0]!, shot, alone);
  if ('refused' in e) throw new Error(e.refused);
  return e;
}
const shotsOf = (text: string) => shotsIn(page(text).results[0]!.setup);

const METERED = also('  settle: 3 min\n  exposure: 20 s\n  room {\n    temperature: 19.5 °C ± 0.5 K\n    humidity: 55%\n  }\n  measured raw at S1: 11.4 mW ± 3%\n  measured reference at P1: 1.2 µW/cm²\n  measured object at P1: 0.3 µW/cm²\n', but('  plate P1\n', '  plate P1 {\n    batch: "box 3"\n  }\n'));

describe('an entry', () => {
  it('has the settings as they stood, what was read, the room and the box', () => {
    // 1.2/0.3 = 4
    const text = made(page(METERED), entry(METERED).edits);
    expect(added(METERED, text)).toHaveLength(11);
    expect(page(text).findings.filter(f => f.severity === 'error')).toEqual([]);
    expect(text).toContain('\n\n  shot 1 on 2026-02-18 {\n    batch: "box 3"\n    exposure: 20 s\n    settle: 3 min\n    power: 11.4 mW ± 3%\n    beam ratio: 4:1\n    temperature: 19.5 °C ± 0.5 K\n    humidity: 55%\n    note: "object − reference 84 ± 7 mm, reference 1.2 µW/cm² at P1, object light 0.3 µW/cm² at P1"\n  }\n}\n');
  });
  it('leaves out what nobody has read: a ratio that is only planned is no setting', () => {
    const { text } = entry(whelk, { on: '2026-02-18', exposures: [{ seconds: 7.5 }] });
    expect(text).toBe('  shot 1 on 2026-02-18 {\n    exposure: 7.5 s\n    note: "object − reference 84 ± 7 mm"\n  }');
  });
  it('goes behind the last shot, as the next number, and changes no other byte', () => {
    const before = also('  shot 7 on 2026-02-11 {\n    outcome: "dull"\n  } // kept\n  shot 9 on 2026-02-12 {\n  }\n  process on 2026-02-12 {\n    develop: 3 min\n  }\n');
    const { name, text, edits } = entry(before);
    expect(name).toBe('10');
    expect(made(page(before), edits)).toBe(before.replace('  shot 9 on 2026-02-12 {\n  }\n', `  shot 9 on 2026-02-12 {\n  }\n${text}\n`));
  });
  it('keeps line ends', () => { const before = also('  shot 1 on 2026-02-11 {\n  }\n').replaceAll('\n', '\r\n'); expect(made(page(before), entry(before).edits)).not.toMatch(/[^\r]\n/); });
  it('keeps what happened, whatever is in it', () => {
    const { text } = entry(whelk, { ...SHOT, note: 'the "cat"\n} came by' });
    expect(text).toContain('; the  cat  } came by"');
    expect(page(made(page(whelk), entry(whelk, { ...SHOT, note: 'the "cat"\n} came by' }).edits)).findings.filter(f => f.severity === 'error')).toEqual([]);
  });
  it('in a page whose brace is lost is told in full where it cannot be written', () => {
    const torn = but('  beam raw from red\n', '  room {\n  beam raw from red\n');
    const s = page(torn);
    const e = shotEntry(s, s.results[0]!, SHOT, alone);
    if ('refused' in e) expect(e.refused).toContain('exposure: 20 s');
    else expect(shotsOf(made(s, e.edits))).toHaveLength(1);
  });
});

describe('what the panel is given', () => {
  const of = (text: string) => eveningOf(page(text).results[0]!, '1', [])!;
  it('is what stands on the bench card', () => {
    const s = page(METERED);
    const shoot = cardLines(cardOf(s, s.results[0]!, 'a.plate'), 'shoot').join('\n');
    const e = of(METERED);
    for (const words of [...e.before, ...e.dark].map(x => x.text).concat(e.handsOff, e.away, e.openings.map(o => o.close.text))) expect(shoot).toContain(words);
  });
  it('has the times that are written', () => { expect(of(METERED)).toMatchObject({ settle: { text: '3 min', seconds: 180 }, openings: [{ seconds: 20 }] }); });
  it('proposes what the page comes to where no exposure is written', () => {
    // 40 µJ/cm² by 1.6 µW/cm² is 25 s
    const e = of(also('  measured reference at P1: 1.2 µW/cm²\n  measured object at P1: 0.4 µW/cm²\n', but('  plate P1\n', '  plate P1 {\n    sensitivity: 40 µJ/cm²\n  }\n')));
    expect(e.openings.map(o => o.seconds)).toEqual([25]);
  });
  it('proposes nothing where nothing tells', () => { const e = of(whelk); expect([e.settle, e.openings.map(o => [o.seconds, o.byPage])]).toEqual([{ text: '' }, [[undefined, '']]]); });
  it('warns of the beam, and says that nothing is safe', () => { const all = JSON.stringify(of(whelk)); expect(all).toMatch(/No beam into an eye/); expect(all).not.toMatch(/\bsafe\b/i); });
  it('of a setup without a plate there is none', () => { expect(eveningOf(page('setup "A" {\n  laser red\n}\n').results[0]!, '1', [])).toBeUndefined(); });
});

describe('a plate that gets two exposures', () => {
  // It needs 40 µJ/cm² by 1.6 µW/cm², which is 25 s: 60 % of it are 15 s, the rest 10 s.
  const METERED_ONCE = '  measured reference at P1: 1.2 µW/cm²\n  measured object at P1: 0.4 µW/cm²\n';
  const SENSITIVE = but('  plate P1\n', '  plate P1 {\n    sensitivity: 40 µJ/cm²\n  }\n');
  const BOTH = '  exposure first {\n    share: 60%\n  }\n  exposure second {\n    variant: "other"\n  }\n';
  const twice = also(`${METERED_ONCE}  variant "other" {\n    red.coherence length: 300 mm\n  }\n${BOTH}`, SENSITIVE);
  const of = (text: string) => eveningOf(page(text).results[0]!, '1', [])!.openings;
  it('gets both, one after the other, each with its own time', () => {
    expect(of(twice)).toMatchObject([
      { name: 'first', seconds: 15, change: [], close: { text: 'Shutter closed, the card back in the beam; the plate stays where it is, and the light stays out.' } },
      { name: 'second', seconds: 10, change: [{ text: 'The table as in “other”.', small: 'red.coherence length: 300 mm' }], close: { text: 'Shutter closed; the plate shut away before the light goes on.' } },
    ]);
  });
  it('is set up for its first one while it is light, where that is a variant', () => {
    const turned = twice.replace(BOTH, '  exposure first {\n    variant: "other"\n    share: 60%\n  }\n  exposure second {\n  }\n');
    expect(of(turned)).toMatchObject([{ change: [{ text: 'The table as in “other”.' }] }, { change: [{ text: 'The table as it is written.' }] }]);
    expect(steps(turned).map(t => t.replace(/ .*/, ''))).toEqual(['Laser', 'Nothing', 'The', 'The', 'Light', 'P1', 'Hands', 'The', 'Open,', 'Shutter', 'The', 'Hands', 'The', 'Open,', 'Shutter']);
  });
  it('has a written time where it is written for that one', () => {
    const written = twice.replace('  variant "other" {\n', '  exposure: 14 s\n  variant "other" {\n');
    expect(of(written).map(o => [o.written, o.seconds])).toEqual([['14 s', 14], ['', 10]]);
    expect(of(written.replace('300 mm\n', '300 mm\n    exposure: 9 s\n')).map(o => [o.written, o.seconds])).toEqual([['14 s', 14], ['9 s', 9]]);
  });
  it('tells what becomes of the table without comments, its time and braces', () => {
    const more = twice.replace('300 mm\n', '300 mm // by the label\n    exposure: 9 s\n    // no more\n    /// For the room.\n    room {\n      temperature: 19 °C\n    }\n');
    expect(of(more)[1]!.change).toMatchObject([{ small: 'red.coherence length: 300 mm; room' }]);
  });
  it('is never told to be open for the whole at once', () => {
    const told = steps(twice);
    expect(told.filter(t => t.startsWith('Open'))).toEqual(['Open, first: 15 s by the page. Tonight:', 'Open, second: 10 s by the page. Tonight:']);
    expect(told.filter(t => t.startsWith('Hands off'))).toHaveLength(2);
    expect(told.at(-1)).toMatch(/shut away/);
  });
  const beside = twice.replace('  plate P1 {', '  plate P2\n  plate P1 {').replace(/(\n {2}beam object [^]*?)(\n {2}measured)/, '$1\n  beam second from S1 reflected\n    -> P2: 500 mm\n$2');
  it('gets them together with another plate that stands there: the shutter is opened twice, not four times', () => { expect(of(beside).map(o => o.name)).toEqual(['first', 'second']); });
  it('stands beside one that gets a single exposure: that has its own name, and none is lost in the entry', () => {
    const alone = beside.replaceAll(/( {2}exposure (?:first|second) \{\n)/g, '$1    plate: P1\n');
    expect(of(alone).map(o => o.name)).toEqual(['P2', 'first', 'second']);
    expect(entry(alone, { ...SHOT, exposures: of(alone).map((o, i) => ({ name: o.name!, seconds: i + 1 })) }).text).toContain('note: "P2 1 s; first 2 s; second 3 s; ');
  });
  it('has both in its entry, and no exposure that would be that of one', () => {
    const { text } = entry(twice, { ...SHOT, exposures: [{ name: 'first', seconds: 15 }, { name: 'second', seconds: 9.5 }] });
    expect(text).toContain('    note: "first 15 s; second 9.5 s; ');
    expect(text).not.toContain('exposure:');
  });
});
const steps = (text: string): string[] => {
  const s = page(text);
  const shoot = cardOf(s, s.results[0]!, 'a.plate').sections.find(x => x.name === 'shoot')!;
  return shoot.blocks.flatMap(b => (b.kind === 'steps' ? b.steps.map(x => x.text) : []));
};

describe('shots out of order', () => {
  const days = (...on: readonly (string | undefined)[]) => shotsOf(also(on.map((d, i) => `  shot ${i + 1}${d === undefined ? '' : ` on ${d}`} {\n  }\n`).join('')));
  it('are none of the program’s to put in order', () => { expect(oddDays(days('2026-02-12', '2026-02-11'), '2026-02-18')).toEqual([expect.stringMatching(/^On the page shot 2 of 2026-02-11 stands behind shot 1 of 2026-02-12\. Nothing is put in order/)]); });
  it('after today speak for a clock that is wrong', () => { expect(oddDays(days('2026-02-19'), '2026-02-18T21:40')).toEqual([expect.stringMatching(/^Shot 1 on the page is of 2026-02-19, which is after today \(2026-02-18\): see whether the clock/)]); });
  it('of the same name', () => { expect(oddDays(shotsOf(also('  shot 7 {\n  }\n  shot 7 {\n  }\n')), '2026-02-18')).toEqual([expect.stringMatching(/^Two shots on the page are called 7/)]); });
  it('in order are not spoken of', () => { expect(oddDays(days('2026-02-11', '2026-02-11', undefined, '2026-02-12'), '2026-02-12')).toEqual([]); });
  it('do not keep an entry from being written', () => { const late = also('  shot 1 on 2027-01-01 {\n  }\n'); expect(entry(late)).toMatchObject({ name: '2', notes: [expect.stringContaining('after today')] }); });
  test.each([[['7', '12', 'b'], '13'], [[], '1'], [['strip'], '1'], [['7.5'], '1']])('after %j comes %s', (names, next) => { expect(nextName(names.map(name => ({ name, on: undefined, node: undefined as never })))).toBe(next); });
});

describe('an outcome', () => {
  const two = also('  shot 1 on 2026-02-11 {\n    exposure: 20 s\n    outcome: "dull"\n  }\n  shot 2 on 2026-02-12 {\n    exposure: 20 s\n  }\n  shot 3 on 2026-02-10 {\n  }\n');
  const note = (text: string, shot: string, words: string) => { const s = page(text); return noteOutcome(s, s.results[0]!, shot, words, alone); };
  const after = (text: string, shot: string, words: string): string => { const n = note(text, shot, words); if ('refused' in n) throw new Error(n.refused); return made(page(text), n.edits); };
  it('is wanted for the newest shot without one', () => { expect(openShot(page(two).results[0]!)).toMatchObject({ shot: '2', on: '2026-02-12', more: 1, words: expect.arrayContaining(['dark at the back', 'nothing at all']) as string[] }); });
  it('is one line in its block, and nothing else', () => { expect(after(two, '2', 'dull at the back')).toBe(two.replace('    exposure: 20 s\n  }\n  shot 3', '    exposure: 20 s\n    outcome: "dull at the back"\n  }\n  shot 3')); });
  it('goes into an empty block, and into a shot that has none', () => {
    expect(after(two, '3', 'bright')).toContain('  shot 3 on 2026-02-10 {\n    outcome: "bright"\n  }\n');
    const bare = also('  shot 4 on 2026-02-13 // at last\n');
    expect(after(bare, '4', 'bright')).toContain('  shot 4 on 2026-02-13 { // at last\n    outcome: "bright"\n  }\n');
    expect(page(after(bare, '4', 'bright')).findings.filter(f => f.severity === 'error')).toEqual([]);
  });
  it('says what “why” understands by it', () => {
    expect(note(two, '2', 'dull at the back')).toMatchObject({ says: '“Why” understands “dark at the back”.' });
    expect(note(two, '2', 'dark at the back')).toMatchObject({ says: '' });
    expect(note(two, '2', 'bright')).toMatchObject({ says: 'Nothing to look for.' });
    expect(note(two, '2', 'wood grane')).toMatchObject({ says: '“Why” knows no such outcome; did you mean “wood grain”? It is kept as it is.' });
  });
  it('takes any words', () => { expect(after(two, '2', 'like a "ghost"\n} of\tit')).toContain('    outcome: "like a ghost } of it"\n  }\n'); });
  it('never takes the place of one', () => {
    expect(note(two, '1', 'bright')).toEqual({ refused: 'The page has no shot 1 without an outcome any more.' });
    expect(openShot(page(also('  shot 1 {\n    outcome: "dull"\n  }\n')).results[0]!)).toMatch(/^Every shot in “Whelk shell” has its outcome already\. What is written is not written over/);
  });
  it('without a shot is nothing', () => {
    expect(openShot(page(whelk).results[0]!)).toMatch(/^There is no shot in “Whelk shell” yet/);
    expect(note(whelk, '1', 'bright')).toHaveProperty('refused');
    expect(note(two, '2', ' \n ')).toEqual({ refused: 'Nothing is written there.' });
  });
});
