import { text, type Check } from '../check.ts';

/** How many are named in the message; all of them stand in its data and in the report. */
const SHOWN = 6;

export const notComputedYet: Check = {
  code: 'not-computed-yet',
  severity: 'hint',
  title: 'Some of what is written is understood, but no result uses it yet',
  page: `**What you see.** Nothing changes in the figures, whatever these lines say.

**Why.** The program reads, checks and keeps them, and does not compute with them yet.

**What to do.** Nothing. Keep writing them: they are part of the notebook, and will count once they are computed.`,
  example: `setup "Whelk shell" {
  room hall {
    humidity: 50%
  }
}
`,
  message: d => {
    const what = text(d, 'what').split(', ');
    return `Understood and kept, but not computed yet: ${what.slice(0, SHOWN).join(', ')}${what.length > SHOWN ? ` and ${what.length - SHOWN} more` : ''}.`;
  },
  run: ({ setup, goals }) => {
    const what = new Set(setup.pending);
    for (const g of goals) if (g.outcome === 'not computed yet') what.add(`“${g.goal.result}”`);
    return what.size === 0 ? [] : [{ code: 'not-computed-yet', at: setup.at, subject: setup.name, setup: setup.name, data: { what: [...what].join(', ') } }];
  },
};
