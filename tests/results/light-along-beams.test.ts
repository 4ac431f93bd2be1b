/** Power along the beams, wheels, drift and real images. Expected values by hand. */
import { describe, expect, test } from 'vitest';
import { evaluateHeld, uncertaintyHeld } from '../../server/results/readings/offsets.ts';
import { variantsOf } from '../../server/results/variants.ts';
import { resultNamed } from '../../server/results/names.ts';
import { metered, METER, MICRO, NEEDLE } from './light-library.ts';
import { expectNear, read, serious, setup, type Read } from './read.ts';

const why = (r: Read, name: string): string | undefined => ask(r, name).missing?.why;
const ask = (r: Read, name: string): ReturnType<Read['cell']> => r.results.light.ask(name) ?? r.cell(name);
const mW = (r: Read, name: string): number => r.results.graph.value(ask(r, name))! * 1000;

const SPLITTER = ['reflects: 88% ± 2 points', 'loss: 4%'];
const LONG = (...readings: string[]): string => setup(
  'laser red {', '  power: 12 mW ± 10%', '  coherence length: 5 m', '}', 'shutter gate', 'splitter S1 {', ...SPLITTER, '}', 'mirror M1 {', '  loss: 11%', '}', 'attenuator A1 {', '  density: 0.3', '}', 'spreader R1 {', '  loss: 25%', '}', 'polarizer PO1 {', '  loss: 20%', '}', 'object whelk', 'plate P1',
  ...METER, 'beam raw from red', '-> gate: 100 mm', '-> S1: 250 mm', 'beam reference from S1 through', '-> A1: 300 mm', '-> R1: 200 mm', '-> P1: 1000 mm', 'beam object from S1 reflected', '-> M1: 500 mm', '-> whelk: 700 mm', '-> P1: 300 mm', ...readings,
);

describe('power along a beam', () => {
  const r = read(LONG());
  test('is what every thing on the way leaves', () => {
    expectNear(mW(r, 'raw.1.power'), 12, 1e-12);
    // An open shutter takes nothing.
    expectNear(mW(r, 'raw.2.power'), 12, 1e-12);
    // Through: 12 · 0.96 · 0.12 = 1.3824 mW; behind a density of 0.3 · 10^(−0.3) = 0.501187: 0.692841; behind a spreader that loses a quarter: 0.519631.
    expectNear(mW(r, 'reference.1.power'), 1.3824, 1e-9);
    expectNear(mW(r, 'reference.3.power'), 0.519631, 1e-6);
    // Reflected: 12 · 0.96 · 0.88 = 10.1376 mW; behind a mirror that loses 11 %: 9.022464.
    expectNear(mW(r, 'object.1.power'), 10.1376, 1e-9);
    expectNear(mW(r, 'object.2.power'), 9.022464, 1e-9);
  });
  test('of an arm is what reaches the plate, or the object', () => {
    expectNear(mW(r, 'P1.reference.power'), 0.519631, 1e-6);
    expectNear(mW(r, 'P1.object.power'), 9.022464, 1e-9);
    expect(why(r, 'object.3.power')).toContain('whelk scatters the light');
  });
  test('knows how sure the power and the split are', () => {
    // Through: u/P = √((10 %)² + (2/12)²) / √3.
    const cell = ask(r, 'reference.1.power');
    expectNear(r.results.graph.uncertainty(cell) / r.results.graph.value(cell)!, Math.hypot(0.1, 0.02 / 0.12) / Math.sqrt(3), 1e-9);
  });
  test('is worked out for those who ask only', () => {
    expect(read(LONG()).results.graph.cells.some(c => c.name.includes('power') && c.name !== 'red.power')).toBe(false);
    const asked = read(LONG('expect P1.object.power > 5 mW', 'expect reference.1.power < 1 mW'));
    expect(asked.results.goals.map(g => g.outcome)).toEqual(['met', 'not met']);
    expect(asked.results.graph.find('reference.3.power')).toBeUndefined();
  });
  test('may be used in a value', () => {
    // A fifth of the object beam.
    expectNear(mW(read(LONG('let fifth = object.2.power / 5', 'expect object.2.power > fifth')), 'object.2.power'), 9.022464, 1e-9);
  });
  test('a polarizer is not guessed, and a reading behind it helps', () => {
    const behind = (...lines: string[]): Read => read(LONG(...lines).replace('-> A1: 300 mm', '-> PO1: 300 mm'));
    expect(why(behind(), 'P1.reference.power')).toContain('read the power behind it');
    // 0.8 mW read at R1, behind the polarizer; a quarter less behind R1.
    expectNear(mW(behind('measured reference at R1: 0.8 mW by m'), 'P1.reference.power'), 0.6, 1e-12);
  });
  test('a splitter that says nothing of its share, a laser of its power', () => {
    expect(why(metered([], { laser: ['power: 5 mW'] }), 'P1.object.power')).toBe('how much S1 reflects is not written');
    expect(why(metered([], { splitter: ['reflects: 50%'] }), 'P1.object.power')).toBe('the power of red is not written');
    expect(why(metered([], { laser: ['power: 5 mW'], splitter: ['reflects: ?'] }), 'P1.object.power')).toBe('reflects of S1 is written ?');
  });
  test('where a loss is not written, what is assumed says so', () => {
    const r2 = metered([], { laser: ['power: 5 mW'], splitter: ['reflects: 50%'] });
    const cell = ask(r2, 'P1.object.power');
    expect([...r2.results.graph.gradient(cell).keys()].filter(c => c.origin === 'assumed').map(c => c.name)).toEqual(['S1.loss']);
  });
});

describe('a power that was read', () => {
  const r = read(LONG('measured raw at S1: 11.4 mW ± 3% by m'));
  test('corrects the plan by a factor, down the whole way', () => {
    expectNear(mW(r, 'raw.2.power'), 11.4, 1e-12);
    // 11.4/12 of 9.022464.
    expectNear(mW(r, 'P1.object.power'), (9.022464 * 11.4) / 12, 1e-9);
  });
  test('the plan falls out of the uncertainty', () => {
    expectNear(r.u('raw.2.power') * 1000, (0.03 * 11.4) / Math.sqrt(3), 1e-12);
    expectNear(r.results.graph.gradient(r.cell('raw.2.power')).get(r.results.graph.find('red.power')!)!, 0, 1e-12);
  });
  test('the factor is held while something else is tried', () => {
    const { graph } = r.results;
    const cell = ask(r, 'P1.object.power');
    const factor = graph.find('raw.2.power factor')!;
    // Twice the power of the laser, the same factor: twice the power everywhere.
    expectNear(graph.evaluate(cell, new Map([[graph.find('red.power')!, 0.024], [factor, graph.value(factor)!]])), 2 * graph.value(cell)!, 1e-12);
  });
  test('stands alone where there is no plan', () => { expectNear(mW(metered(['measured raw at S1: 4 mW by m']), 'raw.1.power'), 4, 1e-12); });
});

describe('a reading far from the plan', () => {
  const found = (r: Read): string[] => r.snapshot.findings.filter(f => f.code === 'reading-disagrees').map(f => f.message);
  const raw = (read: string, plan: string): string[] => found(metered([`measured raw at S1: ${read} by m`], { laser: [`power: ${plan}`] }));
  test('of a power, from 30 % and three uncertainties on', () => {
    expect(raw('6 mW', '12 mW ± 10%')).toEqual([expect.stringContaining('was read as 6 mW, 0.5 times the 12 mW that are planned.')]);
    expect([raw('9 mW', '12 mW').length, raw('16 mW', '12 mW').length, raw('8 mW', '12 mW').length]).toEqual([0, 1, 1]);
    // 3 · 12 mW · 30 % / √3 = 6.2 mW leave 6 mW open.
    expect(raw('6 mW', '12 mW ± 30%')).toEqual([]);
  });
  test('of a wheel, from 5 points on', () => {
    const wheel = (read: number): string[] => found(metered([`measured S1 wheel: ${read}`], { splitter: ['wheel: 4.5', 'mark 3: 70% ± 2 points', 'mark 4: 84% ± 2 points', 'mark 5: 92% ± 2 points'] }));
    // 88 % at 4.5; 90 % at 4.75; at 3.5 they are 77 %.
    expect([wheel(4.75), wheel(3.5)]).toEqual([[], [expect.stringContaining('S1 reflects 77 %, planned are 88 %.')]]);
  });
});

describe('light that was read corrects the plan', () => {
  // 60:15 with 80 % reflected. With 90 % the reference is halved, the object light 9/8 of what it was: 4 · 0.5 / 1.125 = 1.7778.
  const lines = ['measured reference at P1: 60 ± 3 by needle', 'measured object at P1: 15 by needle', 'measured raw at S1: 11 mW by m'];
  const AROUND = { laser: ['power: 10 mW ± 10%'], splitter: ['reflects: 80% ± 5 points', 'loss: 3%'], things: [...METER, ...NEEDLE] };
  test('in a variant with another split', () => {
    const r = metered([...lines, 'variant "more on the whelk" {', '  S1.reflects: 90%', '}'], AROUND);
    const { results } = variantsOf(r.results)[0]!;
    const value = (name: string): number => results.graph.value(resultNamed(results.graph, results.aliases, name) ?? results.light.ask(name)!)!;
    expectNear(value('beam ratio'), (4 * 0.5) / 1.125, 1e-9);
    // The power that was read keeps its factor of 1.1: 0.9 · 0.97 · 11 mW.
    expectNear(value('P1.object.power') * 1000, 0.9 * 0.97 * 11, 1e-9);
    // By how much the split was changed rests on how well it was known when the light was read: K' = K · (1 − ρ')/ρ' · ρ/(1 − ρ), so that u(ρ)/(ρ(1 − ρ)) adds to the 5 % of the reading.
    const cell = resultNamed(results.graph, results.aliases, 'beam ratio')!;
    expectNear(results.graph.uncertainty(cell) / results.graph.value(cell)!, Math.hypot(0.05, 0.05 / (0.8 * 0.2)) / Math.sqrt(3), 1e-9);
  });
  test('in a what-if', () => {
    const r = metered(lines, AROUND);
    const share = r.results.graph.find('S1.reflects')!;
    expectNear(evaluateHeld(r.results, r.cell('beam ratio'), new Map([[share, 0.9]])), (4 * 0.5) / 1.125, 1e-9);
    expectNear(evaluateHeld(r.results, r.cell('beam ratio'), new Map()), 4, 1e-12);
    // K' as above, where ρ' is as unsure as it is written: the 5 % of the reading, 5 points in ρ(1 − ρ) = 0.16 when it was read, and in 0.09 now.
    expectNear(uncertaintyHeld(r.results, r.cell('beam ratio'), new Map([[share, 0.9]])) / ((4 * 0.5) / 1.125), Math.hypot(0.05, 0.05 / 0.16, 0.05 / 0.09) / Math.sqrt(3), 1e-9);
    expectNear(uncertaintyHeld(r.results, r.cell('beam ratio'), new Map()), r.u('beam ratio'), 1e-12);
  });
  test('and the plan falls out of its uncertainty', () => {
    const r = metered(lines, AROUND);
    expectNear(r.u('beam ratio') / 4, 0.05 / Math.sqrt(3), 1e-9);
    expectNear(r.results.graph.gradient(r.cell('beam ratio')).get(r.results.graph.find('S1.reflects')!) ?? 0, 0, 1e-9);
  });
  describe('a real image', () => {
    const transfer = (...lines: string[]): ReturnType<typeof read> => read(setup(
      'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'hologram H1 {', '  image distance: 250 mm ± 2 mm', '}', 'plate H2', 'screen card', 'beam raw from red', '-> S1: 300 mm', 'beam light from S1 reflected', '-> H1: 1000 mm', 'beam image from H1 diffracted', '-> H2: 240 mm', 'beam reference from S1 through', '-> H2: 1240 mm', ...lines,
    ));
    const said = (r: ReturnType<typeof read>, code: string): string[] => r.snapshot.findings.filter(f => f.code === code).map(f => f.message);
    test('that is not where it was planned is said, with where it then lies', () => {
      // 262 − 250 = 12 mm beyond √(2² + 2²)/√3 = 1.63 mm, three of it 4.9 mm; the plate stands at 240 mm: 22 mm behind it.
      expect(said(transfer('measured real image at card: 262 mm ± 2 mm'), 'reading-disagrees')).toEqual(['The image of H1 was seen sharp 12 mm farther than planned (250 mm), which puts its middle 22 mm behind H2. Look whether the same beam lights the hologram as when it was shot, and read once more; the reading counts meanwhile.']);
      expect(said(transfer('measured real image at card: 254 mm ± 2 mm'), 'reading-disagrees')).toEqual([]);
    });
    test('is expected by its size, before the plate or behind it', () => {
      expect(transfer('measured real image at card: 262 mm', 'expect image offset < 5 mm').results.goals[0]!.outcome).toBe('not met');
      expect(transfer('measured real image at card: 243 mm', 'expect image offset < 5 mm').results.goals[0]!.outcome).toBe('met');
    });
    test('of no hologram, or of one of several, is not taken silently', () => {
      expect(said(read(setup('screen card', 'measured real image at card: 262 mm')), 'reading-unclear')).toEqual(['“real image at card” cannot be understood as what was measured: the setup has no hologram whose image it could be. Correct it, or the reading corrects nothing.']);
      expect(said(transfer('hologram H3', 'measured real image at card: 262 mm'), 'reading-unclear')).toEqual(['“real image at card” cannot be understood as what was measured: it does not say of which hologram it is the image, as in “real image at H1”. Correct it, or the reading corrects nothing.']);
      expect(said(transfer('hologram H3', 'measured real image at H1: 254 mm'), 'reading-unclear')).toEqual([]);
    });
  });
  test('a variant that moves the master moves its image before the plate', () => {
    const r = read(setup(
      'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'hologram H1 {', '  image distance: 290 mm', '}', 'plate H2', 'screen card', 'beam raw from red', '-> S1: 300 mm', 'beam light from S1 reflected', '-> H1: 1000 mm', 'beam image from H1 diffracted', '-> H2: 300 mm', 'beam reference from S1 through', '-> H2: 1300 mm',
      'measured real image at card: 288 mm', 'variant "longer" {', '  H1.image distance: 300 mm', '}',
    ));
    const { results } = variantsOf(r.results)[0]!;
    // 300 mm less the 2 mm by which the reading was short.
    expectNear(results.graph.value(results.graph.find('H1.image')!)! * 1000, 298, 1e-9);
  });
});

describe('a reading that no longer holds', () => {
  const lines = ['measured reference at P1: 2 µW/cm² by m on 2026-02-11', 'measured reference at P1: 3 µW/cm² by m on 2026-02-10', 'measured S1 wheel: 4 on 2026-02-11', 'measured raw at S1: 9 mW by m on 2026-02-11'];
  const around = { laser: ['power: 10 mW'], splitter: ['loss: 0%', 'mark 4: 84%', 'mark 5: 92%'] };
  test('counts as long as nothing was moved since', () => {
    const r = metered([...lines, 'moved S1 on 2026-02-10'], around);
    expectNear(r.value('P1.reference.light') / MICRO, 2, 1e-12);
    expectNear(mW(r, 'P1.object.power'), 0.84 * 9, 1e-9);
  });
  test('does not, once the splitter was', () => {
    const r = metered([...lines, 'moved S1 on 2026-02-14', 'expect beam ratio < 5'], around);
    expect(r.results.light.wheels).toEqual([]);
    expect(why(r, 'P1.reference.light')).toContain('has not been metered');
    expectNear(mW(r, 'raw.1.power'), 10, 1e-12);
  });
});

describe('the wheel of a splitter', () => {
  const MARKS = ['loss: 0%', 'mark 5: 92% ± 3 points', 'mark 4: 84% ± 2 points', 'mark 3: 70%'];
  const wheel = (setting: string, ...more: string[]): Read => metered(more, { laser: ['power: 10 mW'], splitter: [...MARKS, setting] });
  test('between two marks', () => {
    // Halfway: (0.84 + 0.92)/2 = 0.88; of 10 mW are 8.8 mW.
    const r = wheel('wheel: 4.5');
    expectNear(mW(r, 'P1.object.power'), 8.8, 1e-9);
    // u = √((2/2)² + (3/2)²) points / √3.
    expectNear(r.u('S1.reflects by wheel'), Math.hypot(0.01, 0.015) / Math.sqrt(3), 1e-12);
  });
  test('how sure the mark is counts too', () => {
    // 8 points a mark, ± 0.25 marks: 2 points, besides those of the two marks.
    expectNear(wheel('wheel: 4.5 ± 0.25').u('S1.reflects by wheel'), Math.hypot(0.01, 0.015, 0.02) / Math.sqrt(3), 1e-12);
  });
  test('at a mark it is that mark', () => { expectNear(wheel('wheel: 4').value('S1.reflects by wheel'), 0.84, 1e-12); });
  test('read, it counts more than what is written', () => {
    expectNear(wheel('wheel: 4.5', 'measured S1 wheel: 3.5').value('S1.reflects by wheel'), 0.77, 1e-12);
    expectNear(mW(wheel('reflects: 77%', 'measured S1 wheel: 3.5'), 'P1.object.power'), 7.7, 1e-9);
    // Only written, the written share counts.
    const both = metered([], { laser: ['power: 10 mW'], splitter: [...MARKS, 'wheel: 4.5', 'reflects: 89%'] });
    expectNear(mW(both, 'P1.object.power'), 8.9, 1e-9);
    expect(serious(both.snapshot.findings)).toEqual([]);
  });
  test('beyond the outermost mark nothing is guessed', () => {
    for (const mark of ['2.9', '5.1']) expect(why(wheel(`wheel: ${mark}`), 'P1.object.power')).toBe(`S1 stands at mark ${mark}, and its wheel was metered from 3 to 5 only`);
  });
  test('without marks, or without a setting, it says nothing', () => {
    expect(why(metered([], { laser: ['power: 10 mW'], splitter: ['wheel: 4'] }), 'P1.object.power')).toBe('how much S1 reflects is not written');
    expect(why(metered([], { laser: ['power: 10 mW'], splitter: MARKS }), 'P1.object.power')).toBe('how much S1 reflects is not written');
  });
  test('that contradicts what is written is found', () => {
    expect(serious(metered([], { splitter: [...MARKS, 'wheel: 4.5', 'reflects: 70%'] }).snapshot.findings).map(f => f.split(' ')[1])).toEqual(['wheel-disagrees']);
  });
});

describe('drift', () => {
  test('the exposure of the setup may be a formula', () => {
    // 15 s + 15 s at half a fringe a minute: a quarter of a fringe, sinc²(1/4) = (sin 45° / (π/4))² = 0.810569.
    const r = metered(['measured drift at P1: 0.5 fringes/min'], { facts: ['let strip = 15 s', 'exposure: 2 * strip'] });
    expectNear(r.value('P1.drift brightness'), 0.810569, 1e-6);
  });
  test('half a fringe a minute bears 12 s, and leaves 81 % of a picture of 30 s', () => {
    const r = metered(['measured drift at P1: 0.5 fringes/min'], { facts: ['exposure: 30 s'] });
    expectNear(r.value('P1.longest exposure'), 12, 1e-9);
    expectNear(r.value('longest exposure'), 12, 1e-9);
    // A quarter of a fringe: 0.900316² = 0.810569 (computed outside by quadrature).
    expectNear(r.value('P1.drift brightness'), 0.810569, 1e-6);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test.each([
    // 0.5 fringes: 0.405285, a note; 0.6 fringes: (sin 108° / 1.884956)² = (0.951057 / 1.884956)² = 0.254572, a warning.
    ['60 s', 'note', 0.405285], ['72 s', 'warning', 0.254572],
  ])('an exposure of %s is a %s', (exposure, severity, brightness) => {
    const r = metered(['measured drift: -0.5 fringes/min'], { facts: [`exposure: ${exposure}`] });
    expectNear(r.value('drift brightness'), brightness, 1e-6);
    expect(r.snapshot.findings.filter(f => f.code === 'fringes-drift').map(f => f.severity)).toEqual([severity]);
  });
  test('the exposure is that of the light where none is written', () => {
    // 20 s at 0.75 fringes a minute: a quarter of a fringe.
    const r = metered(['measured reference at P1: 2 µW/cm² by m', 'measured object at P1: 0.5 µW/cm² by m', 'measured drift at P1: 0.75 fringes/min'], { plate: ['sensitivity: 50 µJ/cm²'] });
    expectNear(r.value('P1.drift brightness'), 0.810569, 1e-6);
  });
  test('fringes that stand still bear any exposure', () => {
    const r = metered(['measured drift at P1: 0 fringes/min'], { facts: ['exposure: 1 h'] });
    expect(why(r, 'P1.longest exposure')).toBe('no drift was seen at P1');
    expectNear(r.value('P1.drift brightness'), 1, 0);
  });
});

describe('a real image', () => {
  const transfer = (hologram: readonly string[], ...lines: string[]): Read => read(setup(
    'hologram: reflection', 'laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'hologram H1 {', ...hologram, '}', 'plate H2', 'screen card',
    'beam raw from red', '-> S1: 300 mm', 'beam light from S1 reflected', '-> H1: 1000 mm', 'beam image from H1 diffracted', '-> H2: 300 mm ± 2 mm', 'beam reference from S1 through', '-> H2: 1300 mm', ...lines,
  ));
  test('sharp before the plate by the difference of two distances', () => {
    const r = transfer(['image distance: 290 mm ± 10 mm'], 'measured real image at card: 288 mm ± 3 mm');
    expectNear(r.mm('H1.image'), 288, 1e-9);
    expectNear(r.mm('H2.image offset'), 12, 1e-9);
    // The plan falls out: √(2² + 3²) mm / √3.
    expectNear(r.u('image offset') * 1000, Math.hypot(2, 3) / Math.sqrt(3), 1e-9);
  });
  test('an image behind the plate lies before it by less than nothing', () => { expectNear(transfer(['image: real'], 'measured real image: 312 mm').mm('image offset'), -12, 1e-9); });
  test('the written distance counts where none was read', () => { expectNear(transfer(['image distance: 290 mm']).mm('H2.image offset'), 10, 1e-9); });
  test('a virtual image meets no plate', () => { expect(transfer(['image distance: 290 mm', 'image: virtual']).results.aliases.has('image offset')).toBe(false); });
  test('nothing is known without a distance', () => { expect(transfer(['image: real']).results.light.images).toEqual([]); });
});

describe('findings of light', () => {
  const codes = (r: Read): string[] => serious(r.snapshot.findings).map(f => f.split(' ')[1]!);
  const ratio = (reference: number, object: number, around: Parameters<typeof metered>[1] = {}): string[] => codes(metered([`measured reference at P1: ${reference} by needle`, `measured object at P1: ${object} by needle`], { things: NEEDLE, ...around }));
  test('a master is usual from 2:1 to 10:1, a reflection hologram from 1:1', () => {
    expect([[10, 1], [2, 1], [10.1, 1], [1.9, 1]].map(([a, b]) => ratio(a!, b!).length)).toEqual([0, 0, 1, 1]);
    expect(ratio(1.2, 1, { facts: ['hologram: reflection'] })).toEqual([]);
    expect(ratio(0.9, 1, { facts: ['hologram: reflection'] })).toEqual(['ratio-unusual']);
  });
  test('a transfer is usual to 3:1', () => {
    const transfer = (object: number): string[] => codes(read(setup('laser red {', '  coherence length: 5 m', '}', 'splitter S1', 'hologram H1', 'plate P2', ...NEEDLE, 'beam raw from red', '-> S1: 300 mm', 'beam light from S1 reflected', '-> H1: 1000 mm', 'beam image from H1 diffracted', '-> P2: 300 mm', 'beam reference from S1 through', '-> P2: 1300 mm', 'measured reference at P2: 60 by needle', `measured image at P2: ${object} by needle`)));
    expect([transfer(20), transfer(19)]).toEqual([[], ['ratio-unusual']]);
  });
  test('of a single beam only the tone of the object is spoken of', () => {
    const r = read(setup('beam ratio: 12:1', 'hologram: reflection', 'laser red {', '  coherence length: 5 m', '}', 'object oyster', 'plate P1', 'beam all from red', '-> P1 through: 900 mm', '-> oyster: 12 mm', '-> P1: 12 mm'));
    expect(r.snapshot.findings.find(f => f.code === 'ratio-unusual')!.message).toMatch(/only the tone of the object/);
  });
  test('no ratio is called unusual whose uncertainty reaches into the range', () => { expect(codes(metered(['measured reference at P1: 105 ± 10 by needle', 'measured object at P1: 10 by needle']))).toEqual([]); });
  test('dark corners below 35 %', () => {
    const corner = (v: number): string[] => codes(metered(['measured reference at P1: 100 by needle', `measured reference at P1 upper left: ${v} by needle`]));
    expect([corner(36), corner(34)]).toEqual([[], ['corners-dark']]);
  });
  test('1.6 facing and 1.31 flat mean 35°', () => {
    const angle = (planned: string): string[] => codes(metered(['measured reference at P1 facing beam: 1.6 µW/cm² ± 2% by m', 'measured reference at P1: 1.31 µW/cm² ± 2% by m'], { plate: [`reference angle: ${planned}`] }));
    // cos 35° = 0.8192, u of the quotient 0.0134: 3 u reach from 0.779 to 0.859, 30.8° to 38.8°.
    expect([angle('35°'), angle('38°'), angle('32°'), angle('40°'), angle('29°'), angle('40° ± 5°')].map(c => c.filter(x => x.includes('angle-disagrees')).length)).toEqual([0, 0, 0, 1, 1, 0]);
    const r = metered(['measured reference at P1 facing beam: 1.6 µW/cm² ± 2% by m', 'measured reference at P1: 1.31 µW/cm² ± 2% by m'], { plate: ['reference angle: 45°'] });
    expect(r.snapshot.findings.find(f => f.code === 'angle-disagrees')!.message).toContain('Readings of 1.6 facing the beam and 1.31 in the plane mean that “reference” arrives at P1 at 35°; the plan says 45°.');
  });
});
