/**
 * Readings held against the plan and each other, and the likeliest cause. Setups in which exactly one thing was moved, one leg misread, the string too long; the
 * expected amounts are least squares by hand. A reading differs from three standard uncertainties on, at least 1 mm a leg (common practice).
 */
import { describe, expect, it } from 'vitest';
import { comparisons } from '../../server/results/discrepancies/disagree.ts';
import { diagnosis, type Diagnosis } from '../../server/results/discrepancies/causes.ts';
import { read, type Read } from './read.ts';
import { pathsText, withReadings, type Paths } from './readings.ts';

const codes = (r: Read): string[] => r.snapshot.findings.filter(f => ['reading-disagrees', 'readings-contradict', 'likeliest-cause', 'reading-stale'].includes(f.code)).map(f => `${f.code} ${f.subject}`);
const message = (r: Read, code: string): string => r.snapshot.findings.find(f => f.code === code)!.message;
const cause = (r: Read): Diagnosis => diagnosis(r.results)!;
const goal = { more: ['expect mismatch < 5 mm'] };

describe('a reading and the plan', () => {
  it('agree within three standard uncertainties, at least 1 mm a leg', () => {
    expect(codes(withReadings(['measured S1 -> M1: 753 mm'], { more: ['expect mismatch < 2 mm'] }))).toEqual([]);
    expect(codes(withReadings(['measured S1 -> M1: 753.1 mm'], { more: ['expect mismatch < 2 mm'] }))).toEqual(['reading-disagrees S1 -> M1']);
    // ± 3 mm: u = √3 = 1.732 mm, three of it 5.196 mm
    expect(codes(withReadings(['measured S1 -> M1: 755.1 mm ± 3 mm'], goal))).toEqual([]);
    expect(codes(withReadings(['measured S1 -> M1: 755.3 mm ± 3 mm'], goal))).toEqual(['reading-disagrees S1 -> M1']);
    // four legs of one arm each: √5 mm for the difference of five legs, three of it 6.71 mm
    expect(codes(withReadings(['measured object - reference: -6.6 mm'], goal))).toEqual([]);
    expect(codes(withReadings(['measured object - reference: -6.8 mm'], goal))).toEqual(['reading-disagrees object - reference']);
  });
  it('take the plan’s own ± into account', () => {
    // u = √(5² + 2²)/√3 = 3.11 mm, three of it 9.33 mm
    const plan: Paths = { ...goal, reference: ['750 mm ± 5 mm', '720 mm'] };
    expect(codes(withReadings(['measured S1 -> M1: 759.2 mm ± 2 mm'], plan))).toEqual([]);
    expect(codes(withReadings(['measured S1 -> M1: 759.5 mm ± 2 mm'], plan))).toEqual(['reading-disagrees S1 -> M1']);
  });
  it('differ in silence as long as no result changes', () => {
    // 5 m of coherence: 10 mm are nothing to it
    expect(codes(withReadings(['measured S1 -> M1: 760 mm']))).toEqual([]);
    // 60 mm: contrast one half at 60 mm of mismatch means a quarter of the brightness
    const r = withReadings(['measured S1 -> M1: 810 mm'], { laser: 'coherence length: 60 mm' });
    expect(codes(r)).toEqual(['reading-disagrees S1 -> M1']);
    expect(message(r, 'reading-disagrees')).toContain('instead of 100 %');
    // the common beam changes nothing
    expect(codes(withReadings(['measured red -> S1: 450 mm'], { laser: 'coherence length: 60 mm' }))).toEqual([]);
  });
});

describe('readings that contradict each other', () => {
  it('of one thing on one day', () => {
    const r = withReadings(['measured reference: 1470 mm on 2026-02-18', 'measured reference: 1490 mm on 2026-02-18'], goal);
    expect(codes(r).filter(c => c.startsWith('readings-contradict'))).toEqual(['readings-contradict reference']);
  });
  it('of one leg in any case: also where the mismatch was read itself, and where no result changes', () => {
    // 40 mm apart, u = √2 · 1/√3 = 0.8 mm, counted as 1 mm; with 5 m of coherence nobody sees 40 mm
    const leg = ['measured S1 -> M1: 750 mm ± 1 mm', 'measured S1 -> M1: 790 mm ± 1 mm'];
    for (const more of [[], ['measured object - reference: 3 mm ± 1 mm'], ['measured reference: 1470 mm ± 1 mm', 'measured object: 1471 mm ± 1 mm']]) {
      const r = withReadings([...leg, ...more]);
      expect(codes(r), more.join(', ')).toEqual(['readings-contradict S1 -> M1']);
      expect(message(r, 'readings-contradict')).toMatch(/^“S1 -> M1” is 40 mm more than another reading of it, in line \d+, says\. No result changes by it/);
    }
    // Nothing is planned of it, and the mismatch was read.
    expect(codes(withReadings([...leg, 'measured object - reference: 3 mm ± 1 mm'], { reference: ['', ''], object: ['', '', ''] }))).toEqual(['readings-contradict S1 -> M1']);
    expect(codes(withReadings(['measured raw: 350 mm', 'measured raw: 353.1 mm']))).toEqual(['readings-contradict raw']);
    expect(codes(withReadings(['measured raw: 350 mm', 'measured raw: 353 mm']))).toEqual([]);
  });
  it('are no contradiction where the newer counts', () => {
    expect(codes(withReadings(['measured reference: 1490 mm on 2026-02-11', 'measured reference: 1470 mm on 2026-02-18'], goal))).toEqual([]);
  });
  it('as a whole and piece by piece, as a difference and as two paths', () => {
    const whole = withReadings(['measured S1 -> M1: 750 mm', 'measured M1 -> P1: 720 mm', 'measured reference: 1480 mm'], goal);
    expect(codes(whole)).toContain('readings-contradict reference');
    const two = withReadings(['measured reference: 1470 mm', 'measured object: 1470 mm', 'measured object - reference: 20 mm'], goal);
    expect(codes(two)).toContain('readings-contradict object - reference');
  });
  it('by one string do not contradict each other for what it gives', () => {
    const thread = ['string thread {', '  stretch: 0% ± 2 points', '}'];
    // 1470 mm by a thread that may give 2 %: u = 17 mm for each path, hardly anything for their difference
    const r = withReadings(['measured reference: 1470 mm by thread', 'measured object: 1470 mm by thread', 'measured object - reference: 8 mm by thread'], { more: [...thread, 'expect mismatch < 5 mm'] });
    expect(codes(r)).toContain('readings-contradict object - reference');
    // Of one path twice: 20 mm apart, though either is unsure by 17 mm, and by the same.
    expect(codes(withReadings(['measured reference: 1470 mm by thread', 'measured reference: 1490 mm by thread'], { more: [...thread, 'expect mismatch < 5 mm'] }))).toContain('readings-contradict reference');
  });
});

/** Reference 1250 + 750, object 500 + 1000 + 500, by places: 450² + 600² = 750², 300² + 400² = 500², 800² + 600² = 1000². */
const PLACED = (...readings: string[]): string => `setup "Whelk shell" {
  laser red at (-300, 0) mm {
    coherence length: 5 m
  }
  splitter S1 at (0, 0) mm
  mirror M1 at (1250, 0) mm
  mirror M2 at (-300, 400) mm
  object whelk at (500, 1000) mm
  plate P1 at (800, 600) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> whelk
    -> P1
  expect mismatch < 10 mm
${readings.map(l => `  ${l}\n`).join('')}}
`;

describe('the likeliest cause', () => {
  it('is the mirror that stands elsewhere', () => {
    // M1 12 mm further in x: the legs become 1262 and √(462² + 600²) = 757.3
    const r = read(PLACED('measured S1 -> M1: 1262 mm', 'measured M1 -> P1: 757 mm', 'measured reference: 2019 mm', 'measured object: 2000 mm', 'measured object - reference: -19 mm'));
    const { causes, differing } = cause(r);
    expect(differing).toHaveLength(4);
    expect(causes.map(c => c.name)).toEqual(['M1.x']);
    // slopes 1, 450/750 = 0.6, 1.6, 0, −1.6; u² = 1, 1, 2, 3, 5 mm²:
    // (12 + 0.6 · 7 + 1.6 · 19/2 + 1.6 · 19/5) / (1 + 0.36 + 2.56/2 + 2.56/5) = 37.48/3.152 = 11.891 mm
    expect(causes[0]!.amount * 1000).toBeCloseTo(11.891, 3);
    expect(causes[0]!.explains).toBe(4);
    expect(message(r, 'likeliest-cause')).toContain('M1 stands 12 mm further in x than planned: that explains all 4 readings');
  });

  it('is the leg that is not as planned', () => {
    const r = withReadings(['measured S1 -> M1: 762 mm', 'measured reference: 1482 mm', 'measured object - reference: -12 mm', 'measured object: 1470 mm'], goal);
    const { causes } = cause(r);
    expect(causes.map(c => [c.kind, c.name])).toEqual([['input', 'reference.1.length.plan']]);
    expect(causes[0]!.amount * 1000).toBeCloseTo(12, 9);
    expect(message(r, 'likeliest-cause')).toContain('The leg S1 → M1 is 12 mm longer than planned: that explains all 3 readings');
  });

  it('names the others where readings cannot tell them apart', () => {
    // the whole path only: it may be either leg
    const r = withReadings(['measured reference: 1482 mm', 'measured object - reference: -12 mm'], goal);
    expect(cause(r).causes.map(c => c.name)).toEqual(['reference.1.length', 'reference.2.length']);
    expect(message(r, 'likeliest-cause')).toContain('As likely: the leg M1 → P1 is 12 mm longer than planned.');
  });

  it('is the reading that was misread', () => {
    const r = withReadings(['measured S1 -> M1: 850 mm', 'measured M1 -> P1: 720 mm', 'measured reference: 1470 mm', 'measured object - reference: 0 mm'], goal);
    const { causes } = cause(r);
    expect(causes.map(c => [c.kind, c.name, Math.round(c.amount * 1000)])).toEqual([['misread', 'S1 -> M1', 100]]);
    expect(message(r, 'likeliest-cause')).toContain('The reading of “S1 -> M1” is 100 mm too large');
  });

  it('is the string that is 1 % too long', () => {
    // it reads 1/1.01 of each length: 750 → 742.6, 720 → 712.9, 1470 → 1455.4
    const readings = ['measured S1 -> M1: 742.6 mm by thread', 'measured M1 -> P1: 712.9 mm by thread', 'measured object: 1455.4 mm by thread', 'measured object - reference: 0 mm by thread'];
    const r = withReadings(readings, { more: ['string thread {', '  stretch: 0%', '}', 'expect mismatch < 5 mm'] });
    const { causes, differing } = cause(r);
    expect(differing).toHaveLength(3);
    // Σ r d/u² / Σ r²/u² with d = 7.4, 7.1, 14.6 and u² = 1, 1, 3: (5495.24 + 5061.59 + 7082.95)/(551454.76 + 508226.41 + 706063.05) = 17639.78/1765744.22
    expect(causes.map(c => [c.kind, c.name])).toEqual([['string', 'thread']]);
    expect(causes[0]!.amount).toBeCloseTo(17639.78 / 1765744.22, 6);
    expect(message(r, 'likeliest-cause')).toContain('“thread” is 1.0 % too long: that explains all 3 readings');
  });

  it('weighs its own spread: a leg that is known to 1 mm is blamed after one of which nothing is said', () => {
    // both legs explain both readings alike; 20 mm would be 35 standard uncertainties of the first
    const r = withReadings(['measured reference: 1490 mm', 'measured object - reference: -20 mm'], { ...goal, reference: ['750 mm ± 1 mm', '720 mm'] });
    expect(cause(r).causes.map(c => c.name)).toEqual(['reference.2.length']);
  });

  it('is not named where there is none: two legs stand elsewhere', () => {
    const r = withReadings(['measured S1 -> M1: 780 mm', 'measured S1 -> M2: 440 mm'], goal);
    expect(cause(r).causes).toEqual([]);
    expect(message(r, 'likeliest-cause')).toContain('no single cause explains most of them');
  });

  it('is not asked for a single difference, nor where no result changes', () => {
    expect(diagnosis(withReadings(['measured S1 -> M1: 780 mm'], goal).results)).toBeUndefined();
    expect(diagnosis(withReadings(['measured S1 -> M1: 780 mm', 'measured S1 -> M2: 430 mm']).results)).toBeUndefined();
  });
  it('needs at least as much difference as is counted', () => expect(comparisons(withReadings(['measured S1 -> M1: 750 mm']).results).residuals.map(x => x.differs)).toEqual([false]));
});

describe('a reading older than a move', () => {
  const stale = (reading: string, ...moved: string[]): string[] => codes(withReadings([reading], { more: moved }));
  const moved = (thing: string, on = '2026-02-14'): string => `moved ${thing} on ${on}: "the cat"`;

  it('corrects nothing any more', () => {
    const r = withReadings(['measured S1 -> M1: 760 mm on 2026-02-11'], { more: [moved('M1')] });
    expect(codes(r)).toEqual(['reading-stale S1 -> M1']);
    expect(r.mm('reference.1.length')).toBeCloseTo(750, 9);
    expect(message(r, 'reading-stale')).toContain('M1 was moved on 2026-02-14 (“the cat”)');
  });
  it('an older reading than that counts if nothing else does', () => {
    const r = withReadings(['measured S1 -> M1: 760 mm on 2026-02-11', 'measured S1 -> M1: 755 mm on 2026-02-15', 'measured S1 -> M1: 770 mm'], { more: [moved('M1')] });
    expect(r.mm('reference.1.length')).toBeCloseTo(755, 9);
  });
  it('concerns all that the string went by', () => {
    for (const thing of ['S1', 'M1', 'P1']) expect(stale('measured reference: 1475 mm on 2026-02-11', moved(thing)), thing).toEqual(['reading-stale reference']);
    for (const thing of ['red', 'M2', 'whelk']) expect(stale('measured reference: 1475 mm on 2026-02-11', moved(thing)), thing).toEqual([]);
    for (const thing of ['S1', 'M1', 'M2', 'whelk', 'P1']) expect(stale('measured object - reference: 1 mm on 2026-02-11', moved(thing)), thing).toEqual(['reading-stale object - reference']);
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-11', moved('M2, P1'))).toEqual([]);
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-11', moved('M2, M1'))).toEqual(['reading-stale S1 -> M1']);
  });
  it('and light and wheels that it passed', () => {
    expect(stale('measured reference at P1: 1.6 µW/cm² on 2026-02-11', moved('M1'))).toEqual(['reading-stale reference at P1']);
    expect(stale('measured reference at P1: 1.6 µW/cm² on 2026-02-11', moved('M2'))).toEqual([]);
    expect(stale('measured S1 wheel: 4.5 on 2026-02-11', moved('S1'))).toEqual(['reading-stale S1 wheel']);
    expect(stale('measured drift at P1: 0.5 fringes/min on 2026-02-11', moved('P1'))).toEqual([]);
  });
  it('of the same day only if the times say so; without a date never', () => {
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-14', moved('M1'))).toEqual([]);
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-14T09:00', moved('M1'))).toEqual([]);
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-14T09:00', moved('M1', '2026-02-14T10:00'))).toEqual(['reading-stale S1 -> M1']);
    expect(stale('measured S1 -> M1: 751 mm on 2026-02-14T11:00', moved('M1', '2026-02-14T10:00'))).toEqual([]);
    expect(stale('measured S1 -> M1: 751 mm', moved('M1'))).toEqual([]);
  });
  it('says the last move', () => {
    const r = withReadings(['measured S1 -> M1: 760 mm on 2026-02-11'], { more: [moved('M1', '2026-02-20'), moved('S1')] });
    expect(message(r, 'reading-stale')).toContain('2026-02-20');
  });
});

it('the text of the tests itself is sound', () => expect(pathsText([])).toContain('beam reference'));
