import { text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const readingStale: Check = {
  code: 'reading-stale',
  severity: 'note',
  title: 'A reading is older than a move of what it measured',
  page: `**What you see.** The reading corrects nothing any more; the plan, or another reading, counts.

**Why.** Something on the way that was measured stands elsewhere since: a \`moved\` line of a later day names it. Of one day a reading only counts as older where both have a time of day. A reading without a date cannot be judged, and counts.

**What to do.** Measure it again. Keep the old line, if you like: it says what was.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  mirror M1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm
    -> P1: 721 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
  measured S1 -> M1: 752 mm on 2026-02-11
  moved M1 on 2026-02-14: "the mount came loose"
}
`,
  message: d => `${quoted(d, 'words')} was measured on ${text(d, 'on')}, and ${text(d, 'thing')} was moved on ${text(d, 'moved')}${d['what'] === undefined ? '' : ` (${quoted(d, 'what')})`}, so that the reading no longer counts. Measure it again.`,
  run: ({ setup, readings }) => {
    if (setup.moved.length === 0) return [];
    return setup.readings.flatMap(r => {
      const stale = readings.stale(r);
      if (!stale) return [];
      const { moved, thing } = stale;
      return [{ code: 'reading-stale', at: r.at, subject: r.words, setup: setup.name, data: { words: r.words, on: r.on!, thing: thing.id, moved: moved.on, line: moved.at.line + 1, ...(moved.what !== undefined ? { what: moved.what } : {}) } }];
    });
  },
};
