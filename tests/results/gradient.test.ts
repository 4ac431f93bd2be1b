/**
 * Derivatives and uncertainties of random formulas and setups. The formulas are `let` lines, so that a failure prints the page that shows it.
 * The other side of each comparison is the graph evaluated with an input moved, and the law of propagation worked out here.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardUncertainty } from '../../server/model/quantity.ts';
import type { Cell, Graph } from '../../server/results/graph.ts';
import { expectNear, read, setup } from './read.ts';

const always = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, numRuns = 200): void => { fc.assert(fc.property(arbitrary, holds), { numRuns }); };

const INPUTS = ['a', 'b', 'c', 'd'];
const DECLARED = ['let a = 1.3 ± 0.002', 'let b = 0.7 ± 1% std', 'let c = -2.1 ± 0.01', 'let d = 0.4 ×÷ 1.01'];

/** One step of a page: x and y are earlier values. Nothing has a pole: what is divided by, or stands under a root, is a square plus one. */
const STEPS: readonly ((x: string, y: string) => string)[] = [
  (x, y) => `${x} + ${y}`, (x, y) => `${x} - ${y}`, (x, y) => `${x} * ${y}`, (x, y) => `${x} / (1 + ${y} * ${y})`, x => `sqrt(1 + ${x} * ${x})`, x => `-${x}`, x => `0.5 * ${x} + 2`, x => x, x => `(${x} ± 0.01)`, x => `${x} ×÷ 1.02`,
  x => `sin((${x}) rad)`, x => `cos((2 * ${x}) rad)`, x => `tan((${x} / (1 + ${x} * ${x})) rad)`, x => `atan(${x}) / 1 rad`, x => `asin(${x} / sqrt(1 + ${x} * ${x})) / 1 rad`, x => `acos(${x} / (1 + ${x} * ${x})) / 1 rad`,
  (x, y) => `min(${x}, ${y})`, (x, y) => `max(${x}, ${y})`, x => `abs(${x})`,
];
const step = fc.record({ op: fc.nat(STEPS.length - 1), x: fc.nat(1000), y: fc.nat(1000) });
/** A page that ends in `y`. */
const page = fc.array(step, { minLength: 1, maxLength: 9 }).map(steps => {
  const names = [...INPUTS];
  const lines = steps.map(({ op, x, y }, i) => {
    const line = `let ${i === steps.length - 1 ? 'y' : `f${i}`} = ${STEPS[op]!(names[names.length - 1 - (x % names.length)]!, names[names.length - 1 - (y % names.length)]!)}`;
    names.push(`f${i}`);
    return line;
  });
  return setup(...DECLARED, ...lines);
});

/** Slope by central differences of two steps, with how far they can be trusted; nothing at a kink. */
function slope(graph: Graph, y: Cell, x: Cell): { value: number; unsure: number } | undefined {
  const at = graph.evaluator(y, [x]);
  const x0 = graph.value(x)!;
  const h = 1e-4 * Math.max(Math.abs(x0), 0.1);
  const [coarse, fine] = [h, h / 2].map(s => (at([x0 + s]) - at([x0 - s])) / (2 * s)) as [number, number];
  const [left, right] = [-h, h].map(s => (at([x0 + s]) - at([x0])) / s) as [number, number];
  const value = (4 * fine - coarse) / 3;
  if (Math.abs(left - right) > 0.1 * (Math.abs(value) + 1e-3)) return undefined;
  const size = Math.abs(at([x0])) + 1;
  return { value, unsure: Math.abs(fine - coarse) + (1e-14 * size) / h };
}

describe('random formulas', () => {
  test('the sweep backward gives the slopes that moving each input gives', () => {
    let compared = 0;
    always(page, text => {
      const { cell, results: { graph } } = read(text);
      const y = cell('y');
      for (const [x, swept] of graph.gradient(y)) {
        const moved = slope(graph, y, x);
        if (!moved || moved.unsure > 1e-3 * (Math.abs(swept) + 1)) continue;
        compared++;
        expectNear(swept, moved.value, 2 * moved.unsure + 1e-6 * (Math.abs(swept) + 1), `slope by ${x.name} in\n${text}`);
      }
    });
    expect(compared).toBeGreaterThan(300);
  });
  test('the sweep reaches every input that moves the result, each once', () => {
    always(page, text => {
      const { cell, results: { graph } } = read(text);
      const y = cell('y');
      const reached = [...graph.gradient(y).keys()];
      expect(new Set(reached).size).toBe(reached.length);
      const before = graph.value(y)!;
      for (const x of graph.cells.filter(c => !c.rule && !c.missing)) if (graph.evaluate(y, new Map([[x, graph.value(x)! + 0.1]])) !== before) expect(reached.map(c => c.name), text).toContain(x.name);
    });
  });
  test('the uncertainty is that of moving each input by its own, added in squares', () => {
    always(page, text => {
      const { cell, u, results: { graph } } = read(text);
      const y = cell('y');
      let [sum, unsure] = [0, 0];
      for (const x of graph.cells.filter(c => !c.rule && c.spread)) {
        const moved = slope(graph, y, x);
        fc.pre(moved !== undefined && moved.unsure < 1e-3 * (Math.abs(moved.value) + 1));
        const ux = standardUncertainty(graph.value(x)!, x.spread);
        sum += (moved.value * ux) ** 2;
        unsure += moved.unsure * ux;
      }
      expectNear(u('y'), Math.sqrt(sum), 2 * unsure + 1e-5 * Math.sqrt(sum) + 1e-9, text);
    });
  });
  test('an input held at its own value changes nothing', () => {
    always(page, text => {
      const { cell, results: { graph } } = read(text);
      const y = cell('y');
      expect(graph.evaluate(y, new Map()), text).toBe(graph.value(y));
      for (const x of graph.gradient(y).keys()) expect(graph.evaluate(y, new Map([[x, graph.value(x)!]]))).toBe(graph.value(y));
    });
  });
  test('a cell in the middle may be held as well: what lies behind it then counts no more', () => {
    always(page, text => {
      const { value, cell, results: { graph } } = read(`${text.replace('let y =', 'let f =').replace(/}\n$/, '')}  let y = 3 * f - a\n}\n`);
      const at = graph.evaluator(cell('y'), [cell('f'), cell('b'), cell('c')]);
      expectNear(at([value('f'), 9, 9]), value('y'), 1e-12 * (Math.abs(value('f')) + 1), text);
      expectNear(at([7, 9, 9]), 21 - 1.3, 1e-12, text);
    });
  });
});

/** Legs as formulas of one `let`, and what they amount to. */
const legs = fc.array(fc.record({ times: fc.integer({ min: 0, max: 4 }), own: fc.integer({ min: 50, max: 900 }), give: fc.integer({ min: 0, max: 9 }) }), { minLength: 1, maxLength: 4 });
type Legs = readonly { times: number; own: number; give: number }[];

describe('what two paths share', () => {
  const text = (reference: Legs, object: Legs, common = '350 mm ± 50 mm', gap = '200 mm ± 7 mm'): string => {
    const names = (of: string, list: Legs): string[] => list.map((_, i) => `${of}${i}`);
    const lines = (of: string, list: Legs, end: string): string[] => list.map((l, i) => `  -> ${i < list.length - 1 ? `${of}${i}` : end}: ${l.times} * gap + ${l.own} mm ± ${l.give} mm`);
    return setup(
      `let gap = ${gap}`, 'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'object whelk {', '  depth: 0 mm', '}', 'plate P1',
      ...names('R', reference).concat(names('O', object)).map(n => `mirror ${n}`),
      'beam raw from red', `  -> S1: ${common}`, 'beam reference from S1 through', ...lines('R', reference, 'P1'), 'beam object from S1 reflected', ...lines('O', object, 'whelk'), '  -> P1: 300 mm ± 3 mm',
    );
  };
  const pages = fc.record({ reference: legs, object: legs });
  const sum = (list: Legs, of: (l: Legs[number]) => number): number => list.reduce((s, l) => s + of(l), 0);

  test('a beam before the splitter does not move the mismatch, however unsure it is', () => {
    always(pages, ({ reference, object }) => {
      const wide = read(text(reference, object, '350 mm ± 50 mm'));
      const sure = read(text(reference, object, '350 mm'));
      const other = read(text(reference, object, '900 mm'));
      expect(wide.u('P1.mismatch')).toBe(sure.u('P1.mismatch'));
      expect(other.value('P1.mismatch')).toBe(sure.value('P1.mismatch'));
      expect(wide.results.graph.gradient(wide.cell('P1.mismatch')).has(wide.cell('raw.1.length'))).toBe(false);
    }, 40);
  });
  test('one value on both paths cancels as often as it stands on both, and adds where it stands twice on one', () => {
    always(pages, ({ reference, object }) => {
      const { value, u, results: { graph }, cell } = read(text(reference, object));
      const mismatch = cell('P1.mismatch');
      const times = sum(object, l => l.times) - sum(reference, l => l.times);
      // In mm: 200 for each `gap`, the legs' own, and 300 from the object to the plate.
      expectNear(value('P1.mismatch') * 1e3, 200 * times + sum(object, l => l.own) + 300 - sum(reference, l => l.own), 1e-9);
      expectNear(graph.gradient(mismatch).get(cell('gap'))!, times, 1e-12);
      const u2 = ((7 * times) ** 2 + 3 ** 2 + sum([...reference, ...object], l => l.give ** 2)) / 3;
      expectNear(u('P1.mismatch') * 1e3, Math.sqrt(u2), 1e-9);
    }, 60);
  });
  test('one value on both paths alike leaves nothing of its uncertainty', () => {
    const leg: Legs = [{ times: 1, own: 100, give: 0 }];
    const { u, cell, results: { graph } } = read(text(leg, leg, '350 mm', '200 mm ± 90 mm'));
    expectNear(u('P1.mismatch') * 1e3, 3 / Math.sqrt(3), 1e-12);
    expect(graph.ranking(cell('P1.mismatch')).find(r => r.input.name === 'gap')!.share).toBe(0);
  });
});

describe('places', () => {
  /** Legs of 300 and 400 mm behind the splitter on the one arm, 3-4-5 triangles. */
  const table = read(setup(
    'laser red at (0, 0) mm {', '  coherence length: 5 m', '}', 'splitter S1 at (500, 0) mm', 'mirror M1 at (800, 400) mm ± 2 mm', 'object whelk at (500, 700) mm', 'plate P1 at (500, 800) mm ± 5 mm',
    'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> whelk', '  -> P1',
  ));
  test('a moved mirror changes the path by the difference of two directions', () => {
    const slopes = table.results.graph.gradient(table.cell('P1.reference.length'));
    // To M1 the light runs along (0.6, 0.8), away from it along (−0.6, 0.8): x counts twice, y not at all.
    expectNear(slopes.get(table.cell('M1.x'))!, 1.2, 1e-12);
    expectNear(slopes.get(table.cell('M1.y'))!, 0, 1e-12);
    expectNear(table.mm('P1.reference.length'), 1000, 1e-9);
  });
  test('a moved plate changes both paths, and the mismatch by the difference of both directions', () => {
    const slopes = table.results.graph.gradient(table.cell('P1.mismatch'));
    // Reference arrives along (−0.6, 0.8), object light along (0, 1).
    expectNear(slopes.get(table.cell('P1.x'))!, 0.6, 1e-12);
    expectNear(slopes.get(table.cell('P1.y'))!, 0.2, 1e-12);
    const own = Math.hypot(1.2 * 2, 0.6 * 5, 0.2 * 5) / Math.sqrt(3);
    expectNear(table.u('P1.mismatch') * 1e3, own, 1e-9);
  });
});
