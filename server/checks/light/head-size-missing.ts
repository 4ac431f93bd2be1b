import { text, type Check } from '../check.ts';
import { quote } from '../words.ts';

export const headSizeMissing: Check = {
  code: 'head-size-missing',
  severity: 'note',
  title: 'A power was read at a plate, but how large the head of the meter is, is not written',
  page: `**What you see.** The light at the plate and the exposure are missing. The beam ratio is known where both arms were read with that meter: the size of the head falls out of it.

**Why.** A meter that reads in µW tells how much its head caught. The plate counts by light for each square centimetre, which is that power divided by the area of the head. A dark reading in nW is taken from a reading in µW/cm² in the same way.

**What to do.** Write \`head\`, its diameter, or \`head size\`, its width and height, of the meter.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  meter meter-1 {
    calibration: 1 ± 5%
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 1.6 µW by meter-1
}
`,
  message: d => `The reading of ${quote(text(d, 'words'))} needs the size of the meter’s head to become light for each square centimetre. ${text(d, 'meter') === '' ? 'Say which meter it was (“by meter-1”), and write' : `Write`} “head: 10 mm” or “head size: 10 x 10 mm”${text(d, 'meter') === '' ? ' of it' : ` of ${text(d, 'meter')}`}.`,
};
