import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { alone, analyse, type Library } from '../../server/analysis.ts';
import { completionsAt, completionWords, type Completion, type Surroundings } from '../../server/features/completion/completion.ts';
import { factsOf, KINDS, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../../server/model/things/index.ts';
import { look } from '../checks/library.ts';
import { page } from '../grammar/sentences.ts';
import { withoutStops } from './snippets.ts';
import { but, FILE, marked, whelk } from './source.ts';

const LAB = 'inventory lab {\n  /// North table.\n  laser red-12 {\n    wavelength: 632.8 nm\n    power: 12 mW ± 10%\n  }\n  mirror flat-50\n  meter meter-1\n  string thread\n}\n';
const withLab: Library = { ...alone, text: uri => (uri === 'lab.plate' ? LAB : undefined) };

/** What is offered at the mark. */
function offered(source: string, around: Surroundings = {}, library: Library = alone): Completion[] {
  const { snapshot, line, character } = marked(source, library);
  return completionsAt(snapshot, line, character, around);
}
const labels = (items: readonly Completion[]): string[] => items.map(i => i.label);
/** Checks the labels, in their order; with `…` at the end of the list others may follow. */
function check(source: string, expected: readonly string[], library: Library = alone): Completion[] {
  const items = offered(source, {}, library);
  const open = expected.at(-1) === '…';
  expect(open ? labels(items).slice(0, expected.length - 1) : labels(items)).toEqual(open ? expected.slice(0, -1) : expected);
  return items;
}
/** The text after the item was taken, as an editor with stops has it. */
function taken(source: string, label: string, library: Library = alone): string {
  const { snapshot: { text }, line } = marked(source, library);
  const item = offered(source, {}, library).find(i => i.label === label);
  if (!item) throw new Error(`“${label}” is not offered, but ${labels(offered(source, {}, library)).join(', ')}`);
  const lines = text.split('\n');
  const own = lines[line]!;
  lines[line] = own.slice(0, item.at.start) + (item.snippet === undefined ? item.text : withoutStops(item.snippet)).replaceAll('\n', `\n${/^\s*/.exec(own)![0]}`) + own.slice(item.at.end);
  return lines.join('\n');
}
/** A line at the end of the whelk's setup. */
const inWhelk = (...lines: string[]): string => whelk.replace(/\}\n$/, `\n${lines.map(l => `  ${l}`).join('\n')}\n}\n`);
const line = (text: string): string => text.split('\n').at(-3)!.trim();
/** In the setup of the whelk and with an inventory. */
const andLab = (...lines: string[]): string => `use "lab.plate"\n${inWhelk(...lines)}`;

describe('at the start of a line', () => {
  it('of a file', () => { check('|', ['setup', 'inventory', 'use', 'setup { … }']); });
  it('of an inventory are kinds', () => expect(labels(check('inventory lab {\n  |\n}', ['laser', 'laser { … }', '…']))).not.toContain('beam'));
  it('of an empty setup is what to make, then what it takes', () => { check('setup "a" {\n  |\n}', ['hologram', 'laser', 'laser { … }', '…']); });
  it('of a setup are kinds, statements, and facts that it does not state yet', () => {
    const items = offered(inWhelk('|'));
    const found = labels(items);
    for (const w of [...KINDS.map(k => k.word), 'beam', 'measured', 'expect', 'variant', 'table', 'beam height']) expect(found).toContain(w);
    expect(labels(items.filter(i => i.kind === 'fact'))).toEqual(SETUP_FACTS.map(f => f.phrase).filter(p => p !== 'hologram'));
  });
  it('of any setup what is made before the things that are called the same', () => {
    for (const source of ['setup "a" {\n  hol|\n}', inWhelk('hol|').replace('  hologram: transmission\n', '')]) expect(offered(source).filter(i => i.label === 'hologram').map(i => i.kind)).toEqual(['fact', 'kind']);
  });
  it('of a block are its facts, the usual ones first, but those written', () => {
    check('setup "a" {\n  spreader R1 {\n    pinhole: 10 µm\n    |\n  }\n}', ['focal length', 'loss', 'power', '…']);
  });
  it.each([['shot', SHOT_FACTS], ['process', PROCESS_FACTS]] as const)('of a %s', (word, facts) => expect(labels(offered(inWhelk(`${word} 7 {`, '  |', '}')))).toEqual(facts.map(f => f.phrase)));
  it('of a variant are things, what is said of them, legs', () => {
    const found = labels(check(inWhelk('variant "b" {', '  |', '}'), ['red', 'S1', 'M1', 'M2', 'M3', 'whelk', 'P1', '…']));
    for (const w of ['red.tube length', 'whelk.depth', 'S1 -> M1', 'beam', 'mirror', 'beam height']) expect(found).toContain(w);
    expect(found).not.toContain('expect');
  });
  it('with a misspelt block above nothing is guessed', () => { check('setub "a" {\n  |\n}', []); });
});

describe('the vocabulary shows up by itself', () => {
  it.each(KINDS.map(k => [k.word, k] as const))('all facts of a %s', (word, kind) =>
    expect(labels(offered(`inventory lab {\n  ${word} a {\n    |\n  }\n}`)).sort()).toEqual(factsOf(kind).map(f => f.phrase).sort()));
  it.each(KINDS.filter(k => k.usual).map(k => [k.word, k] as const))('a whole %s is understood', (word, kind) => {
    const { findings, model } = look(taken(`inventory lab {\n  ${word.slice(0, 3)}|\n}`, `${word} { … }`));
    expect(findings).toEqual([]);
    const [thing] = model.inventories[0]!.things.values();
    expect([thing!.kind.word, [...thing!.facts.values()].map(f => f.fact.phrase)]).toEqual([word, kind.usual!.filter(p => thing!.facts.has(p) || kind.facts.find(f => f.phrase === p)?.type.type !== 'name')]);
  });
  it('each fact with its value, in a setup', () => {
    for (const f of SETUP_FACTS) expect(look(taken('setup "a" {\n  |\n}', f.phrase)).findings.map(x => x.code).filter(c => !['value-expected', 'not-computed-yet'].includes(c)), f.phrase).toEqual([]);
  });
});

describe('whole pieces', () => {
  it('leave no stop behind where one goes on writing', () => {
    const snippet = (source: string, label: string): string | undefined => offered(source).find(i => i.label === label)?.snippet;
    expect(snippet('|', 'setup')).toBe('setup "${1:name}" {\n  $0\n}');
    expect(snippet(inWhelk('var|'), 'variant')).toBe('variant "${1:name}" {\n  $0\n}');
    expect(snippet(inWhelk('mirror M9 |'), '{ … }')).toBe('{\n  $0\n}');
  });
  it('a beam starts at what there is', () => {
    const beam = (source: string): string | undefined => offered(source).find(i => i.label === 'beam')?.snippet;
    expect(beam(`${whelk.slice(0, whelk.indexOf('  beam raw'))}  be|\n}\n`)).toBe('beam ${1:name} from ${2|red,S1 through,S1 reflected,whelk|}$0');
    expect(beam('setup "a" {\n  be|\n}')).toBe('beam ${1:name} from $2$0');
  });
  it('a small setup has no fault', () => {
    const { findings, results } = look(taken('|', 'setup { … }'));
    expect(findings.filter(f => f.severity !== 'hint')).toEqual([]);
    // 700 + 500 mm and 400 + 500 + 300 mm
    const [r] = results;
    expect(r!.graph.value(r!.plates[0]!.pairs[0]!.mismatch)).toBeCloseTo(0, 12);
  });
  it('names are the next that are free', () => {
    expect(line(taken(inWhelk('mir|'), 'mirror'))).toBe('mirror M4');
    expect(line(taken(inWhelk('las|'), 'laser'))).toBe('laser L1');
    expect(line(taken(inWhelk('half|'), 'half-wave plate'))).toBe('half-wave plate HW1');
    check(inWhelk('mirror |'), ['M4', 'mirror { … }']);
  });
  it('a beam from where none starts, with its legs', () => {
    const bare = whelk.slice(0, whelk.indexOf('  beam raw'));
    const raw = taken(`${bare}  |\n}\n`, 'beam from red …');
    expect(raw).toContain('  beam raw from red\n    -> S1: 300 mm\n}');
    const reference = taken(raw.replace(/\n\}\n$/, '\n  |\n}\n'), 'beam from S1 through …');
    expect(reference).toContain('  beam reference from S1 through\n    -> M1: 300 mm\n    -> P1: 300 mm\n}');
    const object = taken(reference.replace(/\n\}\n$/, '\n  |\n}\n'), 'beam from S1 reflected …');
    expect(object).toContain('  beam object from S1 reflected\n    -> M2: 300 mm\n    -> whelk: 300 mm\n    -> P1: 300 mm\n}');
    expect(look(object).findings.filter(f => f.severity === 'error')).toEqual([]);
    expect(labels(offered(object.replace(/\n\}\n$/, '\n  |\n}\n'))).filter(l => l.startsWith('beam from'))).toEqual([]);
  });
  it('has plain text for editors without stops', () => {
    const item = offered(inWhelk('spl|')).find(i => i.label === 'splitter { … }')!;
    expect(item.text).toBe('splitter S2 {\n  reflects: 50% ± 5 points\n  loss: 3% ± 1 points\n  thickness: 3 mm\n  glass: crown\n}');
    expect(item.snippet).toBe('splitter ${1:S2} {\n  reflects: ${2:50% ± 5 points}\n  loss: ${3:3% ± 1 points}\n  thickness: ${4:3 mm}\n  glass: ${5|crown,fused silica,window,acrylic|}\n}$0');
  });
});

describe('phrases', () => {
  const block = (text: string): string => `setup "a" {\n  spreader R1 {\n    ${text}\n  }\n}`;
  it('go on where they began', () => expect(taken(block('focal le|'), 'focal length')).toContain('    focal length: 4.5 mm\n'));
  it('of which the second word is not begun yet', () => { check(block('focal |'), ['focal length']); });
  it('with a kind of two words', () => { check(inWhelk('half-wave pl|'), ['half-wave plate', 'half-wave plate { … }']); });
  it('are replaced to the colon that they have', () => expect(taken(block('fo|cal lenght: 3 mm'), 'focal length')).toContain('    focal length: 3 mm\n'));
  it('behind a colon', () => expect(taken(but('plate P1', 'plate P1 {\n    emulsion: toward the o|\n  }'), 'toward the object')).toContain('emulsion: toward the object\n'));
  it('with a word of clauses in them', () => { check(but('plate P1', 'plate P1 {\n    emulsion: away from the |\n  }'), ['away from the object', 'away from the reference']); });
  it('mid-word take the rest of the word with them', () => expect(line(taken(inWhelk('expect mis|mt'), 'mismatch'))).toBe('expect mismatch'));
});

describe('legs and beams', () => {
  it('meet what no beam meets yet, then all else, but what they come from', () => check(but('    -> M1: 750', '    -> |\n    -> M1: 750'), ['M1', 'M2', 'M3', 'whelk', 'P1']));
  it('unmet things come first', () => { check(but('  plate P1', '  card\n  black card C1\n  plate P1').replace('  card\n', '').replace('    -> M1: 750', '    -> |\n    -> M1: 750'), ['C1', 'M1', '…']); });
  it('may leave by a port', () => { check(but('    -> P1: 721 mm ± 2 mm', '    -> P1 |'), ['through']); });
  it('start at ports and lasers', () => { check(inWhelk('beam fill from |').replace('  beam object from S1 reflected\n', '  beam object from S2 reflected\n'), ['S1 reflected', '…']); });
  it('say what starts a beam already', () => expect(offered(inWhelk('beam fill from |')).find(i => i.label === 'S1 through')?.detail).toBe('starts reference already'));
  it('name first, then from', () => { check(inWhelk('beam fill |'), ['from']); });
  it('take lengths only', () => { check(inWhelk('beam fill from whelk', '  -> P1: 750 |'), ['mm', 'cm', 'm', 'µm', 'nm', 'in', '±', '×÷']); });
  it('take values that are named', () => { check(inWhelk('let gap = 30 mm', 'let share = 5%', 'beam fill from whelk', '  -> P1: |'), ['gap']); });
});

describe('values', () => {
  const fact = (kind: string, text: string): string => `setup "a" {\n  ${kind} A {\n    ${text}\n  }\n}`;
  it('as often written, and what is assumed, with its reason', () => {
    const items = check(fact('mirror', 'loss: |'), ['12% ± 5 points', '4% ± 2 points', '1% ± 0.5 points', '?']);
    expect(items[0]).toMatchObject({ detail: 'assumed where nothing is written', words: expect.stringContaining('protected aluminium') as string });
  });
  it('what is assumed follows from what else is written', () =>
    expect(offered(fact('mirror', 'coating: silver\n    loss: |')).find(i => i.detail?.startsWith('assumed'))?.label).toBe('4% ± 3 points'));
  it('words of a choice', () => check(fact('mirror', 'coating: |'), ['aluminium', 'silver', 'dielectric']));
  it('a blank is put behind the colon', () => expect(taken(fact('mirror', 'coating:|'), 'silver')).toContain('coating: silver\n'));
  it('words beside numbers', () => { check(fact('laser', 'modes: |'), ['unknown', '1', '…']); });
  it('names of things of the kind', () => { check(inWhelk('lamp L1 {', '  plate: |', '}'), ['P1']); });
  it('between which an unknown lies', () => {
    check(fact('splitter', 'reflects: ? |'), ['from']);
    check(fact('splitter', 'reflects: ? from 80% |'), ['to']);
  });
  it('no dates: the day is not known here', () => { check(fact('plate', 'expires: |'), []); });
});

describe('units', () => {
  const fact = (kind: string, text: string): string => `setup "a" {\n  ${kind} A {\n    ${text}\n  }\n}`;
  // 632.8 mm is no wavelength, 632.8 nm is one
  it('that make the value possible', () => { check(fact('laser', 'wavelength: 632.8|'), ['nm', '±', '×÷']); });
  it('of a share', () => { check(fact('object', 'tone: 35|'), ['%', '±', '×÷']); });
  it('none of a plain number', () => { check(fact('attenuator', 'density: 0.3 |'), ['±', '×÷']); });
  it('of a temperature are places, behind ± differences', () => {
    check(inWhelk('temperature: 20 |'), ['°C', '±', '×÷']);
    check(inWhelk('temperature: 20 °C ± 0.5 |'), ['K']);
  });
  it('behind ± the same unit first, or a share', () => { check(inWhelk('beam height: 12 cm ± 2 |'), ['cm', 'mm', 'm', 'µm', 'nm', 'in', '%']); });
  it('behind ± of a share', () => { check(fact('object', 'tone: 35% ± 5 |'), ['points', '%']); });
  it('behind ×÷ none', () => { check(fact('object', 'tone: 35% ×÷ 3 |'), []); });
  it('of sizes only behind the last of them', () => {
    check(fact('object', 'size: 40 |'), ['x']);
    check(fact('object', 'size: 40 x 60 |'), ['mm', 'cm', 'm', 'µm', 'nm', 'in', '±', '×÷']);
  });
  it('half-typed, with powers', () => expect(taken(inWhelk('measured reference at P1 facing beam: 1.6 µW/c|'), 'µW/cm²')).toContain('1.6 µW/cm²\n'));
  it('stand apart, but not all', () => {
    expect(line(taken(inWhelk('beam height: 120|'), 'mm'))).toBe('beam height: 120 mm');
    expect(taken(fact('object', 'tone: 35|'), '%')).toContain('tone: 35%\n');
  });
  it('none within a number', () => { check(inWhelk('beam height: 0.|'), []); });
});

describe('inventory items', () => {
  it('of the kind only', () => {
    const [item] = check(andLab('laser green = |'), ['lab.red-12'], withLab);
    expect(item!.detail).toBe('632.8 nm, 12 mW ± 10%');
    expect(completionWords(item!.about!, marked(andLab('laser green = |'), withLab).snapshot)).toContain('North table');
  });
  it('behind a dot and a hyphen', () => {
    for (const typed of ['lab.|', 'lab.re|', 'lab.red-|', 'lab.red-1|2']) expect(line(taken(andLab(`laser green = ${typed}`), 'lab.red-12', withLab))).toBe('laser green = lab.red-12');
  });
});

describe('placement', () => {
  const clauses = ['at', 'on', 'beyond', 'heading', 'facing', 'tilted'];
  it('each clause once, in its order', () => {
    check(inWhelk('mirror M4 |'), [...clauses, '{ … }']);
    check(inWhelk('mirror M4 at (1, 2) mm |'), ['±', '×÷', 'heading', 'facing', 'tilted', '{ … }']);
    check(inWhelk('mirror M4 at (1, 2) mm heading 30° |'), ['±', '×÷', 'tilted', '{ … }']);
    check(inWhelk('mirror M4 beyond M1 by 5 mm |'), ['±', '×÷', 'turning', 'heading', 'facing', 'tilted', '{ … }']);
  });
  it('how far before all else', () => { check(inWhelk('mirror M4 beyond M1 |'), ['by']); });
  it('on the legs that there are', () => { check(inWhelk('spreader R1 on |'), ['red -> S1', 'S1 -> M1', 'M1 -> P1', '…']); });
  // 721 mm from M1 to P1: 60 m is further, and so is 60 in, 1524 mm
  it('no further than the leg is long', () => { check(inWhelk('spreader R1 on M1 -> P1 by 60 |'), ['mm', 'cm', 'µm', 'nm', '±', '×÷']); });
  it('words of turning, and names to face', () => {
    check(inWhelk('mirror M4 beyond M1 by 5 mm turning |'), ['left', 'right', 'up', 'down', 'back']);
    expect(labels(offered(inWhelk('mirror M4 facing |')))).toEqual(['red', 'S1', 'M1', 'M2', 'M3', 'whelk', 'P1', 'beam']);
  });
  it('not in an inventory', () => { check('inventory lab {\n  mirror a |\n}', ['{ … }']); });
});

describe('readings', () => {
  it('of arms, differences and legs, with what the plan says', () => {
    const items = check(inWhelk('measured |'), ['reference', 'object', 'object - reference', 'red -> S1', 'S1 -> M1', '…']);
    expect(items.find(i => i.label === 'S1 -> M1')!.detail).toBe('a leg, 750 ± 2 mm');
    for (const w of ['S1 wheel', 'dark', 'drift']) expect(labels(items)).toContain(w);
    // An image is that of a hologram.
    expect(labels(items)).not.toContain('real image');
    expect(labels(check('setup "Limpet" {\n  hologram H1\n  plate P1\n  measured |\n}\n', ['…']))).toContain('real image');
  });
  it('go on along the legs', () => { check(inWhelk('measured S1 -> |'), ['S1 -> M1', 'S1 -> M2', 'M1', 'M2']); });
  it('where, and at which spot', () => {
    check(inWhelk('measured reference at |'), ['P1', 'M1']);
    check(inWhelk('measured reference at P1 up|'), ['centre', 'upper left', 'upper right', '…']);
    check(inWhelk('measured reference at P1 upper |'), ['upper left', 'upper right']);
  });
  it('units by what is read', () => {
    check(inWhelk('measured S1 -> M1: 752 |'), ['mm', 'cm', 'm', 'in', '±', '×÷']);
    check(inWhelk('measured drift at P1: 0.5 |'), ['fringes/min', 'fringes/s', '±', '×÷']);
    check(inWhelk('measured S1 wheel: 4.5 |'), ['±', '×÷', 'by', 'on']);
  });
  it('by what suits', () => {
    check(andLab('measured S1 -> M1: 752 mm by |'), ['lab.thread', 'string', 'tape', 'ruler'], withLab);
    check(andLab('measured reference at P1: 2 µW/cm² by |'), ['lab.meter-1', 'meter'], withLab);
  });
  it('no dates', () => { check(inWhelk('measured S1 -> M1: 752 mm on |'), []); });
});

describe('goals', () => {
  it('are results with their present values', () => {
    // 1555 mm - 1471 mm
    expect(check(inWhelk('expect |'), ['mismatch', '…'])[0]!.detail).toBe('84 ± 7 mm');
  });
  it('by longer names', () => expect(line(taken(inWhelk('expect P1.ob|'), 'P1.object.mismatch'))).toBe('expect P1.object.mismatch'));
  it('are compared', () => { check(inWhelk('expect mismatch |'), ['<', '>', '<=', '>=', 'from']); });
  it('with limits in a unit that fits', () => {
    check(inWhelk('expect mismatch < 10 |'), ['mm', 'cm', 'm', 'µm', 'nm', 'in']);
    check(inWhelk('expect brightness > 40|'), ['%']);
    check(inWhelk('expect beam ratio from |'), ['4:1', '2:1', '1:1']);
    check(inWhelk('expect beam ratio from 3:1 |'), ['to']);
  });
  it('accept what is found here first, with a reason', () => {
    const [item] = check(inWhelk('accept |'), ['arms-mismatched', '…']);
    expect(item!.detail).toMatch(/^found here: /);
    expect(line(taken(inWhelk('accept arms|'), 'arms-mismatched'))).toBe('accept arms-mismatched "reason"');
    check(inWhelk('accept arms-mismatched "on purpose" |'), ['for']);
    check(inWhelk('accept arms-mismatched "on purpose" for |'), ['P1.object']);
  });
});

describe('variants', () => {
  const inVariant = (text: string): string => inWhelk('variant "b" {', `  ${text}`, '}');
  it('facts of one thing behind its dot', () => expect(labels(offered(inVariant('whelk.|'))).every(l => l.startsWith('whelk.'))).toBe(true));
  it('of two words', () => { check(inVariant('red.tube |'), ['red.tube length']); });
  it('values and units of the fact', () => { check(inVariant('whelk.tone: 40|'), ['%', '±', '×÷']); });
  it('placements', () => { check(inVariant('P1 |'), ['at', 'on', 'beyond', 'heading', 'facing', 'tilted', '{ … }']); });
  it('lengths of legs', () => { check(inVariant('S1 -> M1: 760 |'), ['mm', 'cm', 'm', 'µm', 'nm', 'in', '±', '×÷']); });
  it('blocks of a thing', () => { check(inWhelk('variant "b" {', '  whelk {', '    |', '  }', '}'), ['size', 'tone', 'gloss', 'depth', '…']); });
});

describe('files', () => {
  const files = { files: ['lab.plate', '../old.plate'] };
  it('behind use', () => {
    expect(labels(offered('use "|"', files))).toEqual(['lab.plate', '../old.plate']);
    const [item] = offered('use "la|b"', files);
    expect([item!.text, item!.at.start, item!.at.end]).toEqual(['lab.plate', 5, 8]);
    expect(offered('use "|', files)[0]!.text).toBe('lab.plate"');
  });
  it('nowhere else', () => { expect(offered('setup "|"', files)).toEqual([]); });
});

describe('in broken text', () => {
  it('without braces, by the indent', () => {
    const block = 'setup "a" {\n  laser red {\n    wavelength: 632.8 nm\n';
    check(`${block}    |`, ['tube length', '…']);
    expect(labels(offered(`${block}  |`))).toContain('mirror');
  });
  it('of a line that is not finished', () => {
    expect(labels(offered('setup "a" {\n  laser red {\n    wavel|\n  mirror M1\n'))).toContain('wavelength');
    check('setup "a" {\n  object shell {\n    depth: 3 mm ± |\n  }\n}', []);
  });
  it('behind µ, ± and emoji', () => {
    const { at } = offered('setup "😀" {\n  plate P1 {\n    layer: 6 µm ± 1 µ|\n  }\n}').find(i => i.label === 'µm')!;
    expect([at.start, at.end]).toEqual([20, 21]);
  });
  it('after carriage returns', () => {
    const { at } = offered('setup "a" {\r\n  mirror M1\r\n  mir|\r\n}\r\n').find(i => i.label === 'mirror')!;
    expect(at).toEqual({ uri: FILE, line: 2, start: 2, end: 5 });
  });
  it('not in comments, notes and texts', () => { for (const t of ['// la|', '  laser red // wav|', '/// no|', 'setup "a|"', 'setup "a" {\n  note: "fo|"\n}']) check(t, []); });
  it('never fails, on any text at any place', () => {
    fc.assert(fc.property(page, fc.nat(), fc.nat(), fc.boolean(), (text, n, m, inside) => {
      const whole = inside ? `setup "a" {\n${text}` : text;
      const s = analyse(FILE, whole);
      const at = n % s.tree.lines.length;
      const own = s.tree.lines[at]!.text;
      const character = m % (own.length + 1);
      for (const i of completionsAt(s, at, character)) {
        expect(i.at.line).toBe(at);
        expect(i.at.start).toBeLessThanOrEqual(character);
        expect(i.at.end).toBeGreaterThanOrEqual(character);
        expect(i.at.end).toBeLessThanOrEqual(own.length);
        if (i.about) completionWords(i.about, s);
      }
    }), { numRuns: 300 });
  });
});

describe('each item', () => {
  const places = ['|', ...['|', 'expect |', 'measured |', 'accept |', 'mirror M4 |', 'beam height: 12|', 'beam fill from |'].map(l => inWhelk(l))];
  it('has what is shown, and words about it', () => {
    for (const p of places) {
      const { snapshot } = marked(p);
      const items = offered(p);
      expect(new Set(items.map(i => i.label)).size, p).toBe(items.length);
      expect(items.map(i => i.sort)).toEqual(items.map(i => i.sort).sort());
      for (const i of items) {
        expect(i.detail, i.label).toBeTruthy();
        if (i.about) expect(completionWords(i.about, snapshot) ?? '', i.label).not.toBe('');
      }
    }
  });
  it('keeps marks of a note from becoming markup', () => {
    const text = inWhelk('measured x at |').replace('  plate P1', '  /// **loud** [go](command:x)\n  plate P1').replace('measured x', 'measured reference');
    const item = offered(text).find(i => i.label === 'P1')!;
    expect(completionWords(item.about!, marked(text).snapshot)).toContain('\\*\\*loud\\*\\* \\[go\\]');
  });
});
