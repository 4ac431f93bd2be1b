/** The object light that goes with a reference for a ratio: what a meter has to read when the split is right. */
import type { Thing } from '../../model/model.ts';
import { NUMBER } from '../../model/units.ts';
import type { Cell, Graph } from '../graph.ts';
import { BY_RATIO } from '../rules/light.ts';
import type { PlateLight } from './plate-light.ts';

const NAME = /^(.+)\.object\.light for (\d{1,6}(?:\.\d{1,6})?):(\d{1,6}(?:\.\d{1,6})?)$/;

/** `P1.object.light for 4:1`, in the plane of the plate; in the bare numbers of the meter where the reference was read in these. Undefined of any other name. */
export function lightForRatio(name: string, plates: readonly Thing[], at: (plate: Thing) => readonly PlateLight[], graph: Graph): Cell | undefined {
  const [, head, a, b] = NAME.exec(name) ?? [];
  const light = head === undefined ? undefined : plates.filter(p => head === p.id || head.startsWith(`${p.id}.`)).flatMap(at).find(p => p.name === head);
  const ratio = Number(a) / Number(b);
  if (!light || !(ratio > 0) || !Number.isFinite(ratio)) return undefined;
  const { plate, reference, referenceLight } = light;
  const beside = referenceLight.missing && reference ? reference.cell : referenceLight;
  const asked = `${light.name}.beam ratio of ${a!}:${b!}`;
  return graph.find(name) ?? graph.derive(name, BY_RATIO, [beside, graph.find(asked) ?? graph.input(asked, { value: ratio, dim: NUMBER }, 'written', `ratio of ${a!}:${b!}`)], beside.dim, `object light at ${plate.id} for ${a!}:${b!}`, beside.unit ? { unit: beside.unit } : {});
}
