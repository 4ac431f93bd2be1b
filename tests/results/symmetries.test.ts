/**
 * What holds for every table, of every figure: nothing that a hologram records depends on where the table stands in the room, on which way it is turned, on whether one looks
 * at it in a mirror, or on the units in which it is written. Symmetries of space (common knowledge of physics), not of the program.
 */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { sample } from '../../server/results/sampling.ts';
import type { Cell } from '../../server/results/cell.ts';
import { expectNear, read, type Read } from './read.ts';

vi.setConfig({ testTimeout: 300_000 });

/** How a table is looked at: turned about the vertical, seen in a mirror or not, shifted; and how lengths are written. */
interface Look { readonly by: number; readonly mirrored: boolean; readonly shift: readonly [number, number]; readonly unit: 'mm' | 'cm' | 'm' | 'in' }
const AS_IS: Look = { by: 0, mirrored: false, shift: [0, 0], unit: 'mm' };
/** 1 in is 25.4 mm exactly. */
const MM = { mm: 1, cm: 10, m: 1000, in: 25.4 };

type Point = readonly [number, number, number];
interface Table {
  readonly layout: keyof typeof LAYOUTS;
  /** how far each thing stands from where the layout has it, mm */
  readonly moved: readonly Point[];
  readonly heading: number;
  readonly facts: { readonly hologram: string; readonly polarization: string; readonly laser: string; readonly gloss: string; readonly shape: string; readonly f: number; readonly axis: number };
}

/** Common layouts: an off-axis master, a reflection hologram that is lit past the edge of the plate, a single beam, a ground glass behind the thing. Places in the order of the names. */
const LAYOUTS = {
  master: { at: { red: [60, 100], S1: [350, 100], M1: [1100, 100], M2: [94, 420], M3: [400, 640], whelk: [700, 400], P1: [700, 700] }, heading: 270 },
  split: { at: { red: [60, 200], S1: [150, 200], M1: [150, 675], M2: [550, 200], M3: [620, 760], whelk: [780, 500], P1: [700, 500] }, heading: 180 },
  single: { at: { red: [60, 100], S1: [300, 100], M1: [1100, 100], M2: [94, 420], M3: [400, 640], whelk: [1115, 722], P1: [1100, 700] }, heading: 322 },
  behind: { at: { red: [20, 150], S1: [150, 150], M1: [850, 250], M2: [150, 600], M3: [800, 600], whelk: [1000, 600], P1: [1200, 600] }, heading: 180 },
} as const;

function page({ layout, moved, heading, facts }: Table, { by, mirrored, shift, unit }: Look): string {
  const [a, s] = [(by * Math.PI) / 180, mirrored ? -1 : 1];
  const mm = (l: number): string => (l / MM[unit]).toPrecision(17).replace(/e\S+/, '');
  const length = (l: number): string => `${l / MM[unit]} ${unit}`;
  const names = Object.keys(LAYOUTS[layout].at) as (keyof typeof LAYOUTS.master.at)[];
  const at = (name: (typeof names)[number]): string => {
    const [x0, y0] = LAYOUTS[layout].at[name];
    const [dx, dy, dz] = moved[names.indexOf(name)]!;
    const [x, y] = [s * (x0 + dx), y0 + dy];
    return `at (${[x * Math.cos(a) - y * Math.sin(a) + shift[0], x * Math.sin(a) + y * Math.cos(a) + shift[1], 120 + dz].map(c => Number(mm(c)).toFixed(13)).join(', ')}) ${unit}`;
  };
  const ray = (degrees: number): string => `heading ${(mirrored ? 180 - degrees : degrees) + by}°`;
  const block = (head: string, ...lines: string[]): string => `${head} {\n${lines.filter(l => l !== '').map(l => `  ${l}\n`).join('')}}`;
  const legs = (head: string, ...to: string[]): string => `${head}\n${to.map(t => `  -> ${t}`).join('\n')}`;
  const f = `focal length: ${length(facts.f)}`;
  return block('setup "Whelk shell"', `hologram: ${facts.hologram}`,
    block(`laser red ${at('red')} facing ${layout === 'single' ? 'M1' : 'S1'}`, 'wavelength: 632.8 nm', facts.laser, 'power: 12 mW ± 5%', `beam diameter: ${length(0.8)}`, facts.polarization),
    layout === 'single' ? '' : block(`splitter S1 ${at('S1')}`, 'reflects: 80% ± 3 points', `thickness: ${length(3)}`), `mirror M1 ${at('M1')}`, layout === 'single' ? '' : `mirror M2 ${at('M2')}`,
    layout === 'single' ? '' : layout === 'behind' ? block(`ground glass M3 ${at('M3')}`, `size: ${100 / MM[unit]} x ${100 / MM[unit]} ${unit}`) : `mirror M3 ${at('M3')}`,
    block(`spreader R1 on M1 -> P1 by ${length(60)}`, f), layout === 'single' ? '' : block(`spreader R2 on ${layout === 'behind' ? 'M2 -> M3' : 'M3 -> whelk'} by ${length(30)}`, f),
    block(`object whelk ${at('whelk')}`, `size: ${40 / MM[unit]} x ${60 / MM[unit]} x ${35 / MM[unit]} ${unit}`, facts.gloss, facts.shape), block(`plate P1 ${at('P1')} ${ray(LAYOUTS[layout].heading + heading)}`, `size: ${63 / MM[unit]} x ${80 / MM[unit]} ${unit}`, 'material: finer-grain silver halide'),
    layout === 'single' ? '' : block(`half-wave plate HW1 on S1 -> ${layout === 'behind' ? 'M2' : 'M1'} by ${length(120)}`, `axis: ${mirrored ? -facts.axis : facts.axis}°`),
    ...(layout === 'single' ? [legs('beam all from red', 'M1', 'R1', 'P1 through', 'whelk', 'P1')] : layout === 'behind'
      ? [legs('beam raw from red', 'S1'), legs('beam reference from S1 through', 'M1', 'R1', 'P1'), legs('beam object from S1 reflected', 'HW1', 'M2', 'R2', 'M3', 'whelk', 'P1')]
      : [legs('beam raw from red', 'S1'), legs('beam reference from S1 through', 'HW1', 'M1', 'R1', 'P1'), legs('beam object from S1 reflected', 'M2', 'M3', 'R2', 'whelk', 'P1')]),
  );
}

/** What is made when it is asked for. */
const ASKED = ['S1.incidence', 'M1.incidence', 'M2.incidence', 'M1.delicacy', 'M1.allowed movement', 'M2.allowed movement', 'M3.allowed movement', 'R1.allowed movement', 'S1.allowed movement', 'whelk.allowed movement', 'P1.allowed movement in its plane', 'P1.allowed movement along its normal',
  'reference.1.clearance', 'reference.3.clearance', 'object.3.clearance', 'all.2.clearance', 'reference.3.distance from whelk', 'raw.1.landing share', 'reference.1.landing share', 'reference.3.reach', 'P1.allowed warming', 'P1.reference.face loss', 'P1.object.fringe tilt', 'P1.object.volume parameter', 'P1.object.estimated efficiency', 'P1.object.bandwidth',
  'P1.object.polarization', 'P1.reference.ghost fringes', 'P1.reference.back face fringes', 'P1.reference.power', 'P1.object.power', 'P1.object.off revival'];
/** Numbers that tell where something is or which way it looks: these do turn with the table. */
const TURNS = /[. ][xyz]$|heading$/;

interface Figure { readonly value: number | undefined; readonly missing: string | undefined; readonly band: readonly number[] }
function figures(r: Read): Map<string, Figure> {
  const { graph, published } = r.results;
  const asked = ASKED.flatMap(n => r.results.ask(n) ?? []);
  const shown = new Set<Cell>([...published, ...asked]);
  return new Map([...new Set([...graph.cells, ...asked])].filter(c => !TURNS.test(c.name)).map(c => {
    const value = graph.value(c);
    const band = value === undefined || !shown.has(c) ? undefined : sample(graph, c);
    return [c.name, { value, missing: c.missing?.code, band: band ? [band.low, band.high] : [] }];
  }));
}
const found = (r: Read): string[] => r.snapshot.findings.map(f => `${f.severity} ${f.code} ${f.subject}`).sort();

/** Rounding of coordinates of some metres is 1e-15 m, and what is made of them a thousand times that. */
const near = (a: number | undefined, b: number | undefined): boolean => (a === undefined || b === undefined ? a === b : Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 1e-12);

const spot = fc.integer({ min: -25, max: 25 });
const SHAPES = ['', 'shape: box', 'shape: cylinder', 'shape: sphere'] as const;
const table: fc.Arbitrary<Table> = fc.record({
  layout: fc.constantFrom('master', 'split', 'single', 'behind'), moved: fc.array(fc.tuple(spot, spot, fc.integer({ min: -12, max: 12 })), { minLength: 7, maxLength: 7 }), heading: fc.integer({ min: -12, max: 12 }),
  facts: fc.record({
    hologram: fc.constantFrom('transmission', 'reflection'), polarization: fc.constantFrom('polarization: vertical', 'polarization: horizontal', 'polarization: random', ''), laser: fc.constantFrom('tube length: 350 mm', 'coherence length: 200 mm ×÷ 1.5', 'linewidth: 1 GHz'),
    gloss: fc.constantFrom('gloss: 0%', 'gloss: 40% ± 15 points', ''), shape: fc.constantFrom<string>(...SHAPES), f: fc.constantFrom(2.9, 4.5, 9, -10), axis: fc.constantFrom(0, 22.5, 45, 30),
  }),
});

/** `besides`: figures that are not held against each other, nor their bands. */
function expectAlike(t: Table, other: Look, besides = /(?!)/, bandsBesides = besides): void {
  const [a, b] = [read(page(t, AS_IS)), read(page(t, other))];
  const where = `${page(t, AS_IS)}\n${JSON.stringify(other)}`;
  const [as, bs] = [figures(a), figures(b)];
  expect([...bs.keys()].sort(), where).toEqual([...as.keys()].sort());
  const off: string[] = [];
  for (const [name, x] of as) {
    const y = bs.get(name)!;
    if (!besides.test(name) && (x.missing !== y.missing || !near(x.value, y.value))) off.push(`${name}: ${String(x.value)} ${x.missing ?? ''}, ${String(y.value)} ${y.missing ?? ''}`);
    if (!besides.test(name) && !bandsBesides.test(name) && !(x.band.length === y.band.length && x.band.every((v, i) => near(v, y.band[i])))) off.push(`band of ${name}: ${x.band.join(' ')}, ${y.band.join(' ')}`);
  }
  expect(off, where).toEqual([]);
  expect(found(b), where).toEqual(found(a));
}

const RUNS = Number(process.env['RUNS'] ?? 6);
const always = (looks: fc.Arbitrary<Partial<Look>>, holds: (t: Table, l: Look) => void): void => { fc.assert(fc.property(table, looks, (t, l) => { holds(t, { ...AS_IS, ...l }); }), { numRuns: RUNS, endOnFailure: true }); };
/** The axis of a wave plate counts the other way in a mirror. */
const AXIS = /^HW1\.axis$/;
const WORN: Table = { layout: 'split', moved: [[4, 22, 3], [3, -4, -2], [3, 23, -10], [-2, -2, -9], [15, -1, 4], [3, -6, 2], [2, -14, 3]], heading: 6, facts: { hologram: 'reflection', polarization: '', laser: 'linewidth: 1 GHz', gloss: 'gloss: 40% ± 15 points', shape: '', f: 4.5, axis: 45 } };

describe('every figure and every band stays as it is', () => {
  test('where the table is turned about', () => { always(fc.integer({ min: -179, max: 180 }).map(by => ({ by })), expectAlike); });
  test('where it stands elsewhere', () => { always(fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 })).map(shift => ({ shift })), expectAlike); });
  test('in other units', () => { always(fc.constantFrom('cm', 'm', 'in').map(unit => ({ unit })), expectAlike); });
  test('in a mirror', () => { always(fc.constant({ mirrored: true }), (t, l) => { expectAlike(t, l, AXIS); }); });
});

describe('what once was otherwise', () => {
  // A ball was laid out in patches along the axes of the table: its figures moved by some per cent as the table turned.
  test('a ball, where the table is turned about', () => { expectAlike({ ...WORN, facts: { ...WORN.facts, shape: 'shape: sphere' } }, { ...AS_IS, by: -101 }); });
  // A cylinder that stands upright before a level line of sight was laid out from the table's x axis.
  test('a cylinder that is seen level, where the table is turned about', () => { expectAlike({ ...WORN, moved: WORN.moved.map(([x, y]) => [x, y, 0]), facts: { ...WORN.facts, shape: 'shape: cylinder' } }, { ...AS_IS, by: -101 }); });
  // A plate that is not square to the line of sight counted as turned to its right, whichever way it is turned.
  test('object light, in a mirror', () => { expectAlike(WORN, { ...AS_IS, mirrored: true }, AXIS); });
});

test('light that runs the other way goes as far, and meets each mirror as squarely', () => {
  const coordinate = fc.integer({ min: -800, max: 800 });
  const points = fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 5, maxLength: 5 }).filter(ps => ps.every((p, i) => ps.every((q, j) => i === j || Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > 60)));
  fc.assert(fc.property(points, given => {
    const way = (ps: readonly Point[], names: readonly string[]): Read => read(['setup "Whelk shell" {', `laser red at (${ps[0]!.join(', ')}) mm`, ...names.map((n, i) => `mirror ${n} at (${ps[i + 1]!.join(', ')}) mm`), `beam stop BS1 at (${ps[4]!.join(', ')}) mm`, 'beam raw from red', ...names.map(n => `  -> ${n}`), '  -> BS1', ...names.map(n => `expect ${n}.incidence < 90°`), '}'].join('\n'));
    const [there, back] = [way(given, ['M1', 'M2', 'M3']), way([...given].reverse(), ['M3', 'M2', 'M1'])];
    for (const n of [1, 2, 3, 4]) expectNear(back.value(`raw.${5 - n}.length`), there.value(`raw.${n}.length`), 1e-12);
    for (const m of ['M1', 'M2', 'M3']) expectNear(back.value(`${m}.incidence`), there.value(`${m}.incidence`), 1e-7, m);
  }), { numRuns: 60 });
});
