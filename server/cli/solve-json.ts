/** The document of `solve --format json`, as `report.schema.json` describes it. */
import type { Answer, Choice } from '../features/solve/answer.ts';
import { answerPage } from '../features/solve/page.ts';
import { siUnit } from '../model/units.ts';
import type { Opened } from './files.ts';
import { beside, document, figure, finding, number, place, type Members, type Naming } from './json.ts';
import { goalText } from '../results/difference.ts';

export function solveJson(file: Opened, answers: readonly Answer[]): string {
  const naming = beside(file);
  return document('solve', { file: naming(file.uri), setups: answers.map(a => answer(a, naming)) });
}

function answer(a: Answer, naming: Naming): Members {
  return {
    name: a.results.setup.name, variant: a.results.setup.variant ?? null, place: place(a.results.setup.at, naming),
    asked: a.asked.map(x => ({ name: x.name, words: x.words, place: place(x.at, naming) })), says: answerPage(a).says ?? null,
    choices: a.choices.map(c => choice(c, naming)), nearest: a.nearest ? choice(a.nearest, naming) : null, left: a.left.map(l => ({ name: l.name, why: l.why })), tried: a.tried, ended: a.ended,
  };
}

function choice(c: Choice, naming: Naming): Members {
  const { graph } = c.results;
  return {
    values: c.values.map(v => ({
      name: v.name, words: v.words, place: place(v.at, naming), value: number(v.value), unit: siUnit(v.dim) || '1', u: number(v.u), loose: v.loose, range: v.range ? { low: number(v.range[0]), high: number(v.range[1]) } : null,
      guesses: v.guesses ?? [], wanted: v.wanted === undefined ? null : number(v.wanted),
    })),
    goals: c.results.goals.map(g => {
      const missed = c.missed.find(m => m.wish.goal === g.goal);
      return { kind: g.goal.kind, text: goalText(g), outcome: g.outcome, result: g.cell ? figure(graph, g.cell, naming) : null, missedBy: missed ? number(missed.by) : null };
    }),
    becomes: c.becomes.map(cell => figure(graph, cell, naming)), findings: c.findings.map(f => finding(f, naming)), inTheWay: c.inTheWay.map(f => f.code),
  };
}
