/** `platewright draw`: a picture of a setup as SVG: the table from above, to scale, or another view of it. */
import { analyse } from '../analysis.ts';
import { underLamp } from '../drawing/hung/view.ts';
import { viewNamed, VIEWS } from '../drawing/views.ts';
import { findingsWithin } from '../features/report/report.ts';
import { nearest } from '../model/scope.ts';
import type { Results } from '../results/plan.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import type { Done } from './done.ts';
import { Misuse, openFile, Trouble, type Reach } from './files.ts';
import { exitFor } from '../features/listed.ts';
import { makerFor } from './pictures.ts';
import { writeMade } from './writing.ts';

export async function draw(named: string, { output, setup, variant, view: wanted = VIEWS[0]!.name, plate, lamp, from, dark = false, ...reach }: { output?: string; lamp?: string; setup?: string; variant?: string; view?: string; plate?: string; from?: readonly [number, number]; dark?: boolean } & Reach): Promise<Done> {
  const view = viewNamed(wanted);
  if (!view) throw new Misuse(unknown(wanted));
  const make = makerFor(output);
  const file = openFile(named, reach);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, setup, variant);
  const results = setupsNamed(snapshot.results, file.name, setup);
  const [r] = results;
  if (!r) throw new Trouble(`There is no setup in ${file.name}.`);
  if (results.length > 1) throw new Misuse(`${file.name} has several setups; choose one with --setup: ${results.map(x => `“${x.setup.name}”`).join(', ')}.`);
  const plates = r.plates.map(p => p.plate.id);
  if (plate !== undefined && !plates.includes(plate)) throw new Misuse(`No light reaches a plate “${plate}” in “${r.setup.name}”.${plates.length === 0 ? '' : ` Its plates: ${plates.join(', ')}.`}`);
  const asked = lamp === undefined ? plate : underLamp(lampNamed(lamp, plate, r), lamp);
  const drawn = view.of(r, { ...(asked === undefined ? {} : { plate: asked }), ...(from ? { from } : {}) });
  if (typeof drawn === 'string') throw new Trouble(drawn);
  const picture = await make(drawn().sheet, dark ? 'dark' : 'light');
  const code = exitFor(findingsWithin(snapshot, r));
  if (output === undefined) return { out: picture as string, code };
  writeMade(output, picture);
  return { out: `${output}: drawn\n`, code };
}

function unknown(wanted: string): string {
  const names = VIEWS.map(v => v.name);
  const near = nearest(wanted, names);
  return `There is no view “${wanted}”. ${near === undefined ? `The views are ${names.join(', ')}.` : `Did you mean “${near}”?`}`;
}

/** The plate that a lamp lights. */
export function lampNamed(lamp: string, plate: string | undefined, r: Results): string {
  const lamps = r.replay.all.filter(s => plate === undefined || s.plate.id === plate);
  const found = lamps.find(s => s.lamp.id === lamp);
  if (!found) throw new Misuse(`No lamp “${lamp}” lights ${plate ?? 'a plate'} in “${r.setup.name}”.${lamps.length === 0 ? '' : ` Its lamps: ${lamps.map(s => s.lamp.id).join(', ')}.`}`);
  return found.plate.id;
}
