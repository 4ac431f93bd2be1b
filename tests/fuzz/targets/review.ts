/** Two pages held against each other, as revisions of a history are, and what their shots tell: any texts, with the same files or none. An input has both, with a line of signs between. */
import fc from 'fast-check';
import { LineCache } from '../../../grammar/parse.ts';
import { analyse } from '../../../server/analysis.ts';
import { historyOf } from '../../../server/features/history/history.ts';
import { historyCsv, historyMarkdown, historyText } from '../../../server/features/history/pages.ts';
import { learn } from '../../../server/features/learn/learn.ts';
import { learnedPage } from '../../../server/features/learn/page.ts';
import { shotsIn } from '../../../server/features/learn/shots.ts';
import { learnedMarkdown, learnedText } from '../../../server/features/learn/text.ts';
import { reviewMarkdown } from '../../../server/features/review/markdown.ts';
import { reviewPage } from '../../../server/features/review/page.ts';
import { reviewText } from '../../../server/features/review/text.ts';
import { asShot, shotsOf } from '../../../server/review/as-shot.ts';
import { isSame, reviewOf } from '../../../server/review/review.ts';
import { LIBRARY, PAGE } from '../library.ts';
import { mutate } from '../mutate.ts';
import { randomBy } from '../random.ts';
import { none, unfit, type Target } from '../target.ts';
import { BETWEEN, DICTIONARY, likelyPage } from '../texts.ts';
import { sound } from './pages.ts';

export const review: Target = {
  name: 'review', share: 4, few: 6, words: DICTIONARY,
  inputs: fc.tuple(likelyPage, likelyPage, fc.nat()).map(([text, other, seed]) => `${text}${BETWEEN}${seed % 4 === 0 ? other : mutate(text, other, DICTIONARY, randomBy(seed))}`),
  run: input => {
    const [text, ...more] = input.split(BETWEEN);
    const pages = [text!, more.join(BETWEEN)].map(t => analyse(PAGE, t, LIBRARY, new LineCache()));
    const [before, after] = pages as [typeof pages[0], typeof pages[0]];
    for (const r of [reviewOf(before, after), reviewOf(after, before), reviewOf(undefined, after), reviewOf(before, undefined)]) {
      const page = reviewPage(r);
      none('a comparison says', unfit(input, [JSON.stringify(page), reviewText([{ file: 'whelk.plate', page }]), reviewMarkdown([{ file: 'whelk.plate', page }])]));
    }
    if (!isSame(reviewOf(after, analyse(PAGE, after.text, LIBRARY, new LineCache())))) throw new Error('a page differs from itself');
    const shots = pages.flatMap(s => shotsIn(s));
    const [learned, history] = [learnedPage(learn(shots), () => 'whelk.plate'), historyOf(shots)];
    none('shots say', unfit(input, [learnedText(learned), learnedMarkdown(learned), historyText(history, () => 'whelk.plate'), historyMarkdown(history, () => 'whelk.plate'), historyCsv(history, () => 'whelk.plate')]));
    for (const s of pages) for (const shot of shotsOf(s)) {
      const was = asShot(s, shot);
      if (typeof was === 'string') { none('dated, and said to have no date', was === 'undated' && shot.on !== undefined ? [shot.name] : []); continue; }
      const then = analyse(PAGE, was.text, LIBRARY, new LineCache());
      sound(then);
      none('of a later day', shotsOf(then).filter(t => t.on !== undefined && t.on.slice(0, 10) > shot.on!.slice(0, 10)).map(t => t.name));
      none('the shot is not on its own page', shotsOf(then).some(t => t.name === shot.name && t.on === shot.on) ? [] : [shot.name]);
    }
  },
};
