/** Lines of facts: what a fact takes, and what stands behind, below or before it that no fact takes. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Bound, BoundFact } from '../../server/model/model.ts';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { found } from './check.ts';

const within = (kind: string, ...lines: string[]): string[] => found(`${kind} X1 {`, ...lines, '}');
/** The facts of one thing, and nothing wrong with them. */
function facts(kind: string, ...lines: string[]): ReadonlyMap<string, BoundFact> {
  const { model, findings } = analyse('file:///saltmarsh/whelk.plate', `setup "Whelk shell" {\n${kind} X1 {\n${lines.join('\n')}\n}\n}\n`);
  expect(findings.filter(f => f.severity === 'error' || f.severity === 'warning').map(f => f.message)).toEqual([]);
  return model.setups[0]!.things.get('X1')!.facts;
}
const value = (kind: string, line: string): Bound => [...facts(kind, line).values()][0]!.value;
const message = (...lines: string[]): string => analyse('file:///saltmarsh/whelk.plate', `setup "Whelk shell" {\n${lines.join('\n')}\n}\n`).findings.filter(f => f.severity === 'error').map(f => f.message).join(' ');

describe('marks of a wheel', () => {
  test('each has a line of its own', () => {
    const all = facts('splitter', 'mark 4.5: 88% ± 2 points', 'mark 6: 95%', 'mark 0: 1%');
    expect([...all.keys()]).toEqual(['mark 4.5', 'mark 6', 'mark 0']);
    expect([...all.values()].map(f => [f.number, f.fact.phrase, f.value.kind === 'quantity' && Number(f.value.quantity.value.toFixed(9))])).toEqual([[4.5, 'mark', 0.88], [6, 'mark', 0.95], [0, 'mark', 0.01]]);
  });
  test('the same one twice is an error, however its number is written', () => { expect(within('splitter', 'mark 4.5: 88%', 'mark 4.50: 87%')).toEqual(['written-twice mark 4.50']); });
  test('take shares only', () => { expect(within('splitter', 'mark 4.5: 88 mm', 'mark 5: 120%')).toEqual(['wrong-unit 88 mm', 'impossible-value 120%']); });
  test.each([['mark: 88%', 'value-missing mark'], ['mark 4 mm: 88%', 'value-missing mark 4 mm'], ['mark 4.5', 'value-missing mark 4.5'], ['mark four: 88%', 'unknown-fact mark four'], ['mark 4 5: 88%', 'unknown-fact mark 4 5']])('%s', (line, expected) => { expect(within('splitter', line)).toEqual([expected]); });
  test('a fact that takes no number', () => { expect(within('splitter', 'wedge 4: 0.5°')).toEqual(['unknown-fact wedge 4']); });
  test('are told when pointed at', () => {
    const text = 'setup "Whelk shell" {\nsplitter S1 {\nmark 4.5: 88%\n}\n}\n';
    expect(hoverAt(analyse('file:///saltmarsh/whelk.plate', text), 2, 1)?.markdown).toMatch(/^\*\*mark 4\.5\*\*: Share that is reflected/);
    expect(hoverAt(analyse('file:///saltmarsh/whelk.plate', text), 1, 9)?.markdown).toContain('mark 4.5: 88');
  });
});

describe('places', () => {
  const places = (line: string): number[][] => {
    const v = value('object', line);
    if (v.kind !== 'places') throw new Error(v.kind);
    return v.places.map(p => p.map(q => Number((q.value * 1000).toFixed(6))));
  };
  test.each<[string, number[][]]>([
    ['points: (0, 0, 0) mm, (10, 5, -3) mm', [[0, 0, 0], [10, 5, -3]]], ['points: (1, 2) cm', [[10, 20, 0]]], ['points: (1 cm, 2 mm, -1 in)', [[10, 2, -25.4]]],
    ['match to: (0, 5, 0) mm', [[0, 5, 0]]], ['match to: (0, 5, 0) mm ± 1 mm', [[0, 5, 0]]],
  ])('%s', (line, expected) => { expect(places(line)).toEqual(expected); });
  test('a give or take holds for each of the three', () => {
    const v = value('object', 'match to: (0, 5, 0) mm ± 1 mm');
    expect(v.kind === 'places' && v.places[0]!.map(q => q.spread)).toEqual([0, 1, 2].map(() => ({ kind: 'within', amount: 0.001 })));
  });
  test.each([
    ['points: (0, 0, 0)', 'missing-unit (0, 0, 0)'], ['points: (0, 0, 0) mm, (1, 2, -3)', 'missing-unit (1, 2, -3)'], ['points: (0, 0, 0) mW', 'wrong-unit mW'], ['points: (0, 0, 0) mmm', 'unknown-unit mmm'],
    ['points: (1 mm, 2, 3)', 'missing-unit 2'], ['points: (1 mm, 2 mW)', 'wrong-unit 2 mW'], ['points: 3 mm', 'wrong-value 3 mm'], ['points: (3) mm', 'wrong-value (3) mm'], ['points: (1, 2, 3, 4) mm', 'wrong-value (1, 2, 3, 4) mm'],
    ['points: hello', 'wrong-value hello'], ['points: (a, b) mm', 'wrong-value a'], ['points: ?', 'wrong-value ?'], ['match to: (0, 0) mm, (1, 1) mm', 'wrong-value (0, 0) mm, (1, 1) mm'],
    ['match to: (0, 5, 0) mm ± 1 mW', 'wrong-unit 1 mW'], ['match to: (0, 5, 0) mm ×÷ 2', 'wrong-value 2'], ['points: (0, 0) mm at M1', 'unexpected-text at M1'],
  ])('%s', (line, expected) => { expect(within('object', line)).toEqual([expected]); });
});

describe('names of other things', () => {
  const plates = ['plate P1', 'plate P2', 'mirror M1'];
  test('are looked up, also below', () => {
    expect(found('viewer visitor {', 'plate: P2', '}', ...plates)).toEqual([]);
    expect(found('viewer visitor {', 'plate: P3', '}', ...plates)).toEqual(['unknown-name P3']);
    expect(message('viewer visitor {', 'plate: P3', '}', ...plates)).toContain('the name of a plate belongs here');
  });
  test('are of the right kind', () => { expect(found('viewer visitor {', 'plate: M1', '}', ...plates)).toEqual(['wrong-value M1']); });
  test.each([['plate: 3 mm', 'wrong-value 3 mm'], ['plate: P1 P2', 'wrong-value P1 P2'], ['plate: "P1"', 'wrong-value "P1"'], ['plate: ?', 'wrong-value ?']])('%s', (line, expected) => { expect(found('viewer visitor {', line, '}', ...plates)).toEqual([expected]); });
  test('are looked up in an inventory as well, once', () => {
    const text = 'inventory lab {\nlamp spot {\nplate: P9\n}\n}\nsetup "Whelk shell" {\nlamp spot = lab.spot\n}\n';
    expect(analyse('file:///saltmarsh/whelk.plate', text).findings.filter(f => f.severity === 'error').map(f => [f.at.line + 1, f.code])).toEqual([[3, 'unknown-name']]);
  });
  test('can be followed to where the thing is declared', () => {
    const { model } = analyse('file:///saltmarsh/whelk.plate', 'setup "Whelk shell" {\nplate P1\nlamp spot {\nplate: P1\n}\n}\n');
    expect(model.references.map(r => [r.at.line, r.at.start, r.target.line])).toContainEqual([3, 7, 1]);
  });
});

describe('what is asked for', () => {
  test('may say between which values', () => {
    expect(value('splitter', 'reflects: ? from 80% to 99%')).toMatchObject({ kind: 'unknown', from: { kind: 'quantity', quantity: { value: 0.8 } }, to: { kind: 'quantity', quantity: { value: 0.99 } } });
    expect(value('splitter', 'reflects: ? from 80%')).toMatchObject({ kind: 'unknown', from: { quantity: { value: 0.8 } } });
    expect(value('splitter', 'reflects: ?')).toEqual({ kind: 'unknown' });
  });
  test.each([
    ['reflects: ? from 80 mm to 99%', 'wrong-unit 80 mm'], ['reflects: ? from 80% to 120%', 'impossible-value 120%'], ['reflects: ? from 99% to 80%', 'impossible-value 80%'], ['reflects: ? from 80% to 80%', 'impossible-value 80%'],
    ['reflects: ? at 80%', 'unexpected-text at 80%'], ['reflects: ? from 80% from 90%', 'unexpected-text from 90%'], ['reflects: 50% from 80% to 99%', 'unexpected-text from 80% to 99%'],
  ])('%s', (line, expected) => { expect(within('splitter', line)).toEqual([expected]); });
});

describe('choices', () => {
  test.each([['plate', 'emulsion: away from the object', 'away from the object'], ['plate', 'base: film on glass', 'film on glass'], ['plate', 'base: film', 'film'], ['laser', 'class: 3B', '3B'], ['laser', 'class: 2', '2'], ['string', 'class: II', 'II'], ['laser', 'modes: unknown', 'unknown'], ['plate', 'material: fine-grain silver  halide', 'fine-grain silver halide']])('%s: %s', (kind, line, expected) => {
    expect(value(kind, line)).toEqual({ kind: 'words', text: expected });
  });
  test.each([
    ['plate', 'emulsion: away from the objekt', 'wrong-value away'], ['plate', 'up: left at 3 mm', 'unexpected-text at 3 mm'], ['plate', 'base: film at home', 'unexpected-text at home'], ['laser', 'class: 5', 'wrong-value 5'], ['laser', 'class: 3 mW', 'wrong-value 3 mW'], ['plate', 'emulsion: toward the object nice', 'wrong-value toward the object nice'],
  ])('%s: %s', (kind, line, expected) => { expect(within(kind, line)).toEqual([expected]); });
});

describe('texts', () => {
  test('without quotes reach to the end of the line, clause words among them', () => { expect(value('object', 'material: slate from the creek')).toEqual({ kind: 'words', text: 'slate from the creek' }); });
  test('in quotes are whole', () => {
    expect(value('object', 'note: "found on the beach"')).toEqual({ kind: 'words', text: 'found on the beach' });
    expect(within('object', 'note: "found" on 2026-02-11')).toEqual(['unexpected-text on 2026-02-11']);
  });
});

describe('values out of bounds', () => {
  test.each([
    ['mirror', 'focal length: 0 mm', 'impossible-value 0 mm'], ['lens', 'focal length: 0 mm', 'impossible-value 0 mm'], ['spreader', 'focal length: 0 mm', 'impossible-value 0 mm'], ['spreader', 'pinhole: 10 mm', 'impossible-value 10 mm'], ['spreader', 'pinhole: 10 nm', 'impossible-value 10 nm'],
    ['plate', 'index: 0.9', 'impossible-value 0.9'], ['plate', 'reference angle: 95°', 'impossible-value 95°'], ['plate', 'sensitivity: 400 kJ/m²', 'impossible-value 400 kJ/m²'], ['plate', 'resolving power: 3 lines/mm', 'impossible-value 3 lines/mm'], ['plate', 'layer: 6 mm', 'impossible-value 6 mm'],
    ['plate', 'reciprocity: 1.2', 'impossible-value 1.2'], ['laser', 'beam quality: 0.5', 'impossible-value 0.5'], ['string', 'stretch: 50%', 'impossible-value 50%'], ['half-wave plate', 'wavelength: 632.8 mm', 'impossible-value 632.8 mm'], ['splitter', 'wheel: -1', 'impossible-value -1'],
  ])('%s: %s', (kind, line, expected) => { expect(within(kind, line)).toEqual([expected]); });
  test.each([['spreader', 'focal length: -10 mm'], ['plate', 'shrinkage: -20%'], ['plate', 'reference angle: -56.6°'], ['string', 'stretch: 0%'], ['attenuator', 'density: 0']])('%s: %s is possible', (kind, line) => { expect(within(kind, line)).toEqual([]); });
});

describe('formulas', () => {
  test.each([
    ['loss: 3 mm + 2 mW', 'units-differ +'], ['loss: foo', 'unknown-name foo'], ['loss: 3 mm + 2 mm', 'wrong-unit 3 mm + 2 mm'], ['diameter: 2 * -25 mm', 'impossible-value 2 * -25 mm'], ['diameter: 2 * 25 mm', ''], ['loss: 5% + 3%', ''],
  ])('%s, whether a result asks for it or not', (line, expected) => { expect(within('mirror', line)).toEqual(expected === '' ? [] : [expected]); });
});

describe('what no fact takes', () => {
  test('words behind a value', () => {
    expect(within('laser', 'wavelength: 632.8 nm nice')).toEqual(['unexpected-text nice']);
    expect(within('laser', 'wavelength: 632.8 nm at 20 °C')).toEqual(['unexpected-text at 20 °C']);
    expect(within('object', 'size: 40 x 60 mm by hand')).toEqual(['unexpected-text by hand']);
    expect(within('plate', 'expires: 2026-10-01 at noon')).toEqual(['unexpected-text at noon']);
    expect(found('beam height: 120 mm at the laser')).toEqual(['unexpected-text at the laser']);
    expect(found('shot 7 on 2026-02-11 {', 'exposure: 20 s by hand', '}')).toEqual(['unexpected-text by hand']);
  });
  test('the value before them still counts', () => {
    const { model } = analyse('file:///saltmarsh/whelk.plate', 'setup "Whelk shell" {\nlaser red {\nwavelength: 632.8 nm at 20 °C\n}\n}\n');
    expect(model.setups[0]!.things.get('red')!.facts.get('wavelength')!.value.kind).toBe('quantity');
  });
  test('a block', () => {
    expect(within('laser', 'wavelength: 632.8 nm {', 'power: 12 mW', '}')).toEqual(['block-below-fact wavelength']);
    expect(within('laser', 'wavelength: 632.8 nm {', '}')).toEqual(['block-below-fact wavelength']);
    expect(found('measured red at M1: 3 mW {', '}')).toContain('block-below-fact measured red at M1');
    expect(found('beam height: 120 mm {', 'exposure: 3 s', 'settle: 3 min', '}')).toEqual(['block-below-fact beam height']);
    expect(message('beam height: 120 mm {', 'exposure: 3 s', 'settle: 3 min', '}')).toContain('“beam height” is a fact, and a fact takes no block');
  });
  test('a brace that is never closed is one slip', () => { expect(found('laser red {', 'wavelength: 632.8 nm {', 'power: 12 mW', '}')).toHaveLength(1); });
  test('a leg', () => { expect(within('laser', 'wavelength: 632.8 nm', '-> M1: 300 mm')).toEqual(['leg-without-beam M1']); });
});

describe('a fact of another kind', () => {
  test('is said to be that kind’s', () => {
    expect(message('mirror M1 {', 'tone: 30%', '}')).toBe('“tone” is no fact of a mirror, but of a fill card or an object. Move the line there, or correct its first word.');
    expect(message('mirror M1 {', 'exposure: 30 s', '}')).toBe('“exposure” is no fact of a mirror, but of a setup or a shot. Move the line there, or correct its first word.');
    expect(message('object whelk {', 'loss: 30%', '}')).toContain('but of a splitter, a mirror, a spreading lens, a lens and 5 more.');
  });
  test('but a misspelt one is spelled', () => {
    expect(message('mirror M1 {', 'losss: 30%', '}')).toBe('“losss” is no fact of a mirror. Did you mean “loss”?');
    expect(message('mirror M1 {', 'glow: 30%', '}')).toContain('It takes focal length, loss,');
  });
});
