import { plain, show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { LENGTH, POWER } from '../../model/units.ts';
import { num, text, type Check, type Data } from '../check.ts';
import { DECIDES, passesLimit } from '../eye-limits.ts';
import { also } from '../words.ts';

/** From here on a laser belongs to the classes that want a person responsible for them. */
const GRAVE: readonly string[] = ['3B', '4'];
const GREEN = { from: 531e-9, to: 533e-9 };

export const laserCaution: Check = {
  code: 'laser-caution',
  severity: 'note',
  once: true,
  title: 'The bare beam of a laser passes the published limit for a glance into it',
  page: `**What you see.** Nothing on the plate. It is a caution, told once a file.

**Why.** The class on the label is 3R, 3B or 4, or the written power is more than a wide pupil of 7 mm may get in a quarter of a second: about 1 mW for steady visible light (IEC 60825-1:2014, annex A; ICNIRP, Health Physics 105, 271, 2013; from memory). Blue light, below 500 nm, harms an eye by a long look before it does so by heat: from 100 s on the limit is 0.04 mW up to 450 nm, and rises to 0.39 mW at 500 nm. That is an estimate, not a hazard assessment: pulses, invisible light, lenses and binoculars, skin, and light that a diffuse surface throws back are not in it, and a beam below a limit is not said to be harmless.

**What to do.** Follow the label, local rules, and the person responsible for laser safety. Common practice besides: beams level and never at the height of eyes, sitting or standing; every beam ends on a stop, also the unused one of a splitter and what lenses reflect; no watch, ring or shiny tool near a beam; a black card where the glass of a plate throws its reference off the table (told where a table’s size and the places show it: left, right, near and far as in the plan), and where a mount, which is rough and cannot be computed, glints; align at low power; open the shutter last. Lasers of class 3B and 4 want a controlled room, and eyewear that is made for their wavelength.`,
  example: `setup "Whelk shell" {
  laser red {
    wavelength: 632.8 nm
    power: 12 mW
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
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
    const beam = `the bare beam of ${text(d, 'laser')}`;
    const label = d['class'] === undefined ? '' : `By its label ${text(d, 'laser')} is of class ${text(d, 'class')} (IEC 60825-1).`;
    const figure = d['times'] !== undefined ? `At ${show(num(d, 'power'), POWER)}, ${beam} is ${plain(num(d, 'times'), 2)} times the published limit for a glance (${show(Number(num(d, 'limit').toPrecision(2)), POWER)} through a wide pupil, IEC 60825-1:2014).`
      : d['invisible'] === true ? `${text(d, 'laser')} sends out ${show(num(d, 'wavelength'), LENGTH)}, of which the limits that are kept here do not tell.` : '';
    const blue = d['stare'] === undefined ? '' : d['times'] === undefined ? `At ${show(num(d, 'power'), POWER)}, ${beam} is ${plain(num(d, 'stare'), 2)} times ${longLook(d)}.` : `Blue light harms by a long look too: it is ${plain(num(d, 'stare'), 2)} times ${longLook(d)}.`;
    const green = d['green'] === true ? 'A green laser may also send out infrared, which is not seen.' : '';
    const flash = d['flash'] === undefined ? '' : `The glass of ${text(d, 'flash')} throws some of the light of ${text(d, 'reference')} back like a mirror: it leaves the table by its ${text(d, 'edge')} edge, at about ${text(d, 'where')}, at the height of the beams. A black card there ends it; lens mounts and tools throw light about as well.`;
    const grave = GRAVE.includes(text(d, 'class')) ? 'Such a laser wants a controlled room, and eyewear made for its wavelength.' : '';
    return `${[label, figure, blue].filter(Boolean).join(' ')} An estimate, not a hazard assessment.${also(green)}${also(grave)}${also(flash)} Keep beams level, below the height of eyes, and ended on stops; watches and rings off. ${DECIDES}`;
  },
  run: r => r.eyes.flatMap(({ laser, class: label, power, limit, times, long }): Problem[] => {
    const [p, wavelength] = [power && r.graph.value(power), limit?.inputs[0] && r.graph.value(limit.inputs[0])];
    const invisible = p !== undefined && wavelength !== undefined && limit!.missing !== undefined;
    if (passesLimit(laser, r) !== true && !invisible) return [];
    const over = times && r.graph.value(times);
    const stare = long && r.graph.value(long.times);
    const flash = r.table.look.flashes.find(f => f.arm.laser === laser);
    return [{
      code: 'laser-caution', at: laser.at, subject: laser.id, setup: r.setup.name,
      data: {
        laser: laser.id, ...(label !== undefined ? { class: label } : {}), ...(p !== undefined ? { power: p } : {}), ...(wavelength !== undefined ? { wavelength } : {}), ...(over !== undefined && over > 1 ? { times: over, limit: r.graph.value(limit!)! } : {}),
        ...(stare !== undefined && stare > 1 ? { stare, stareLimit: r.graph.value(long!.limit)! } : {}),
        ...(flash ? { flash: flash.plate.id, reference: flash.arm.name, edge: flash.edge, where: `(${flash.at.slice(0, 2).map(v => Math.round(v * 1000)).join(', ')}) mm` } : {}),
        ...(invisible ? { invisible } : {}), ...(wavelength !== undefined && wavelength >= GREEN.from && wavelength <= GREEN.to ? { green: true } : {}),
      },
    }];
  }),
};

const longLook = (d: Data): string => `the published limit for a long look into blue light (${show(Number(num(d, 'stareLimit').toPrecision(2)), POWER)}, from 100 s on)`;
