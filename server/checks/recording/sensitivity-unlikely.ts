import type { Problem } from '../../model/model.ts';
import { plain, show } from '../../model/show.ts';
import { exposuresOf } from '../../model/things/materials.ts';
import { EXPOSURE, parseUnit } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

/** By how much an exposure may lie beyond what the handbooks say of such layers before it looks like a slip: a unit that is off is off by a thousand. */
const FAR = 10;

export const sensitivityUnlikely: Check = {
  code: 'sensitivity-unlikely',
  severity: 'note',
  title: 'The exposure that a plate is said to need is far from that of any such plate',
  page: `**What you see.** Exposures that come out a thousand times too long or too short: plates that are black or clear.

**Why.** The \`sensitivity\` that is written lies more than ten times beyond what the handbooks give for its \`material\`, or, where none is written, for any: 1 µJ/cm² for thermoplastic to 500 mJ/cm² for gelatin and resist. Mostly µJ and mJ, or cm² and m², are mixed up: 1 mJ/cm² is 1000 µJ/cm², and 1 J/m² is 100 µJ/cm².

**What to do.** Look at the data sheet again, and write the figure with its unit. Where it is right, accept the finding with the source as the reason.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1 {
    material: fine-grain silver halide
    sensitivity: 40 mJ/cm²
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => {
    const [value, low, high] = ['value', 'low', 'high'].map(k => num(d, k)) as [number, number, number];
    const more = value > high;
    return `${text(d, 'plate')} is said to need ${amount(value)}, ${plain(more ? value / high : low / value, 2)} times ${more ? 'more' : 'less'} than ${d['material'] === undefined ? 'any plate' : text(d, 'material')} does (${amount(low)} to ${amount(high)}). Is the unit right? 1 mJ/cm² is 1000 µJ/cm².`;
  },
  run: ({ setup, plates, graph, values }) => plates.flatMap(({ plate }): Problem[] => {
    const fact = plate.facts.get('sensitivity');
    const value = fact?.value.kind === 'quantity' ? fact.value.quantity.value : fact && graph.find(`${plate.id}.sensitivity`) ? graph.value(graph.find(`${plate.id}.sensitivity`)!) : undefined;
    const material = values.words(plate, 'material');
    const { low, high } = exposuresOf(material);
    if (value === undefined || (value <= high * FAR && value >= low / FAR)) return [];
    return [{ code: 'sensitivity-unlikely', at: fact!.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, value, low, high, ...(material === undefined ? {} : { material }) } }];
  }),
};

const MILLI = parseUnit('mJ/cm²')!;
const amount = (v: number): string => show(Number(v.toPrecision(2)), EXPOSURE, 0, v >= MILLI.factor ? MILLI : undefined);
