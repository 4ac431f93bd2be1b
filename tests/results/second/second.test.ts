/**
 * Random whole setups as text, evaluated twice: by the program, and by the closed forms of `closed-forms.ts`. `SETUPS=100000 npx vitest run tests/results/second` tries as many.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { read } from '../read.ts';
import { along, brightness, direction, distance, driftShare, fringes, fringesPerMove, fromNormal, incidence, lightInTheMiddle, radiusBehind, ratioShare, share, splitFor, volumeParameter, type V } from './closed-forms.ts';
import { normalOf, placed, textOf, told, type Placed, type Told } from './setups.ts';

const RUNS = Number(process.env['SETUPS'] ?? 300) / 2;
/** The same ones each time, but where many are asked for. */
const SEED = process.env['SETUPS'] === undefined ? { seed: 20261130 } : {};
/** A mirror that light only grazes changes its path by less than this share of its movement, and is said to be no matter. */
const LEAST_PATH = 0.01;
const RAD = Math.PI / 180;
const mm = (p: V): V => [p[0] / 1e3, p[1] / 1e3, p[2] / 1e3];

/** Every figure by its name, in SI. */
function expected(s: Placed | Told): ReadonlyMap<string, number> {
  const wavelength = s.wavelength * 1e-9;
  const f = new Map<string, number>();
  const [dS, dM, dR] = s.losses.map(l => l / 100) as [number, number, number];
  let raw: number, toR1: number, behind: number, object: number, theta: number, arriving: { reference: V; object: V; normal: V }, psi: number;
  if (s.kind === 'placed') {
    const [laser, S1, M1, M2, M3, whelk, P1] = [s.laser, s.S1, s.M1, s.M2, s.M3, s.whelk, s.P1].map(mm) as [V, V, V, V, V, V, V];
    const R1 = along(M1, P1, s.by / 1e3);
    raw = distance(laser, S1);
    toR1 = distance(S1, M1) + distance(M1, R1);
    behind = distance(R1, P1);
    object = distance(S1, M2) + distance(M2, M3) + distance(M3, whelk) + distance(whelk, P1);
    const normal = normalOf(s);
    arriving = { reference: direction(M1, P1), object: direction(whelk, P1), normal };
    theta = fromNormal(arriving.reference, normal);
    // Light that goes straight on at the object comes from behind it.
    psi = 2 * incidence(direction(M3, whelk), direction(whelk, P1));
    f.set('P1.object.angle', fromNormal(arriving.object, normal)).set('P1.reference.angle', theta);
    for (const [name, from, at, to] of [['M1', S1, M1, P1], ['M2', S1, M2, M3], ['M3', M2, M3, whelk]] as const) {
      const alpha = incidence(direction(from, at), direction(at, to));
      f.set(`${name}.incidence`, alpha).set(`${name}.fold`, Math.PI - 2 * alpha);
      if (2 * Math.cos(alpha) >= LEAST_PATH) f.set(`${name}.allowed movement`, 0.1 / fringesPerMove(alpha, wavelength));
    }
    f.set('raw.1.length', raw).set('object.2.length', distance(M2, M3)).set('reference.3.length', behind);
  } else {
    const l = s.legs.map(x => x / 1e3);
    [raw, toR1, behind, object] = [l[0]!, l[1]! + l[2]!, l[3]!, l[4]! + l[5]! + l[6]!];
    [theta, psi] = [s.reference * RAD, s.litAt * RAD];
    const at = (angle: number, side: number): V => [Math.sin(angle), 0, side * Math.cos(angle)];
    arriving = { reference: at(theta, s.hologram === 'transmission' ? 1 : -1), object: at(s.object * RAD, 1), normal: [0, 0, 1] };
  }
  const mismatch = object - (toR1 + behind);
  f.set('P1.reference.length', toR1 + behind).set('P1.object.length', object).set('P1.object.mismatch', mismatch).set('P1.object.brightness', brightness(s.line, mismatch));
  // A part that lies z farther from the plate: the light goes on by z cos ψ to it, and z more back.
  const z = (s.depth / 2e3) * (1 + Math.cos(psi));
  for (const [part, d] of [['near', -z], ['far', z]] as const) f.set(`P1.object.${part}.mismatch`, mismatch + d).set(`P1.object.${part}.brightness`, brightness(s.line, mismatch + d));

  const power = s.power / 1e3;
  const atPlate = power * share(dS, s.reflects / 100, dM, dR);
  const onObject = power * share(dS) * (s.reflects / 100) * share(dM, ...(s.kind === 'placed' ? [dM] : []));
  const w0 = s.diameter / 2e3;
  const w = radiusBehind(w0, s.quality, wavelength, raw + toR1, { focalLength: s.focalLength / 1e3, behind });
  const reference = lightInTheMiddle(atPlate, w, theta);
  const metered = s.metered / 100;
  f.set('raw.1.power', power).set('P1.reference.power', atPlate).set('P1.object.power', onObject);
  f.set('raw.1.beam diameter', 2 * radiusBehind(w0, s.quality, wavelength, raw)).set('reference.2.beam diameter', 2 * radiusBehind(w0, s.quality, wavelength, raw + toR1)).set('reference.3.beam diameter', 2 * w);
  f.set('P1.reference.light', reference).set('P1.object.light', metered).set('P1.light', reference + metered).set('P1.beam ratio', reference / metered);
  f.set('P1.exposure time', s.dose / 100 / (reference + metered)).set('P1.longest exposure', 6 / s.drift).set('S1.split for ratio', splitFor(s.aimed, reference / metered, s.reflects / 100));
  const lines = fringes(arriving.reference, arriving.object, arriving.normal, wavelength, s.index);
  f.set('P1.object.fringes', lines.per).set('P1.object.fringe tilt', lines.tilt).set('P1.object.volume parameter', volumeParameter(wavelength, s.layer / 1e6, s.index, lines.perInLayer));
  // Beyond a thousand million to one the program takes the loss for that of so many, which is all but a part in that number.
  if (reference / metered < 1e9) f.set('P1.object.ratio loss', 1 - ratioShare(reference / metered));
  f.set('P1.drift brightness', driftShare((s.drift / 60) * f.get('P1.exposure time')!));
  return f;
}

/** Near nothing a difference is as good as what it is a difference of: paths of metres, angles whose cosines are near 1, contrast near its zero. */
const leastOf = (name: string): number => (name.endsWith('mismatch') ? 0.1 : /angle|tilt|incidence|fold/.test(name) ? 1e-3 : /brightness|loss/.test(name) ? 1e-6 : 0);

/** What differs, as words; a figure that one of the two does not have is one too. */
export function differing(s: Placed | Told): string[] {
  const text = textOf(s);
  const r = read(text);
  return [...expected(s)].flatMap(([name, value]) => {
    const cell = r.results.ask(name) ?? r.results.graph.find(name);
    const found = cell && r.results.graph.value(cell);
    return found !== undefined && Math.abs(found - value) <= 1e-9 * Math.max(Math.abs(value), leastOf(name)) ? [] : [`${name}: ${found ?? cell?.missing?.code ?? 'none'}, and by the closed form ${value}`];
  });
}

test('setups with places', () => { fc.assert(fc.property(placed, s => { expect(differing(s), textOf(s)).toEqual([]); }), { numRuns: RUNS, ...SEED }); });
test('setups that name distances', () => { fc.assert(fc.property(told, s => { expect(differing(s), textOf(s)).toEqual([]); }), { numRuns: RUNS, ...SEED }); });
