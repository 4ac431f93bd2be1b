/** Where the real image of a hologram was seen sharp, and where that is from the plate that takes it up. */
import type { Reading, Thing } from '../../model/model.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import { legStart } from '../legs/legs.ts';
import { BEFORE_PLATE } from '../rules/light.ts';
import { weighted } from '../rules/lengths.ts';
import type { LightContext } from './context.ts';
import { counting } from './fates.ts';
import type { Meters } from './meter.ts';

export interface Image {
  readonly hologram: Thing;
  readonly distance: Cell;
  /** the reading of it that counts, beside the plan */
  readonly read?: { readonly reading: Reading; readonly cell: Cell; readonly planned: Cell };
  /** plates that take its image up, each with how far before it the image lies */
  readonly offsets: readonly { readonly plate: Thing; readonly cell: Cell }[];
}

const READ = weighted('image distance', 'as it was read', [1]);

/** The image of each hologram whose distance is written or was read. */
export function imagesOf(meters: Meters, { setup, readings, offsets: corrections, graph, values, arms, legs, published, alias, report, fates }: LightContext): Image[] {
  const holograms = [...setup.things.values()].filter(t => t.kind.light === 'diffracts');
  for (const r of readings) {
    if (r.measured?.kind !== 'image' || holograms.length === 1 || (holograms.length === 0 && setup.lost) || holograms.includes(r.measured.at!)) continue;
    report('reading-unclear', r, r.words, { words: r.words, why: holograms.length === 0 ? 'the setup has no hologram whose image it could be' : `it does not say of which hologram it is the image, as in “real image at ${holograms[0]!.id}”` });
  }
  return holograms.flatMap((h): Image[] => {
    const reading = counting(readings.filter(r => r.measured?.kind === 'image' && (holograms.length === 1 || r.measured.at === h)), fates);
    const read = reading && meters.input(reading);
    const ok = read?.dim === LENGTH ? read : undefined;
    const plan = values.fact(h, 'image distance');
    if (!ok && !plan) return [];
    const name = `${h.id}.image`;
    const words = `image of ${h.id}, from ${h.id}`;
    const distance = !ok ? graph.derive(name, weighted('image distance', 'as written', [1]), [plan!], LENGTH, words)
      : plan ? corrections.correct(name, words, plan, ok) : graph.derive(name, READ, [ok], LENGTH, words, { at: reading!.at });
    if (ok) fates.set(reading!, { kind: 'counts', of: distance, says: ok, ...(plan && !plan.missing ? { planned: plan } : {}) });
    published.push(distance);
    alias('image distance', distance);
    // A virtual image lies on the other side and meets no plate.
    const virtual = values.words(h, 'image') === 'virtual';
    const offsets = virtual ? [] : arms.arms.filter(a => a.object === h).flatMap(a => {
      const last = a.path.at(-1);
      // Behind a lens, or a mirror that is curved, the image lies elsewhere.
      if (!last || legStart(last) !== h) return [];
      const cell = graph.derive(`${a.plate.id}.image offset`, BEFORE_PLATE, [legs.get(last)!, distance], LENGTH, `image of ${h.id} before ${a.plate.id}`);
      published.push(cell);
      alias('image offset', cell);
      return [{ plate: a.plate, cell }];
    });
    return [{ hologram: h, distance, offsets, ...(ok && plan ? { read: { reading: reading!, cell: ok, planned: plan } } : {}) }];
  });
}
