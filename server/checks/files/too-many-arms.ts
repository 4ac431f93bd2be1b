import { MAX_ARMS } from '../../model/arms.ts';
import { num, type Check } from '../check.ts';

export const tooManyArms: Check = {
  code: 'too-many-arms',
  severity: 'error',
  title: 'Light reaches plates too many times',
  page: `**What you see.** From this leg on, beams that reach a plate are not compared.

**Why.** In a setup light reaches plates at most ${MAX_ARMS} times, so that an edit stays quick. A table has room for a few.

**What to do.** Split the setup.`,
  example: `setup "Whelk shell" {
  laser red
  screen W1
  plate P1
  beam raw from red
${'    -> P1 through: 10 mm\n    -> W1 through: 10 mm\n'.repeat(MAX_ARMS)}    -> P1: 10 mm
}
`,
  message: d => `Light reaches plates more than ${num(d, 'limit')} times in this setup; what reaches one from here on is not compared. Split the setup.`,
};
