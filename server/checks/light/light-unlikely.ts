import type { Problem } from '../../model/model.ts';
import { plain, show } from '../../model/show.ts';
import { LIGHT, parseUnit, POWER } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

/** A spread beam that covers a plate puts less than all of its power on any cm² of it: its middle has 2P/(πw²), w more than 8 mm. */
const SPOT = 1e-4;
/** By how much a reading may differ from the plan before it looks like a slip: object light is a guess within a factor of three, a unit that is off is off by a thousand. */
const FAR = 100;

export const lightUnlikely: Check = {
  code: 'light-unlikely',
  severity: 'note',
  title: 'A reading of light is far from anything that the laser can give',
  page: `**What you see.** An exposure that is off a hundredfold or more: plates that are black or clear.

**Why.** The reading says that each cm² of the plate gets more than the whole power of the laser, which no beam that covers a plate can do (its middle has 2P/(πw²), w its radius), or it is more than a hundred times above or below the light that the plan has there, while object light is a guess within a factor of three. Mostly µW and mW, or cm² and m², are mixed up, or the range of the meter was read wrongly.

**What to do.** Look at the range of the meter and read again: 1 mW/cm² is 1000 µW/cm², and 1 W/m² is 100 µW/cm². Where the reading is right, correct the \`power\` of the laser.`,
  example: `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    power: 0.8 mW
  }
  splitter S1
  object whelk
  plate P1
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 1.6 mW/cm² by needle
}
`,
  message: d => (d['planned'] === undefined
    ? `By this reading each cm² of ${text(d, 'plate')} gets ${light(num(d, 'read'))} of “${text(d, 'arm')}”, more than the ${show(num(d, 'power'), POWER)} that ${text(d, 'laser')} has in all. Is the unit right? 1 mW/cm² is 1000 µW/cm².`
    : `This reading makes ${light(num(d, 'read'))} of “${text(d, 'arm')}” at ${text(d, 'plate')}, ${plain(Math.max(num(d, 'read') / num(d, 'planned'), num(d, 'planned') / num(d, 'read')), 2)} times ${num(d, 'read') > num(d, 'planned') ? 'more' : 'less'} than the plan. Is the unit right? 1 mW/cm² is 1000 µW/cm².`),
  run: ({ light: { plates }, arms, graph, setup }) => plates.flatMap(p => [...(p.reference ? [p.reference] : []), ...p.objects].flatMap(({ name, read, asRead }): Problem[] => {
    const value = read.kind === 'light' ? graph.value(asRead) : undefined;
    const laser = arms.arms.find(a => a.plate === p.plate && (a.name === name || a.role === name))?.laser;
    if (value === undefined || !(value > 0) || !laser) return [];
    const data = { plate: p.plate.id, arm: name, read: value, laser: laser.id };
    const known = laser.facts.has('power') ? graph.find(`${laser.id}.power`) : undefined;
    const power = known && graph.value(known);
    const plan = graph.find(`${p.plate.id}.${name}.light.plan`);
    const planned = plan && graph.value(plan);
    const found = power !== undefined && value * SPOT > power ? { power } : planned !== undefined && planned > 0 && (value > FAR * planned || value < planned / FAR) ? { planned } : undefined;
    return found ? [{ code: 'light-unlikely', at: read.reading.at, subject: read.reading.words, setup: setup.name, data: { ...data, ...found } }] : [];
  })),
};

const MILLI = parseUnit('mW/cm²')!;
const light = (v: number): string => show(Number(v.toPrecision(2)), LIGHT, 0, v >= MILLI.factor ? MILLI : undefined);
