/** Light of transfers that goes other ways than through the image; shares by plain trigonometry. */
import { describe, expect, it } from 'vitest';
import { expectNear, read, serious, type Read } from './read.ts';

interface Page { readonly gap?: number; readonly lit?: number; readonly reference?: number; readonly stop?: string; readonly hologram?: string; readonly plate?: string; readonly coherence?: string; readonly slit?: string }
/** H1 in the origin faces P2 along +x, lit from below at `lit`; the reference comes to P2 from behind, at `reference`. */
const page = ({ gap = 40, lit = 45, reference = 60, stop = '', hologram = 'size: 60 x 50 mm', plate = 'size: 60 x 50 mm', coherence = '50 m', slit = '' }: Page): Read => {
  const t = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
  const [s, m] = [[-600, -600 * t(lit)], [gap + 600, 0]];
  m[1] = -600 * t(reference);
  return read(`setup "Winkles" {
  hologram: ${slit === '' ? 'reflection' : 'rainbow'}
  laser red at (${s[0]! - 400}, ${s[1]!.toFixed(4)}) mm {
    wavelength: 632.8 nm
    coherence length: ${coherence}
  }
  splitter S1 at (${s[0]!}, ${s[1]!.toFixed(4)}) mm
  mirror M1 at (${m[0]!}, ${m[1].toFixed(4)}) mm
${slit}  hologram H1 at (0, 0) mm facing P2 {
    ${hologram}
  }
  plate P2 at (${gap}, 0) mm facing H1 {
    ${plate}
  }
${stop}  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P2
  beam master from S1 reflected
${slit === '' ? '' : '    -> mask\n'}    -> H1
  beam image from H1 diffracted
    -> P2
}
`);
};
const codes = (r: Read): string[] => serious(r.snapshot.findings).map(f => f.split(' ')[1]!).filter(c => ['undiffracted-on-plate', 'plates-parallel', 'output-unused', 'leg-blocked'].includes(c));
const share = (r: Read): number => r.results.graph.value(r.results.graph.find('P2.image.undiffracted')!)!;

describe('what goes straight through the first hologram', () => {
  it('falls on what is left of the plate beside gap times tan θ', () => {
    // 40 mm at 45°: 60 − 40 of 60 mm. At 30°: 40 · 0.57735 = 23.094 mm, 36.906 of 60. 80 mm at 45° pass it.
    expectNear(share(page({})), 1 / 3, 1e-6);
    expectNear(share(page({ lit: 30 })), 36.906 / 60, 1e-5);
    expectNear(share(page({ gap: 80 })), 0, 1e-9);
  });
  it('is a finding there, with what it does', () => {
    // 40 tan 55° = 57.13 of 60 mm. At 45° the axis comes to the rim of the holder, which is told of the output.
    const r = page({ lit: 55, hologram: 'size: 60 x 50 mm\n    efficiency: 12.5%' });
    // (1 − 0.125)/0.125 = 7
    expect(r.snapshot.findings.map(f => f.message).join('; ')).toMatch(/falls on 5 % of P2, about 7 times as much light as goes into the image/);
    expect(codes(page({ gap: 80 }))).not.toContain('undiffracted-on-plate');
  });
  it('is that of what a slit leaves open', () => {
    // 4 mm, upright on the table: 40 mm aside, and the plate ends at 30 mm.
    expectNear(share(page({ slit: '  slit mask at (-2, -2) mm facing S1 {\n    width: 4 mm\n  }\n', plate: 'size: 60 x 50 mm\n    up: left' })), 0, 1e-9);
  });
  it('and none of it where a card takes it up, but a part of it past one that is too small', () => {
    // Square to the light: 60 cos 45° = 42.4 mm wide, and 50 high. 15 mm on, before the plate.
    const card = (size: string): Read => page({ stop: `  black card BC1 at (15, 15) mm heading 45° {\n    size: ${size}\n  }\n` });
    expect(codes(card('60 x 100 mm'))).not.toContain('undiffracted-on-plate');
    // 21.2132 of 42.4264 mm
    expect(card('21.2132 x 100 mm').snapshot.findings.find(f => f.code === 'undiffracted-on-plate')?.message).toContain('BC1 takes up 50 % of it');
  });
  it('is one finding where the plate stands on its axis', () => {
    expect(codes(page({ lit: 5, gap: 100 }))).toEqual(['output-unused']);
  });
});

describe('the reference that a parallel first hologram throws back', () => {
  const near: Page = { gap: 40, lit: 60, reference: 25 };
  it('is a finding while the laser keeps step', () => {
    const r = page(near);
    // 2 · 40 tan 25° = 37.305 of 60 mm aside; 2 · 40 cos 25° = 72.505 mm longer.
    expectNear(r.results.graph.value(r.results.graph.find('P2.reference.thrown back by H1')!)!, (60 - 37.305) / 60, 1e-5);
    expectNear(r.results.graph.value(r.results.graph.find('P2.reference.thrown back by H1.longer')!)! * 1000, 72.505, 1e-3);
    expect(codes(r)).toContain('plates-parallel');
    // Half the contrast at 20 mm: 2^−(72.5/20)² is nothing.
    expect(codes(page({ ...near, coherence: '20 mm' }))).not.toContain('plates-parallel');
  });
  it('and none where it passes beside the plate, or the two are turned against each other', () => {
    expect(codes(page({ ...near, gap: 70 }))).not.toContain('plates-parallel');
    const r = page({ ...near, hologram: 'size: 60 x 50 mm' }).snapshot;
    expect(r.findings.some(f => f.code === 'plates-parallel')).toBe(true);
    expect(read(r.text.replace('H1 at (0, 0) mm facing P2', 'H1 at (0, 0) mm heading 5°')).snapshot.findings.some(f => f.code === 'plates-parallel')).toBe(false);
  });
});
