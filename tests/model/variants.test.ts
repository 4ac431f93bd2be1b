/** What a variant may hold, where each change goes, and what is found in lines that cannot be understood. */
import { describe, expect, test } from 'vitest';
import { overlay } from '../../server/model/overlay.ts';
import { look, serious } from '../checks/library.ts';

const BENCH = `inventory lab {
  mirror flat-50 {
    loss: 11%
    diameter: 50 mm
  }
  mirror flat-150 {
    loss: 4%
    diameter: 150 mm
    coating: silver
  }
  splitter wheel
}
setup "Whelk shell" {
  hologram: transmission
  beam height: 120 mm
  let gap = 300 mm
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 {
    reflects: 80%
  }
  mirror M1 = lab.flat-50 {
    diameter: 40 mm
  }
  mirror M2
  object whelk {
    depth: 35 mm
  }
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: 721 mm
  beam object from S1 reflected
    -> M2: 787 mm
    -> whelk: 684 mm - gap
    -> P1: gap
`;
const before = BENCH.split('\n').length - 1;
const withVariant = (...lines: string[]): string => `${BENCH}  variant "trial" {\n${lines.map(l => `    ${l}\n`).join('')}  }\n}\n`;
const variantOf = (...lines: string[]) => look(withVariant(...lines)).model.setups[0]!;
/** Errors, as the line inside the variant, the code, and what is marked. */
const found = (...lines: string[]): string[] => {
  const text = withVariant(...lines);
  return look(text).findings.filter(serious).map(f => `${f.at.line - before} ${f.code} ${text.split('\n')[f.at.line]!.slice(f.at.start, f.at.end)}`);
};

test('the bench is without a fault', () => expect(found('P1 at (700, 650) mm')).toEqual([]));

test('each kind of change is one, at its place', () => {
  const setup = variantOf('P1 at (700, 650) mm', 'S1 {', '  reflects: 90%', '}', 'S1.loss: 3%', 'M1 = lab.flat-150', 'S1 -> M1: 760 mm', 'object.2: 300 mm', 'let gap = 320 mm', 'beam height: 150 mm', 'mirror M4 at (10, 20) mm', 'beam second from whelk', '  -> M4: 100 mm');
  expect(setup.variants[0]!.changes.map(c => `${c.kind} ${c.at.line - before}`)).toEqual(['placement 1', 'fact 3', 'fact 5', 'item 6', 'leg 7', 'leg 8', 'let 9', 'setup fact 10', 'thing 11', 'beam 12']);
});

describe('an overlay', () => {
  test('changes what the variant says and keeps the rest', () => {
    const base = variantOf('S1.reflects: 90%', 'beam height: 150 mm', 'let gap = 320 mm', 'S1 -> M1: 760 mm');
    const over = overlay(base, base.variants[0]!);
    const of = (s: typeof base, thing: string, fact: string): unknown => { const v = s.things.get(thing)!.facts.get(fact)!.value; return v.kind === 'quantity' ? v.quantity.value : v; };
    expect([of(base, 'S1', 'reflects'), of(over, 'S1', 'reflects')]).toEqual([0.8, 0.9]);
    expect(of(over, 'red', 'tube length')).toBeCloseTo(0.35, 12);
    expect(over.things.get('red')).toBe(base.things.get('red'));
    expect([...over.things.keys()]).toEqual([...base.things.keys()]);
    expect([...over.beams.keys()]).toEqual([...base.beams.keys()]);
    const lengths = (s: typeof base): unknown[] => s.beams.get('reference')!.legs.map(l => (l.length?.kind === 'quantity' ? l.length.quantity.value : l.length));
    expect([lengths(base), lengths(over)]).toEqual([[0.75, 0.721], [0.76, 0.721]]);
    // What carries light to a changed thing leads to it, not to the one as written.
    expect(over.beams.get('raw')!.legs[0]!.target).toBe(over.things.get('S1'));
    expect(over.beams.get('object')!.from).toBe(over.things.get('S1'));
    expect(over.beams.get('object')!.legs.every(l => l.beam === over.beams.get('object'))).toBe(true);
    expect(base.beams.get('raw')!.legs[0]!.target).toBe(base.things.get('S1'));
    expect(over.variant).toBe('trial');
  });
  test('takes another item of an inventory, under the facts that are written about the thing', () => {
    const base = variantOf('M1 = lab.flat-150');
    const m1 = overlay(base, base.variants[0]!).things.get('M1')!;
    const facts = Object.fromEntries([...m1.facts].map(([k, f]) => [k, f.value.kind === 'quantity' ? f.value.quantity.value : f.value.kind === 'words' ? f.value.text : '']));
    expect(facts).toEqual({ loss: 0.04, diameter: 0.04, coating: 'silver' });
  });
  test('moves a thing and leaves the way that it faces', () => {
    const text = 'setup "Whelk" {\n  object whelk at (0, 0) mm\n  plate P1 at (10, 20) mm facing whelk\n  variant "closer" {\n    P1 at (10, 10) mm\n  }\n  variant "turned" {\n    P1 heading 30°\n  }\n}\n';
    const base = look(text).model.setups[0]!;
    const [closer, turned] = base.variants.map(v => overlay(base, v).things.get('P1')!.placement!);
    expect([closer!.at?.at.line, typeof closer!.facing === 'object' && closer!.facing.name, closer!.heading]).toEqual([4, 'whelk', undefined]);
    expect([turned!.at?.at.line, turned!.facing, turned!.heading?.at.line]).toEqual([2, undefined, 7]);
  });
  test('replaces a beam that is written anew, in its place', () => {
    const base = variantOf('beam reference from S1 through', '  -> P1: 1471 mm');
    const over = overlay(base, base.variants[0]!);
    expect([...over.beams.keys()]).toEqual(['raw', 'reference', 'object']);
    expect(over.beams.get('reference')!.legs.map(l => l.to)).toEqual(['P1']);
    expect(base.beams.get('reference')!.legs.map(l => l.to)).toEqual(['M1', 'P1']);
  });
});

describe('what cannot be understood is one finding in its line', () => {
  test.each<[string, readonly string[], readonly string[]]>([
    ['a unit of something else', ['S1.thickness: 6 mW'], ['1 wrong-unit 6 mW']],
    ['a unit left out', ['red.tube length: 350'], ['1 missing-unit 350']],
    ['a share above all', ['S1.reflects: 120%'], ['1 impossible-value 120%']],
    ['an unknown fact', ['S1.reflcts: 90%'], ['1 unknown-fact reflcts']],
    ['an unknown fact in a block', ['S1 {', '  reflcts: 90%', '}'], ['2 unknown-fact reflcts']],
    ['an unknown fact of the setup', ['beam hight: 150 mm'], ['1 unknown-fact beam hight']],
    ['an unknown thing', ['Q7 at (1, 2) mm'], ['1 unknown-name Q7']],
    ['an unknown thing before a dot', ['Q7.loss: 3%'], ['1 unknown-name Q7']],
    ['an unknown thing twice', ['Q7.loss: 3%', 'Q7 at (1, 2) mm'], ['1 unknown-name Q7']],
    ['an unknown item', ['M1 = lab.flat-151'], ['1 unknown-name lab.flat-151']],
    ['an item of another kind', ['M1 = lab.wheel'], ['1 wrong-value lab.wheel']],
    ['an unknown name in a formula', ['S1.thickness: gpa / 10'], ['1 unknown-name gpa']],
    ['a formula of another kind', ['S1.thickness: gap * gap'], ['1 wrong-unit gap * gap']],
    ['units that differ', ['S1.thickness: gap + 3 mW'], ['1 units-differ +']],
    ['a value that leads back to itself', ['let gap = other', 'let other = gap'], ['1 value-ring gap']],
    ['a misspelt value', ['let gpa = 320 mm'], ['1 unknown-name gpa']],
    ['a place without a unit', ['P1 at (700, 650)'], ['1 missing-unit (700, 650)']],
    ['a place that names nothing', ['P1 at (700, 650) mm facing welk'], ['1 unknown-name welk']],
    ['a leg that nothing goes along', ['M1 -> M2: 300 mm'], ['1 leg-unclear M1 -> M2']],
    ['a leg with an unknown end', ['S1 -> Q7: 300 mm'], ['1 unknown-name Q7']],
    ['a leg that a beam does not have', ['object.4: 300 mm'], ['1 leg-unclear object.4']],
    ['a leg of no length', ['object.2: 0 mm'], ['1 impossible-value 0 mm']],
    ['a leg without a length', ['object.2:'], ['1 value-expected :']],
    ['a leg of a formula of another kind', ['object.2: gap * gap'], ['1 wrong-unit gap * gap']],
    ['a fact without its dot', ['S1 reflects: 90%'], ['1 change-missing reflects']],
    ['a thing without a change', ['S1'], ['1 change-missing S1']],
    ['a fact without a value', ['S1.reflects'], ['1 change-missing S1.reflects']],
    ['an expectation', ['expect mismatch < 10 mm'], ['1 not-in-variant expect']],
    ['a reading', ['measured S1 -> M1: 752 mm'], ['1 not-in-variant measured']],
    ['a variant in a variant', ['variant "more" {', '}'], ['1 not-in-variant variant']],
    ['a thing that is there', ['mirror M2 at (1, 2) mm'], ['1 name-taken M2']],
    ['a beam from nowhere', ['beam second from Q7', '  -> P1: 3 mm'], ['1 unknown-name Q7']],
    ['a beam whose leg has no length', ['beam reference from S1 through', '  -> P1'], ['2 value-missing P1']],
    ['a beam in a ring', ['splitter S2', 'beam raw from S2 through', '  -> S1: 20 mm', 'beam more from S1 through', '  -> S2: 20 mm'], ['2 beam-ring raw']],
  ])('%s', (_, lines, expected) => { expect(found(...lines)).toEqual(expected); });

  test.each<[string, readonly string[], readonly string[]]>([
    ['a fact', ['S1.reflects: 90%', 'S1.reflects: 95%'], ['2 written-twice reflects']],
    ['a fact, once in a block', ['S1.reflects: 90%', 'S1 {', '  reflects: 95%', '}'], ['3 written-twice reflects']],
    ['a place', ['P1 at (1, 2) mm', 'P1 at (1, 3) mm'], ['2 written-twice P1']],
    ['an item', ['M1 = lab.flat-50', 'M1 = lab.flat-150'], ['2 written-twice M1']],
    ['a leg, in two ways', ['S1 -> M1: 760 mm', 'reference.1: 770 mm'], ['2 written-twice reference.1']],
    ['a value', ['let gap = 310 mm', 'let gap = 320 mm'], ['2 name-taken gap']],
    ['a fact of the setup', ['beam height: 140 mm', 'beam height: 150 mm'], ['2 written-twice beam height']],
    ['a beam', ['beam second from whelk', '  -> P1: 2 mm', 'beam second from whelk', '  -> P1: 3 mm'], ['3 name-taken second']],
  ])('%s that is changed twice', (_, lines, expected) => { expect(found(...lines)).toEqual(expected); });

  test('a leg that two beams share is not guessed', () => {
    const text = withVariant('S1 -> M1: 760 mm').replace('  variant', '  beam third from S1 through\n    -> M1: 10 mm\n    -> P1: 20 mm\n  variant');
    const f = look(text).findings.find(x => x.code === 'leg-unclear')!;
    expect(f.data['legs']).toBe('reference.1, third.1');
  });
});

test('what only a variant breaks in a line of the setup stands at the name of the variant, and names both', () => {
  const text = withVariant('let gap = 700 mm');
  const [f, ...more] = look(text).findings.filter(x => x.severity === 'error');
  expect(more).toEqual([]);
  // 684 mm − 700 mm is below zero, in the leg M2 -> whelk.
  expect([f!.code, f!.at.line - before, f!.variant]).toEqual(['impossible-value', 0, 'trial']);
  expect(f!.message).toContain(`In the variant “trial”, in line ${1 + BENCH.split('\n').findIndex(l => l.includes('684 mm - gap'))}: `);
});

test('what is wrong in the setup as written is not said again for each variant', () => {
  const text = withVariant('P1 at (700, 650) mm').replace('684 mm - gap', '684 mm - gapp');
  expect(look(text).findings.filter(x => x.severity === 'error').map(f => f.variant)).toEqual([undefined]);
});

test('variants with one name are a finding, and the first counts', () => {
  const s = look(withVariant('beam height: 150 mm').replace(/\}\n$/, '  variant "trial" {\n    beam height: 160 mm\n  }\n}\n'));
  expect(s.findings.filter(f => f.severity === 'error').map(f => [f.code, f.data['kind']])).toEqual([['name-taken', 'variant']]);
  expect(s.model.setups[0]!.variants).toHaveLength(1);
});
