/** An answer as it is shown: rows of words, the same on a terminal, in Markdown and in an editor. */
import { percentBand, readableUnit, show } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import { goalText } from '../../results/difference.ts';
import { shortName } from '../../results/names.ts';
import type { Results } from '../../results/plan.ts';
import type { Idle } from '../../results/solve/solve.ts';
import { showCell } from '../chain.ts';
import { titleOf } from '../report/report.ts';
import type { Answer, Choice, Value } from './answer.ts';
import { digits } from './writing.ts';

export interface ValueRow { readonly name: string; readonly text: string; readonly remark: string }
export interface GoalRow { readonly text: string; readonly kind: 'aim' | 'expect'; readonly shown: string; readonly outcome: string; /** "by 12 mm" */ readonly missed: string | undefined }

export interface ChoicePage {
  readonly values: readonly ValueRow[];
  readonly goals: readonly GoalRow[];
  /** what else is known with it */
  readonly becomes: readonly { readonly name: string; readonly text: string }[];
  /** what the page is told of it, what is in the way first */
  readonly told: readonly string[];
  /** the results that are aimed at, in a line */
  readonly headline: string;
}

export interface AnswerPage {
  readonly title: string;
  readonly line: number;
  /** what is asked for that got no value, with why */
  readonly left: readonly { readonly name: string; readonly why: string }[];
  /** in a sentence: why there is nothing, or that nothing will do */
  readonly says: string | undefined;
  readonly choices: readonly ChoicePage[];
  /** nothing will do, and this comes nearest */
  readonly nearest: ChoicePage | undefined;
}

export function answerPage(a: Answer): AnswerPage {
  const found = new Set((a.choices[0] ?? a.nearest)?.values.map(v => v.name));
  const choices = a.choices.map(c => choicePage(c, a.results));
  return {
    title: titleOf({ setup: a.results.setup.name, ...(a.results.setup.variant === undefined ? {} : { variant: a.results.setup.variant }) }), line: a.results.setup.at.line, choices, nearest: a.nearest && choicePage(a.nearest, a.results),
    left: a.left.filter(l => !found.has(l.name)).map(l => ({ name: l.words, why: l.why })), says: saysOf(a),
  };
}

function saysOf(a: Answer): string | undefined {
  if (a.idle) return idleWords(a.idle, a);
  if (a.choices.length > 0) return a.ended ? 'It was ended before all was looked at: there may be better ones.' : undefined;
  if (a.asked.length > 0 && !a.nearest) return a.left.length > 0 ? undefined : 'No value was found that the page can be computed with.';
  const { missed, against, inTheWay } = a.nearest!;
  const which = missed.length === 0 ? [] : [...new Set([...missed.map(m => m.wish), ...against].map(w => goalText({ goal: w.goal })))];
  const tries = `${a.tried === 1 ? 'One set of values was' : `${a.tried} sets of values were`} tried${a.ended ? ', and then it was ended' : ''}`;
  const says = which.length > 1 ? `No values meet ${which.map(w => `“${w}”`).join(' and ')} together: one of them has to give way.`
    : which.length === 1 ? `No value within what is written and what stands on the table meets “${which[0]!}”.`
      : inTheWay.length > 0 ? 'What meets the goals cannot be built: something is in the way each time.' : 'Written into the page it does not do the same.';
  return `${says} ${tries}.`;
}

function idleWords(idle: Idle, { asked, results }: Answer): string {
  switch (idle.kind) {
    case 'nothing open': return 'Nothing is written “?”. Write it for a value that is to be found, such as “by ? mm”, and what it is for, such as “aim mismatch: 0 mm”.';
    case 'no room': return `Nothing lies between the limits of ${idle.unknown.name}. Write the lower one behind “from”, and the higher one behind “to”.`;
    case 'no goal': return idle.goals.length === 0
      ? `Nothing says what ${asked.length === 1 ? `the ${asked[0]!.words} is` : 'they are'} for. Write a goal, such as “aim mismatch: 0 mm”, “aim beam ratio: 4:1” or “expect corner light > 40%”.`
      : `None of the goals (${idle.goals.map(g => `“${goalText(g)}”`).join(', ')}) changes with ${asked.map(a => `the ${a.words}`).join(', ')}: a reading may hold it, or no light goes that way. Write a goal for ${asked.length === 1 ? 'it' : 'them'}.`;
    case 'untold': {
      const [first] = idle.goals;
      const why = first && (first.why?.why ?? results.goals.find(g => g.goal === first.goal.goal)?.cell?.missing?.why);
      return `What is aimed at cannot be told: ${idle.goals.map(g => `“${goalText(g.goal)}”`).join(', ')}${why === undefined ? '' : `, since ${why}`}.`;
    }
  }
}

function choicePage(c: Choice, base: Results): ChoicePage {
  const { graph } = c.results;
  const goalCells = new Set(c.results.goals.map(g => g.cell));
  const goals = c.results.goals.filter(g => g.outcome !== 'not computed yet').map((g): GoalRow => {
    const missed = c.missed.find(m => m.wish.goal === g.goal);
    return {
      text: goalText(g), kind: g.goal.kind, outcome: g.outcome, shown: g.cell && !g.cell.missing ? showCell(graph, g.cell).text : 'unknown',
      missed: missed && `by ${by(missed.wish.cell, Math.abs(missed.by))}`,
    };
  });
  return {
    values: c.values.map(v => ({ name: v.words, text: valueText(v), remark: remarkOf(v, base) })), goals,
    becomes: c.becomes.filter(cell => !goalCells.has(cell)).map(cell => ({ name: shortName(cell, c.results), text: showCell(graph, cell).text })),
    told: [...c.inTheWay, ...c.findings.filter(f => !c.inTheWay.includes(f))].map(f => f.message),
    headline: goals.filter(g => g.shown !== 'unknown').map(g => `${nameOf(g.text)} ${g.shown}`).join(', '),
  };
}

/** The end of a stretch as it is said, in steps of a hundredth of it, and never beyond it. */
function inside(end: number, { range: [from, to] = [0, 0] }: Value, round: (v: number) => number): number {
  const step = 10 ** Math.floor(Math.log10((to - from) / 50 || 1));
  return round(end / step - (round === Math.ceil ? 1e-6 : -1e-6)) * step;
}

function nameOf(text: string): string {
  const end = text.search(/[:<>=]|\bfrom\b/);
  return end < 0 ? text : text.slice(0, end).trimEnd();
}
const by = (cell: Cell, amount: number): string => show(Number(amount.toPrecision(2)), cell.dim, 0, cell.unit);

/** As it is written in. */
export function valueText({ value, unit, dim }: Pick<Value, 'value' | 'unit' | 'dim'>): string {
  const use = unit ?? readableUnit(Math.abs(value), dim);
  const gap = use && (use.text === '%' || use.text === '°') ? '' : ' ';
  return `${digits(value, use).replace(/^-/, '−')}${use ? gap + use.text : ''}`;
}

function remarkOf(v: Value, base: Results): string {
  const unit = v.unit ?? readableUnit(Math.abs(v.value), v.dim);
  const share = unit?.percent === true;
  const parts: string[] = [];
  if (v.range) parts.push(`anything from ${show(inside(v.range[0], v, Math.ceil), v.dim, 0, unit)} to ${show(inside(v.range[1], v, Math.floor), v.dim, 0, unit)} will do`);
  else if (v.loose) parts.push('others will do as well, if the rest follows');
  if (v.wanted !== undefined) parts.push(`the end of what is written for it: ${show(v.wanted, v.dim, 0, unit)} is asked for`);
  if (v.u > 0 && !v.guesses) parts.push(share ? `${percentBand(Math.max(0, v.value - 2 * v.u), Math.min(1, v.value + 2 * v.u))} by what else is unsure` : `± ${show(2 * v.u, v.dim, 0, unit)} by what else is unsure`);
  if (v.guesses) parts.push(`a guess until the light is metered: it rests on ${v.guesses.slice(0, 2).join(', ')}${v.guesses.length > 2 ? ` and ${v.guesses.length - 2} more` : ''}`);
  if (v.at.uri !== base.setup.uri) parts.push(`written in ${v.at.uri.split('/').at(-1)!}, line ${v.at.line + 1}: write it there`);
  return parts.join('; ');
}
