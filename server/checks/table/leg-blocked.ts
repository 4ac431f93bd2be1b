import type { Problem } from '../../model/model.ts';
import { millimetres, percent, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import { legWords } from '../../results/legs/legs.ts';
import { FARTHEST, type Shaded } from '../../results/table/shadows.ts';
import { num, text, type Check, type Data } from '../check.ts';
import { capital, quoted } from '../words.ts';

/** More than that share of its width cut off is seen on the plate, and so is more than that share of what is lit in shadow. */
const [BAD, BAD_SHADE] = [0.25, 0.05];

/** `3 ± 8 mm`: `give` is half of the 95 % band. */
const giveOrTake = (value: number, give: number): string => show(value, LENGTH, give / 2);

/** `its upper left corner`; of what has no corners `its upper left side`. */
function partWords({ across, up, level, face: { size: [w, h], round } }: Shaded): string {
  if (level || (across === 0 && up === 0)) return across !== 0 && up !== 0 && !round ? 'a corner' : 'a part';
  const words = [up > 0 ? 'upper' : up < 0 ? 'lower' : '', across > 0 ? 'right' : across < 0 ? 'left' : ''].filter(Boolean).join(' ');
  const oblong = across !== 0 ? w > h : h > w;
  return `the ${words} ${round ? 'side' : across !== 0 && up !== 0 ? 'corner' : oblong ? 'end' : 'edge'}`;
}

/** Of a thing that leaves the middle of the light alone and shades a far part of what it lights. */
function shadow(d: Data, leg: string, thing: string, where: string): string {
  const [gap, give, clear] = [num(d, 'gap'), num(d, 'give'), num(d, 'clear')];
  const on = `${text(d, 'part')} of ${text(d, 'lit')}, seen from where the light comes`;
  const guess = d['sure'] === true ? '' : ', if its mount is of the usual size: its sizes are assumed';
  if (d['undecided'] === true) {
    return `${thing} stands beside ${leg}, ${where}: whether it shades ${on}, is undecided${d['sure'] === true ? '' : ' with a mount of the usual size'}, as it ${gap >= 0 ? `passes the light by ${giveOrTake(gap, give)}` : `reaches ${giveOrTake(-gap, give)} into the light`}. Measure where they stand, or put ${text(d, 'thing')} ${millimetres(give + clear)} farther from the light.`;
  }
  const move = clear < FARTHEST ? `Put ${text(d, 'thing')} ${millimetres(give + clear)} farther from the light` : 'Move it';
  return `${thing} stands in a part of ${leg}, ${where}, and shades ${on}: about ${percent(num(d, 'shaded'))} of its lit face lies in shadow${guess}. ${move}, or lead the beam past it.`;
}

export const legBlocked: Check = {
  code: 'leg-blocked',
  severity: 'warning',
  title: 'Something stands in a beam',
  page: `**What you see.** A shadow on the object or on the plate, with fringes round its edge, or no light at all.

**Why.** By the places, a thing stands in the way of a leg, or reaches into the width that its light needs to get to all of the object or the plate. Over a plate, a hologram or an object whose size is written the light is followed to its corners too: a post far from the axis still shades one end of an oblong plate. Of a thing whose size is written its face counts; how far its mount stands out beyond that is common practice, and
what only that says is a note, and so is what the give of the written places leaves undecided. A post counts as far down as the table. Nothing stands in its own beam: light that is to go through a thing names it as a leg.

**What to do.** Move the thing or the leg. Where the light is meant to go through it, name it as a leg of the beam. Where a mirror and the lens behind it are too close for the fold, put the lens farther down its leg.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 at (900, 0) mm
  black card BC1 at (500, 120) mm heading 180° {
    size: 60 x 150 mm
  }
  beam raw from red
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 at (900, 0) mm
  black card BC1 at (500, 20) mm heading 180° {
    size: 60 x 150 mm
  }
  beam raw from red
    -> B1
}
`,
  severityOf: d => (d['undecided'] !== true && d['sure'] === true && (num(d, 'cut') >= BAD || num(d, 'shaded') >= BAD_SHADE) ? 'warning' : 'note'),
  message: d => {
    const leg = `${quoted(d, 'beam')} from ${text(d, 'leg')}`;
    const thing = `${capital(text(d, 'kind'))} ${text(d, 'thing')}`;
    const where = `${millimetres(num(d, 'along'))} behind ${text(d, 'from')}`;
    if (d['shaded'] !== undefined) return shadow(d, leg, thing, where);
    const what = d['axis'] === true ? `${thing} stands in the way of ${leg}, ${where}` : `${thing} half cuts ${leg}, ${where}: the light is ${millimetres(2 * num(d, 'radius'))} wide there, and it reaches ${percent(num(d, 'cut'))} of that in`;
    const [gap, give] = [num(d, 'gap'), num(d, 'give')];
    const amount = giveOrTake(Math.abs(gap), give);
    if (d['undecided'] === true) {
      const so = gap >= 0 ? `passes ${text(d, 'kind')} ${text(d, 'thing')} by ${amount}, ${where}` : `runs ${amount} into ${text(d, 'kind')} ${text(d, 'thing')}, ${where}`;
      return `${capital(leg)} ${so}${d['sure'] === true ? '' : ' and with a mount of the usual size'}: whether it is cut is undecided. Measure where they stand, or put ${text(d, 'thing')} ${millimetres(give - gap)} farther from the light.`;
    }
    const guess = d['sure'] === true ? '' : ', if its mount is of the usual size: its sizes are assumed';
    return `${what}${give > 0 ? ` (by ${amount})` : ''}${guess}. ${d['passes'] === true ? `If the light goes through it, name it as a leg; else move it or the leg.` : 'Move it, or lead the beam past it.'}`;
  },
  run: ({ table, setup, graph }) => table.look.blocked.map((b): Problem => ({
    code: 'leg-blocked', at: b.thing.at, subject: `${b.leg.id} ${b.thing.id}`, setup: setup.name,
    data: {
      beam: b.leg.beam.id, leg: legWords(b.leg), thing: b.thing.id, kind: b.thing.kind.word, from: legWords(b.leg).split(' → ')[0]!, along: b.along, radius: b.radius, cut: b.cut, axis: b.axis, sure: b.sure, gap: b.gap, give: b.give, undecided: b.undecided,
      distance: graph.value(b.distance) ?? 0, passes: b.thing.kind.light === 'passes' || b.thing.kind.light === 'shares', ...(b.shaded ? { shaded: b.shaded.share, clear: b.shaded.clear, part: partWords(b.shaded), lit: b.leg.target!.id } : {}),
    },
  })),
};
