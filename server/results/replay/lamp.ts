/** The light that shows a finished hologram, as its lamp says it. */
import type { Setup, Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, parseUnit, PER_LENGTH } from '../../model/units.ts';
import type { Stands } from '../hang/stands.ts';
import { EDGE_ON } from '../places/angles.ts';
import { LAMP_ANGLE } from '../rules/hang.ts';
import { CONVERGING, LAMP_CURVATURE } from '../rules/replay.ts';
import type { HologramWay } from '../rules/fringes.ts';
import type { Values } from '../values.ts';
import type { Hung, LampSide } from './hung.ts';
import type { Light, Trouble } from './shown.ts';

const DEGREE = parseUnit('°')!;
const RIGHT_ANGLE = Math.PI / 2;

export interface LampContext { readonly setup: Setup; readonly values: Values; readonly stands: Stands }

export function lightOf(lamp: Thing, plate: Thing, base: string, { setup, values, stands }: LampContext): Light {
  const { graph } = values;
  const words = `angle of ${lamp.id}`;
  const angle = graph.derive(`${base}.lamp angle`, LAMP_ANGLE, [stands.angleOf(lamp, plate, `${base}.lamp angle as written`, words)], ANGLE, `${words} from the normal of ${plate.id}`, { unit: DEGREE });
  const beam = values.words(lamp, 'beam') as Light['beam'];
  const distance = values.fact(lamp, 'distance');
  const named = lamp.facts.get('laser')?.value;
  const laser = named?.kind === 'words' ? setup.things.get(named.text) : undefined;
  const wavelength = laser ? values.fact(laser, 'wavelength') : lamp.facts.has('wavelength') ? values.fact(lamp, 'wavelength') : undefined;
  const size = values.fact(lamp, 'size');
  const from = sideOf(lamp) ?? stands.higher(lamp, plate);
  const curvature = `curvature of the light of ${lamp.id} at ${plate.id}`;
  return {
    angle, beam, white: !laser && !lamp.facts.has('wavelength'), ...(distance ? { distance } : {}), ...(size ? { size } : {}), ...(from ? { from } : {}), ...(wavelength ? { wavelength } : {}),
    curvature: beam === 'parallel' ? graph.input(`${base}.lamp curvature`, { value: 0, dim: PER_LENGTH }, 'written', curvature)
      : graph.derive(`${base}.lamp curvature`, beam === 'converging' ? CONVERGING : LAMP_CURVATURE, [distance ?? graph.missing(`${base}.lamp distance`, LENGTH, `distance of ${lamp.id}`, { code: 'value-missing', why: `the distance of ${lamp.id} is not written`, at: lamp.at })], PER_LENGTH, curvature),
  };
}

function sideOf(lamp: Thing): LampSide | undefined {
  const word = lamp.facts.get('from')?.value;
  return word?.kind === 'words' ? (word.text as LampSide) : undefined;
}

/** Why such a lamp shows nothing, before anything is computed of the image. */
export function troubleOf(light: Light, hung: Hung, way: HologramWay, { graph }: Values): Trouble | undefined {
  const raw = graph.value(light.angle);
  if (raw === undefined) return light.angle.missing?.code === 'impossible-value' ? 'too steep' : 'no angle';
  const written = graph.value(light.angle.inputs[0]!)!;
  if (way === 'reflection' && Math.abs(written) >= RIGHT_ANGLE) return 'lamp behind';
  if (raw > EDGE_ON) return 'edge-on';
  return light.from && hung.from && light.from !== hung.from ? 'other side' : undefined;
}
