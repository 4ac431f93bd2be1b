import { percent, plain, show } from '../../model/show.ts';
import { LIGHT, parseUnit, POWER } from '../../model/units.ts';
import type { Problem } from '../../model/model.ts';
import { isMoreThanAll } from '../../results/rules/light.ts';
import { num, text, type Check, type Data } from '../check.ts';
import { quoted } from '../words.ts';

/** What is more than all by less is rounding. */
const ROUNDING = 1e-9;

export const polarizerAddsLight: Check = {
  code: 'polarizer-adds-light',
  severity: 'warning',
  title: 'A reading through a polarizer is more than the polarizer can pass',
  page: `**What you see.** No polarized share and no effective ratio, as the readings that they rest on cannot both be right.

**Why.** A polarizer only takes light away. What is read through it, put right for the loss of the sheet where that is known, is at most what is read without it. Here it is more: one of the two was misread, the head was held otherwise, the laser became brighter between them, or the \`loss\` of the sheet is written too large. A warning where the share is above 100 % by more than three standard uncertainties, and by more than 1 %; a note where it may be no more than what the readings leave open: then all of the light counts as polarized like the reference.

**What to do.** Let the laser settle, hold the head in the same way for both, and read both again, one directly after the other.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
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
  measured reference at P1: 62 by needle
  measured object at P1: 14 by needle
  measured object at P1 through polarizer: 17 by needle
}
`,
  severityOf: d => (isMoreThanAll(num(d, 'share'), num(d, 'u')) ? 'warning' : 'note'),
  message: d => {
    const loss = d['loss'] === undefined ? '' : `, put right for the polarizer’s loss of ${percent(num(d, 'loss'))},`;
    return `${quoted(d, 'words')} comes to ${amount(d, 'read')}, which${loss} is ${percent(num(d, 'share'))} of the ${amount(d, 'without')} without a polarizer in line ${num(d, 'line')}; a polarizer passes at most all of it. Hold the head in the same way, and read both again, one directly after the other${loss === '' ? '' : '; then correct the loss'}.`;
  },
  run: ({ light, graph, setup }) => light.plates.flatMap(p => [...(p.reference ? [p.reference] : []), ...p.objects].flatMap(({ name, polarized }): Problem[] => {
    const share = polarized && graph.value(polarized.asRead);
    if (share === undefined || share <= 1 + ROUNDING) return [];
    const { asRead: cell, through, without, loss } = polarized!;
    // Where the one faced the beam and the other did not, both in the plane of the plate.
    const [top, all] = cell.inputs;
    const lost = loss && graph.value(loss);
    return [{
      code: 'polarizer-adds-light', at: through.reading.at, subject: through.reading.words, setup: setup.name,
      data: {
        words: through.reading.words, plate: p.plate.id, arm: name, share, u: graph.uncertainty(cell), read: graph.value(top!)!, without: graph.value(all!)!, kind: through.kind, unit: top!.unit?.text ?? '',
        line: without.reading.at.line + 1, ...(lost ? { loss: lost } : {}),
      },
    }];
  })),
};

function amount(d: Data, key: string): string {
  const value = Number(num(d, key).toPrecision(3));
  return d['kind'] === 'bare' ? plain(value) : show(value, d['kind'] === 'light' ? LIGHT : POWER, 0, parseUnit(text(d, 'unit')));
}
