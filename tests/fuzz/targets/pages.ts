/** The whole analysis of a page: no NaN and no infinity in a cell or in a text, findings stand within the page, and an edit gives what a fresh analysis gives. */
import { LineCache, splitLines } from '../../../grammar/parse.ts';
import { analyse, type Snapshot } from '../../../server/analysis.ts';
import { reportMarkdown } from '../../../server/features/report/markdown.ts';
import { reportOf } from '../../../server/features/report/report.ts';
import { reportText } from '../../../server/features/report/text.ts';
import { LIBRARY, PAGE } from '../library.ts';
import { hash, none, same, unfit, type Target } from '../target.ts';
import { DICTIONARY, likelyPage } from '../texts.ts';

export const pages: Target = {
  name: 'pages', share: 50, few: 20, inputs: likelyPage, words: DICTIONARY,
  run: text => {
    const s = analyse(PAGE, text, LIBRARY);
    sound(s);
    if (hash(text) % 4 !== 0) return;
    const cache = new LineCache();
    const lines = splitLines(text);
    said(analyse(PAGE, lines.toSpliced(hash(text) % lines.length, 1).join('\n'), LIBRARY, cache));
    same('after an edit', said(analyse(PAGE, text, LIBRARY, cache)), said(s));
  },
};

/** Throws where a snapshot says what none should. */
export function sound(s: Snapshot): void {
  const { lines } = s.tree;
  none('a finding outside of the page', s.findings.filter(({ at }) => at.uri === s.uri && !(at.line >= 0 && at.line < lines.length && at.start >= 0 && at.start <= at.end && at.end <= lines[at.line]!.text.length)).map(f => [f.code, f.at]));
  none('a number of a finding', s.findings.filter(f => Object.values(f.data).some(v => typeof v === 'number' && !Number.isFinite(v))).map(f => [f.code, f.data]));
  none('a finding says', unfit(s.text, s.findings.map(f => f.message)));
  for (const { graph, published, goals } of s.results) {
    none('a cell', graph.cells.filter(c => !c.missing && !Number.isFinite(graph.value(c))).map(c => c.name));
    none('how sure', published.filter(c => !c.missing && !(graph.uncertainty(c) >= 0 && graph.uncertainty(c) < Infinity)).map(c => c.name));
    none('a goal', goals.filter(g => [g.value, g.give, ...g.limits].some(v => v !== undefined && !Number.isFinite(v))).map(g => g.goal.result));
  }
  const reports = s.results.map(r => reportOf(s, r));
  none('a report says', unfit(s.text, [reportText(reports, 'whelk.plate'), reportMarkdown(reports, 'whelk.plate')]));
}

const said = (s: Snapshot): unknown => [s.findings.map(f => [f.code, f.at.line, f.at.start, f.message]), s.results.map(r => r.published.map(c => [c.name, c.missing ? null : r.graph.value(c)]))];
