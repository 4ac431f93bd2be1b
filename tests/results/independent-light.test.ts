/**
 * Random readings of light, powers, wheels and drift, against plain formulas with their own slopes; what readings share (dark, calibration, head, angle) is one input of the
 * formula. Light in µW/cm², powers on a head in µW.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { interval, isBent } from '../../server/results/sampling.ts';
import { amount, expectFigure, propagated, written, type Written } from './independent.ts';
import { metered, MICRO } from './light-library.ts';
import type { Read } from './read.ts';

const RAD = Math.PI / 180;
/** A positive number of three digits with up to so many per cent, half-width or standard. */
const reading = (min: number, max: number, unit: string, percent = 8): fc.Arbitrary<Written> =>
  fc.record({ v: fc.integer({ min: min * 100, max: max * 100 }), p: fc.integer({ min: 0, max: percent }), std: fc.boolean() }).map(({ v, p, std }) => written(v / 100, Number(((v / 100) * (p / 100)).toPrecision(3)), unit, std));

const plates = fc.record({
  kind: fc.constantFrom('light', 'power', 'mixed'), reference: reading(3, 60, ''), object: reading(1, 20, ''), through: reading(1, 9, ''), dark: reading(0.01, 0.5, 'µW', 30),
  head: amount(6, 14, 0.3, 'mm'), calibration: reading(0.8, 1.2, '', 10), facing: fc.boolean(), angle: amount(5, 70, 3, '°'), loss: amount(5, 40, 3, '%'), dose: reading(20, 200, 'µJ/cm²', 5),
});

describe('light at a plate', () => {
  test('of each beam, both, their ratio, what is polarized, the exposure', () => {
    fc.assert(fc.property(plates, ({ kind, reference, object, through, dark, head, calibration, facing, angle, loss, dose }) => {
      fc.pre(through.value < object.value && dark.value < 0.5);
      // In powers, or in light, or one of each: then the dark power counts by the area of the head.
      const asPower = (n: number): boolean => kind === 'power' || (kind === 'mixed' && n === 1);
      const read = (n: number, w: Written): string => { const unit = asPower(n) ? 'µW' : 'µW/cm²'; return w.text.replace(/[\d.]+(?= |$)/g, v => `${v} ${unit}`); };
      const r = metered([`measured dark: ${dark.text} by m`, `measured reference at P1${facing ? ' facing beam' : ''}: ${read(0, reference)} by m`, `measured object at P1: ${read(1, object)} by m`, `measured object at P1 through polarizer: ${read(1, through)} by m`], {
        plate: [`reference angle: ${angle.text}`, `sensitivity: ${dose.text}`],
        things: ['meter m {', `  head: ${head.text}`, `  calibration: ${calibration.text}`, '}', 'polarizer sheet {', `  loss: ${loss.text.replace(/± ([\d.]+)%/, '± $1 points')}`, '}'],
      });
      const inputs = [reference, object, through, dark, head, calibration, angle, loss, dose];
      // Light on the head: (reading − dark)/area or reading − dark/area, the area in cm²; times the calibration.
      const light = (n: number, value: number, d: number, h: number, c: number): number => { const area = (Math.PI * (h / 10) ** 2) / 4; return c * (asPower(n) ? (value - d) / area : value - d / area); };
      const of = (f: (R: number, O: number, T: number, x: readonly number[]) => number): { value: number; u: number } => propagated(x => {
        const [a, b, c, d, h, k, theta] = x as [number, number, number, number, number, number, number];
        return f(light(0, a, d, h, k) * (facing ? Math.cos(theta * RAD) : 1), light(1, b, d, h, k), light(1, c, d, h, k), x);
      }, inputs);
      // Not above the dark reading: that is another test.
      fc.pre(of((R, O, T) => Math.min(R, O, T)).value > 0.05);
      // Nor more than all behind the polarizer.
      fc.pre(of((_, O, T, x) => T / (O * (1 - x[7]! / 100))).value <= 1);
      expectFigure(r, 'P1.reference.light', of(R => R), MICRO);
      expectFigure(r, 'P1.object.light', of((_, O) => O), MICRO);
      expectFigure(r, 'P1.light', of((R, O) => R + O), MICRO);
      expectFigure(r, 'beam ratio', of((R, O) => R / O), 1);
      expectFigure(r, 'polarized', of((_, O, T, x) => T / (O * (1 - x[7]! / 100))), 1);
      expectFigure(r, 'effective ratio', of((R, _, T, x) => (R / T) * (1 - x[7]! / 100)), 1);
      expectFigure(r, 'exposure', of((R, O, _, x) => x[8]! / (R + O)), 1);
    }), { numRuns: 120 });
  });
  test('corners: the weakest as a share of the centre, without the calibration', () => {
    fc.assert(fc.property(reading(20, 60, ''), fc.array(reading(5, 60, ''), { minLength: 1, maxLength: 4 }), reading(0.5, 2, ''), (centre, corners, dark) => {
      const names = ['upper left', 'upper right', 'lower left', 'lower right'];
      // Two that are the weakest together have no slope.
      fc.pre(corners.every((a, i) => corners.every((b, j) => i === j || Math.abs(a.value - b.value) > 0.01)));
      const r = metered([`measured dark: ${dark.text} by needle`, `measured reference at P1: ${centre.text} by needle`, ...corners.map((c, i) => `measured reference at P1 ${names[i]!}: ${c.text} by needle`)]);
      expectFigure(r, 'corner light', propagated(([c, d, ...k]) => (Math.min(...k) - d!) / (c! - d!), [centre, dark, ...corners]), 1);
    }), { numRuns: 60 });
  });
  test('ends of what is widely spread, against plain draws', () => {
    const factor = fc.integer({ min: 16, max: 50 }).map(n => n / 10);
    fc.assert(fc.property(factor, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 25 }), (f, percent, near) => {
      const r = metered([`measured reference at P1: 40 ± ${percent}% by needle`, `measured object at P1: 10 ×÷ ${f} by needle`, `measured dark: 2 ± ${near / 20} by needle`]);
      // 40 · (1 ± p) − d over 10 · f^(−1 … 1) − d, evenly drawn on a net of numbers that fill the cube (Weyl's); what is not above the dark reading makes no ratio.
      const drawn: number[] = [];
      for (let i = 1; i <= 40_000; i++) {
        const [a, b, c] = [Math.SQRT2, Math.sqrt(3), Math.sqrt(5)].map(k => ((i * k) % 1) * 2 - 1) as [number, number, number];
        const [R, O] = [40 * (1 + (a * percent) / 100) - 2 - (c * near) / 20, 10 * f ** b - 2 - (c * near) / 20];
        if (R > 0 && O > 0) drawn.push(R / O);
      }
      drawn.sort((a, b) => a - b);
      const at = (p: number): number => drawn[Math.min(drawn.length - 1, Math.max(0, Math.round(p * drawn.length)))]!;
      expect(isBent(r.results.graph, r.cell('beam ratio'))).toBe(true);
      const { low, high } = interval(r.results.graph, r.cell('beam ratio'));
      // Of 200 draws the ends of the middle 95 % lie, at four standard errors of √(0.025 · 0.975 / 200) = 1.1 %, between these quantiles.
      expect(low).toBeGreaterThanOrEqual(at(0) * (1 - 1e-3));
      expect(low).toBeLessThanOrEqual(at(0.025 + 0.044));
      expect(high).toBeGreaterThanOrEqual(at(0.975 - 0.044));
      expect(high).toBeLessThanOrEqual(at(1) * (1 + 1e-3));
      expect(low).toBeGreaterThan(0);
    }), { numRuns: 25 });
  });
});

describe('what stands before the plate', () => {
  const mW = (r: Read, name: string): { value: number; u: number } => { const cell = r.results.light.ask(name)!; return { value: r.results.graph.value(cell)! * 1e3, u: r.results.graph.uncertainty(cell) * 1e3 }; };
  test('power by the shares and losses on the way, from a reading on', () => {
    const share = amount(10, 90, 4, '%');
    fc.assert(fc.property(reading(5, 20, 'mW', 10), share, amount(0, 20, 3, '%'), fc.option(reading(4, 18, 'mW', 10), { nil: undefined }), (power, reflects, loss, read) => {
      const points = (w: Written): string => w.text.replace(/± ([\d.]+)%/, '± $1 points');
      const r = metered([...(read ? [`measured raw at S1: ${read.text}`] : []), 'expect P1.object.power > 1 mW', 'expect P1.reference.power > 1 mW'], { laser: [`power: ${power.text}`], splitter: [`reflects: ${points(reflects)}`, `loss: ${points(loss)}`] });
      const inputs = [read ?? power, reflects, loss];
      const expected = (f: (p: number, s: number) => number): { value: number; u: number } => propagated(([p, s, l]) => f(p! * (1 - l! / 100), s! / 100), inputs);
      for (const [name, f] of [['P1.object.power', (p: number, s: number) => p * s], ['P1.reference.power', (p: number, s: number) => p * (1 - s)]] as const) {
        const [found, e] = [mW(r, name), expected(f)];
        expect(found.value).toBeCloseTo(e.value, 9);
        expect(found.u).toBeCloseTo(e.u, 6);
      }
    }), { numRuns: 60 });
  });
  test('a wheel between two marks: the straight line, its slope, and the share of each mark', () => {
    fc.assert(fc.property(fc.array(amount(5, 95, 4, '%'), { minLength: 2, maxLength: 5 }), fc.integer({ min: 1, max: 99 }), fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 20 }), (shares, part, where, give) => {
      const n = where % (shares.length - 1);
      const marks = shares.map((_, i) => 2 + 1.5 * i);
      const setting = written(Number((marks[n]! + 0.015 * part).toFixed(4)), give / 100, '');
      const r = metered([`measured S1 wheel: ${setting.text}`], { splitter: shares.map((s, i) => `mark ${marks[i]!}: ${s.text.replace(/± ([\d.]+)%/, '± $1 points')}`) });
      const [a, b] = [shares[n]!, shares[n + 1]!];
      expectFigure(r, 'S1.reflects by wheel', propagated(([x, p, q]) => (p! + ((q! - p!) * (x! - marks[n]!)) / 1.5) / 100, [setting, a, b]), 1);
    }), { numRuns: 60 });
  });
  test('drift: a tenth of a fringe, and what the exposure leaves', () => {
    fc.assert(fc.property(reading(0.1, 4, 'fringes/min', 10), fc.integer({ min: 1, max: 120 }), (rate, seconds) => {
      const r = metered([`measured drift at P1: ${rate.text}`], { facts: [`exposure: ${seconds} s`] });
      expectFigure(r, 'longest exposure', propagated(([d]) => 6 / d!, [rate]), 1);
      // (sin πm/πm)², m fringes during the exposure
      expectFigure(r, 'drift brightness', propagated(([d]) => { const m = (Math.PI * d! * seconds) / 60; return (Math.sin(m) / m) ** 2; }, [rate]), 1, 1e-6);
    }), { numRuns: 60 });
  });
});
