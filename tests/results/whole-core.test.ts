/** What holds for the whole core, whatever is typed: nothing throws, no NaN and no infinity comes out, and the same text always gives the same. A failure prints the text. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LineCache } from '../../grammar/parse.ts';
import { analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { chainOf } from '../../server/features/chain.ts';
import { sample } from '../../server/results/sampling.ts';

const file = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const SAMPLES = [file('../grammar/fixtures/whelk-by-string.plate'), file('../grammar/fixtures/whelk-on-the-table.plate')];
const LAB = file('../../examples/saltmarsh-lab.plate');
const URI = 'file:///saltmarsh/whelk.plate';
const library: Library = { resolve: path => `file:///saltmarsh/${path}`, text: uri => (uri.endsWith('/saltmarsh-lab.plate') ? LAB : undefined) };
const look = (text: string, cache?: LineCache): Snapshot => analyse(URI, text, library, cache);

/** All that leaves the core, as plain data; JSON would hide what is no number, so that it is counted here. */
function figures(s: Snapshot): { page: string; odd: string[] } {
  const odd: string[] = [];
  const number = (where: string, v: number | undefined): number | null => {
    if (v !== undefined && !Number.isFinite(v)) odd.push(`${where} ${v}`);
    return v ?? null;
  };
  const results = s.results.map(({ setup, graph, published, goals, aliases, arms, problems }) => ({
    setup: setup.name,
    cells: graph.cells.map(c => [c.name, c.dim.key, c.origin, c.missing?.code ?? number(c.name, graph.value(c))]),
    published: published.map(c => {
      const band = sample(graph, c);
      return [c.name, number(`u of ${c.name}`, graph.uncertainty(c)), ...(band ? [band.low, band.high, band.mean, band.std].map(v => number(`band of ${c.name}`, v)) : []), ...(c.missing ? [] : graph.ranking(c).map(r => [r.input.name, number(`slope of ${c.name}`, r.slope), number(`share of ${c.name}`, r.share)]))];
    }),
    goals: goals.map(g => [g.goal.result, g.outcome, number(g.goal.result, g.value), number(g.goal.result, g.give), g.limits.map(l => number('limit', l))]),
    aliases: [...aliases].map(([name, cells]) => [name, cells.map(c => c.name)]),
    arms: arms.arms.map(a => [a.name, a.plate.id, a.role, a.path.map(l => l.id)]),
    problems,
  }));
  for (const f of s.findings) {
    for (const v of Object.values(f.data)) if (typeof v === 'number') number(f.code, v);
    if (/NaN|Infinity|undefined|\[object/.test(f.message)) odd.push(`${f.code}: ${f.message}`);
  }
  return { page: JSON.stringify([results, s.findings, s.model.problems, s.files]), odd };
}

/** Nothing odd, and all places in the text. */
function expectSound(text: string, s: Snapshot = look(text)): string {
  const { page, odd } = figures(s);
  expect(odd, text).toEqual([]);
  const lines = s.tree.lines.map(l => l.text);
  for (const { at, code } of s.findings) {
    const line = lines[at.line];
    expect(line !== undefined && at.start >= 0 && at.start < at.end && at.start <= line.length && (at.end <= line.length || at.end === at.start + 1), `${code} at ${JSON.stringify(at)} in\n${text}`).toBe(true);
  }
  return page;
}

const name = fc.constantFrom('S1', 'M1', 'P1', 'red', 'whelk', 'H1', 'lab.red-12', 'lab.fine-grain', 'gap', 'raw', 'reference', 'object', 'toString', 'S1.reflects', 'whelk.depth', 'red.tube length', 'P1.object.mismatch', 'mismatch', 'brightness');
const number = fc.constantFrom('0', '-1', '1', '0.35', '750', '1e300', '1e-300', '1e40', '-1e40', '4:1', '?', '999999', '1e5', '.5', '2026-02-11');
const unit = fc.constantFrom('', ' mm', ' µm', ' m', ' in', '%', '°', ' °C', ' K', ' GHz', ' mW', ' µJ/cm²', ' lines/mm', ' points', ' MM', ' constructor', ' mm²');
const tolerance = fc.constantFrom('', '', ' ± 2 mm', ' ± 2%', ' ± 5 points', ' ×÷ 3', ' ±', ' ± ?', ' ± -1 mm', ' ± 1e300 mm', ' ± 1 mm std', ' ×÷ 1e30', ' ± 2 °C');
const value: fc.Arbitrary<string> = fc.oneof(
  fc.tuple(number, unit, tolerance).map(v => v.join('')), fc.tuple(number, unit, tolerance).map(v => v.join('')), name,
  fc.tuple(fc.constantFrom('sqrt', 'abs', 'min', 'max', 'sin', 'acos', 'tan', 'nope'), number, unit, name).map(([f, n, u, x]) => `${f}(${n}${u}${f === 'min' ? `, ${x}` : ''})`),
  fc.tuple(number, unit, fc.constantFrom('+', '-', '*', '/'), fc.oneof(name, number), unit).map(([a, u, op, b, w]) => `${a}${u} ${op} ${b}${w}`),
  fc.tuple(number, number, unit).map(([a, b, u]) => `(${a}, ${b})${u}`), fc.tuple(number, number, unit).map(([a, b, u]) => `${a} x ${b}${u}`), fc.constantFrom('"wet sand"', 'unknown', 'crown', 'through', '(', '{'),
);
const line: fc.Arbitrary<string> = fc.oneof(
  { weight: 2, arbitrary: fc.tuple(fc.constantFrom('laser', 'splitter', 'mirror', 'spreader', 'lens', 'object', 'plate', 'hologram', 'ground glass', 'beam stop', 'attenuator', 'room', 'miror'), name, fc.constantFrom('', ' {', ' = lab.red-12', ' at (1, 2) mm', ' at (0, 0) mm {', ' on S1 -> M1 by 60 mm', ' heading 30')).map(([k, n, tail]) => `${k} ${n}${tail}`) },
  { weight: 3, arbitrary: fc.tuple(fc.constantFrom('depth', 'lit at', 'tube length', 'coherence length', 'coherence contrast', 'linewidth', 'line shape', 'modes', 'gain width', 'wavelength', 'thickness', 'glass', 'size', 'beam height', 'table', 'hologram', 'tone', 'nope'), value).map(([f, v]) => `${f}: ${v}`) },
  { weight: 3, arbitrary: fc.tuple(fc.constantFrom('raw', 'reference', 'object', 'key'), name, fc.constantFrom('', ' through', ' reflected', ' diffracted', ' nope')).map(([b, n, p]) => `beam ${b} from ${n}${p}`) },
  { weight: 5, arbitrary: fc.tuple(name, fc.constantFrom('', ' through', ' reflected'), fc.oneof(fc.constant(''), value.map(v => `: ${v}`))).map(([n, p, v]) => `-> ${n}${p}${v}`) },
  { weight: 2, arbitrary: fc.tuple(fc.constantFrom('gap', 'twin', 'S1', 'mismatch'), value).map(([n, v]) => `let ${n} = ${v}`) },
  { weight: 2, arbitrary: fc.tuple(fc.constantFrom('expect', 'aim'), name, fc.constantFrom(' <', ' >=', ':', ' from 0 mm to', ' ='), value).map(([e, n, op, v]) => `${e} ${n}${op} ${v}`) },
  { weight: 1, arbitrary: fc.tuple(name, name, value).map(([a, b, v]) => `measured ${a} -> ${b}: ${v}`) },
  { weight: 2, arbitrary: fc.constantFrom('}', 'setup "a" {', 'inventory lab {', 'use "saltmarsh-lab.plate"', 'use "nope.plate"', 'variant "b" {', 'accept arms-mismatched "so it is"', 'shot 7 {', '// wet sand', '/// wet sand', '') },
);
const soup = fc.array(line, { maxLength: 25 }).map(lines => `setup "Whelk shell" {\n${lines.join('\n')}\n}\n`);
/** Lengths that the language takes, far beyond what stands on a table. */
const length = fc.constantFrom('750 mm', '750 mm ± 2 mm', '0.75 m ± 1%', '30 in', '1 nm', '1e-30 m', '1e39 m', '1 km', '1 m ± 1e39 m', '300 mm ×÷ 1e9', '5 mm ± 5 mm', '1 mm ± 1e-39 m', 'gap', 'gap * 2', 'gap ± 90%', 'gap / 1e20', '10 mm * 1e30', 'sqrt(gap * gap)', '?', '');
const mostly = (usual: fc.Arbitrary<string>): fc.Arbitrary<string> => fc.oneof({ weight: 12, arbitrary: usual }, { weight: 1, arbitrary: value });
const fact = (phrase: string, ...values: string[]): fc.Arbitrary<string> => fc.oneof(fc.constant(''), mostly(fc.constantFrom(...values)).map(v => `${phrase}: ${v}`));
const leg = (to: string): fc.Arbitrary<string> => mostly(length).map(l => (l === '' ? `-> ${to}` : `-> ${to}: ${l}`));
/** Whole arms of any lengths and facts, so that the soup reaches the far end of the core as well. */
const arms = fc.tuple(
  fc.constant('setup "Whelk shell" {\nlaser red {'), fact('wavelength', '632.8 nm', '633 nm', '2000 nm', '700 nm ± 30%'),
  fc.oneof(
    fc.tuple(fact('tube length', '350 mm', '350 mm ×÷ 1e9', '1e-30 m', '1e39 m', '1 mm ± 1 mm'), fact('modes', '1', '3', '1e6', '999999999', 'unknown'), fact('gain width', '1.5 GHz', '1e30 GHz', '1 Hz ×÷ 1e9', '1 GHz ± 5 GHz')),
    fc.tuple(fact('coherence length', '200 mm', '1e-39 m', '1e39 m', '1 m ×÷ 1e9', '1 mm ± 1 mm'), fact('coherence contrast', '50%', '0.1%', '99.9%', '50% ± 90%'), fact('line shape', 'lorentzian', 'rectangular')),
    fc.tuple(fact('linewidth', '1.5 GHz', '1e-39 Hz', '1e30 GHz', '1 MHz ×÷ 1e20'), fact('line shape', 'lorentzian', 'rectangular')),
  ).map(f => f.join('\n')),
  fc.constant('}\nsplitter S1 {'), fact('thickness', '3 mm', '1e39 m', '3 mm ×÷ 1e9'), fact('glass', 'window', 'acrylic'), fc.constant('}\nobject whelk {'), fact('depth', '35 mm', '0 mm', '1e39 m', '35 mm ×÷ 1e9'), fact('lit at', '0°', '180°', '45° ± 180°', '90° std'),
  fc.constant('}\nplate P1\nlet gap = 300 mm ± 5 mm\nbeam raw from red'), leg('S1'), fc.constant('beam reference from S1 through'), leg('P1'), fc.constant('beam object from S1 reflected'), leg('whelk'), leg('P1'),
  fc.array(fc.oneof(line, fc.constantFrom('expect mismatch < 10 mm', 'expect brightness from 10% to 60%', 'expect P1.object.far.brightness: 50%', 'expect object length > 1e-39 m')), { maxLength: 3 }).map(l => l.join('\n')),
  fc.constant('}\n'),
).map(parts => parts.filter(p => p !== '').join('\n'));

const edit = fc.record({ kind: fc.constantFrom('delete', 'duplicate', 'swap', 'number', 'number', 'unit', 'insert', 'cut', 'word'), at: fc.nat(1000), to: fc.nat(1000), number, unit, line });
type EditOf = typeof edit extends fc.Arbitrary<infer T> ? T : never;

/** One slip of a hand. */
function slip(text: string, e: EditOf): string {
  const lines = text.split('\n');
  const [i, j] = [e.at % lines.length, e.to % lines.length] as [number, number];
  const replace = (pattern: RegExp, by: string): void => {
    const found = [...text.matchAll(pattern)];
    const m = found[e.at % Math.max(1, found.length)];
    if (m) lines.splice(0, lines.length, ...(text.slice(0, m.index) + by + text.slice(m.index + m[0].length)).split('\n'));
  };
  switch (e.kind) {
    case 'delete': lines.splice(i, 1); break;
    case 'duplicate': lines.splice(j, 0, lines[i]!); break;
    case 'swap': [lines[i], lines[j]] = [lines[j]!, lines[i]!]; break;
    case 'number': replace(/\d+(?:\.\d+)?/g, e.number); break;
    case 'unit': replace(/(?<=\d) ?(?:mm|nm|µm|°|%|µW\/cm²)/g, e.unit); break;
    case 'insert': lines.splice(i, 0, e.line); break;
    case 'cut': lines[i] = lines[i]!.slice(0, e.to % (lines[i]!.length + 1)); break;
    case 'word': replace(/[a-zA-Z][\w-]*/g, (/[a-zA-Z][\w-]*/.exec((lines[j]!)))?.[0] ?? 'x'); break;
  }
  return lines.join('\n');
}
const worn = fc.tuple(fc.constantFrom(...SAMPLES), fc.array(edit, { minLength: 1, maxLength: 6 })).map(([text, edits]) => edits.reduce(slip, text));

const always = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, numRuns: number): void => { fc.assert(fc.property(arbitrary, holds), { numRuns }); };

describe('whatever is typed', () => {
  test('the samples are sound, and free of errors', () => {
    for (const text of [...SAMPLES, LAB]) {
      expectSound(text);
      expect(look(text).findings.filter(f => f.severity === 'error')).toEqual([]);
    }
  });
  test('soup of lines is sound', () => { always(soup, text => { expectSound(text); }, 300); });
  test('soup of values in whole arms is sound', () => { always(arms, text => { expectSound(text); }, 300); });
  test('the samples with slips are sound', () => { always(worn, text => { expectSound(text); }, 300); });
  test('each number of the samples replaced by what no table has', () => {
    for (const text of SAMPLES) {
      for (const m of text.matchAll(/\d+(?:\.\d+)?/g)) for (const by of ['0', '-1', '1e300', '?']) expectSound(text.slice(0, m.index) + by + text.slice(m.index + m[0].length));
    }
  });
  test('findings only read: they make no cell', () => {
    always(fc.oneof(soup, arms, worn), text => {
      const s = look(text);
      const cells = (): string[][] => s.results.map(r => r.graph.cells.map(c => c.name));
      const before = cells();
      expect(s.findings).toBeDefined();
      expect(cells(), text).toEqual(before);
    }, 200);
  });
  test('chains of numbers can be told for every result', () => {
    always(fc.oneof(arms, worn), text => {
      for (const { graph, published } of look(text).results) for (const c of published) expect(JSON.stringify(chainOf(graph, c)), text).not.toMatch(/NaN|Infinity/);
    }, 60);
  });
});

test('the soup in whole arms mostly has a mismatch, and often a brightness', () => {
  const has = { mismatch: 0, brightness: 0 };
  always(arms, text => {
    for (const what of ['mismatch', 'brightness'] as const) if (look(text).results[0]?.published.some(c => c.name.endsWith(what) && !c.missing)) has[what]++;
  }, 200);
  expect(has.mismatch).toBeGreaterThan(60);
  expect(has.brightness).toBeGreaterThan(20);
});

describe('the same text', () => {
  test('gives the same page twice', () => {
    always(fc.oneof(soup, arms, worn), text => { expect(figures(look(text)).page).toBe(figures(look(text)).page); }, 100);
  });
  test('gives the same page whatever the lines that are kept have seen', () => {
    always(fc.tuple(fc.oneof(fc.constantFrom(...SAMPLES), arms), fc.array(edit, { minLength: 1, maxLength: 8 })), ([start, edits]) => {
      const cache = new LineCache();
      let text = start;
      for (const e of edits) {
        look(text, cache);
        text = slip(text, e);
      }
      expect(figures(look(text, cache)).page, text).toBe(figures(look(text)).page);
      // And back again, where the kept lines know all of it.
      expect(figures(look(start, cache)).page, start).toBe(figures(look(start)).page);
    }, 100);
  });
  test('gives the same page where a line is written above a finding that is kept', () => {
    const page = 'setup "Whelk shell" {\n  laser red {\n    wavelength: 632.8 nm\n    modes: 1\n    gain width: 1.5 GHz\n  }\n  splitter S1\n  object whelk {\n    depth: 35 mm\n  }\n  plate P1\n  beam raw from red\n    -> S1: 750 mm\n  beam reference from S1 through\n    -> P1: 750 mm\n  beam object from S1 reflected\n    -> whelk: 750 mm\n    -> P1: 750 mm\n}\n';
    const cache = new LineCache();
    look(page, cache);
    const moved = `// notebook\n${page}`;
    expect(figures(look(moved, cache)).page).toBe(figures(look(moved)).page);
    // What is written of the gain is read, and tells no coherence by itself.
    expect(look(page).findings.find(f => f.code === 'coherence-unknown')?.message).toContain('nothing is written about the coherence of red');
  });
  test('gives the same page whatever other files were read with the same kept lines', () => {
    const shared = new LineCache();
    always(fc.oneof(soup, worn), text => { expect(figures(look(text, shared)).page, text).toBe(figures(look(text)).page); }, 80);
  });
});
