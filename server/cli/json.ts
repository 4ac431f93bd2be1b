/** The documents that `--format json` prints, as `report.schema.json` describes them. */
import { dirname } from 'node:path';
import type { Snapshot } from '../analysis.ts';
import type { Check, Finding } from '../checks/check.ts';
import { chainOf, showCell, type Chain, type Link } from '../features/chain.ts';
import { notesOf } from '../features/notes.ts';
import { mountAngles, type MountAngles } from '../features/report/angles.ts';
import { stepsOf } from '../features/report/losses.ts';
import { planText, verdictOf } from '../features/report/readings.ts';
import type { Verdict } from '../features/report/verdict.ts';
import type { Suspect, Why } from '../features/why.ts';
import { changeText } from '../features/report/variants.ts';
import type { Place, Reading } from '../model/model.ts';
import { factText, overridesOf, type Override } from '../model/overrides.ts';
import { LENGTH, siUnit } from '../model/units.ts';
import type { Ladder } from '../results/losses/losses.ts';
import type { GoalResult } from '../results/goals.ts';
import type { Cell, Graph, Missing } from '../results/graph.ts';
import type { Results } from '../results/plan.ts';
import { variantsOf, type VariantResults } from '../results/variants.ts';
import { pathFrom, type Opened, type Trouble } from './files.ts';
import { countOf } from '../features/listed.ts';

const SCHEMA_VERSION = '1.0';
export type Members = Readonly<Record<string, unknown>>;
/** How the file of an address is called in a document. */
export type Naming = (uri: string) => string;

export const document = (kind: string, body: Members): string => `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, document: kind, ...body }, null, 2)}\n`;

/** Places are relative to the working folder, since several files may be named. */
export function checkJson(files: readonly { readonly file: Opened; readonly snapshot: Snapshot }[], troubles: readonly Trouble[]): string {
  const naming: Naming = uri => files.find(f => f.file.uri === uri)?.file.name ?? pathFrom(process.cwd(), uri);
  return document('check', {
    files: files.map(({ file, snapshot }) => ({ file: file.name, findings: snapshot.findings.map(f => finding(f, naming)) })),
    unread: troubles.map(t => t.message),
    summary: { ...countOf(files.flatMap(f => f.snapshot.findings)) },
  });
}

/** Places are relative to the folder of the file, so that the document is the same wherever it is made. */
export function reportJson(file: Opened, snapshot: Snapshot, results: readonly Results[], findings: readonly Finding[]): string {
  const naming = beside(file);
  return document('report', {
    file: naming(file.uri), uses: snapshot.files.filter(f => f !== file.uri && file.texts.text(f) !== undefined).map(naming),
    setups: results.map(r => setup(r, naming)),
    findings: findings.map(f => finding(f, naming)), summary: { ...countOf(findings) },
  });
}

export function explanationJson(file: Opened, r: Results, cell: Cell, asked: string, chain: Chain): string {
  const naming = beside(file);
  const row = (l: Link): Members => {
    const of = l.name === cell.name ? cell : r.graph.find(l.name)!;
    return {
      ...figure(r.graph, of, naming), depth: l.depth, formula: l.formula ?? null, source: l.source ?? null, reason: l.reason ?? null,
      share: l.share === undefined ? null : number(l.share), place: l.at ? place(l.at, naming) : null,
    };
  };
  return document('explanation', {
    file: naming(file.uri), setup: r.setup.name, variant: r.setup.variant ?? null, asked, method: chain.method, result: row(chain.result), chain: chain.links.map(row), guesses: chain.guesses.map(g => g.name),
  });
}

export function whyJson(file: Opened, answers: readonly Why[]): string {
  const suspect = (s: Suspect): Members => ({ name: s.name, cause: s.cause, evidence: s.evidence, stops: number(s.stops), findings: s.codes, test: s.test });
  return document('why', {
    file: beside(file)(file.uri),
    setups: answers.map(w => ({ name: w.setup, variant: w.variant ?? null, seen: w.seen ?? null, outcomes: w.outcomes, suspects: w.suspects.map(suspect), untold: w.untold.map(suspect), cleared: w.cleared.map(suspect) })),
  });
}

export const pageJson = (check: Check): string => document('page', {
  code: check.code, severity: check.severity, title: check.title, page: check.page, example: check.example, files: { ...check.files },
});

export const beside = (file: Opened): Naming => uri => pathFrom(dirname(file.path), uri);

function setup(r: Results, naming: Naming): Members {
  const hologram = r.setup.facts.get('hologram')?.value;
  const guesses = new Map<string, Members>();
  const results = resultCells(r).map(cell => {
    const chain = chainOf(r.graph, cell);
    for (const g of chain.guesses) guesses.set(g.name, { name: g.name, words: g.words, value: number(g.value), unit: unitOf(r.graph.find(g.name)!), shown: g.text, reason: g.reason ?? null });
    return { ...figure(r.graph, cell, naming), assumes: chain.guesses.map(g => g.name), place: cell.at ? place(cell.at, naming) : null };
  });
  return {
    name: r.setup.name, hologram: hologram?.kind === 'words' ? hologram.text : null, place: place(r.setup.at, naming),
    results, guesses: [...guesses.values()], aliases: Object.fromEntries([...r.aliases].map(([a, cells]) => [a, cells.map(c => c.name)])),
    goals: r.goals.map(g => goal(g, naming)), variant: r.setup.variant ?? null, note: r.setup.doc ?? null, variants: variantsOf(r).map(v => variantJson(v, r, naming)), notes: notesOf(r.setup).map(n => ({ about: n.about, text: n.text, line: n.line + 1 })), overrides: overridesOf(r.setup).map(o => override(o, naming)), readings: r.setup.readings.map(x => readingJson(x, r, naming)), losses: r.losses.shown() ? r.losses.ladders.map(l => lossesJson(l, r)) : [], angles: mountAngles(r).map(a => anglesJson(a, r, naming)),
  };
}

/** What holds one object arm back, the largest first; in stops, which add. */
const lossesJson = (l: Ladder, r: Results): Members => ({
  plate: l.plate.id, arm: l.pair.arm.name, object: l.pair.arm.object!.id, recorded: l.recorded && !l.recorded.missing ? l.recorded.name : null,
  causes: stepsOf(l, r).map(s => ({ cause: s.cause, result: s.rung.loss?.name ?? null, from: s.rung.from?.name ?? null, stops: s.stops ? { low: number(s.stops.low), high: number(s.stops.high) } : null, shown: s.text, remark: s.remark })),
});

/** How a mirror or a splitter is set. */
const anglesJson = (a: MountAngles, { graph }: Results, naming: Naming): Members => ({
  thing: a.thing.id, incidence: figure(graph, a.incidence, naming), fold: figure(graph, a.fold, naming), heading: a.heading ? figure(graph, a.heading, naming) : null, tilt: figure(graph, a.tilt, naming),
  secondSpot: a.secondSpot ? { offset: figure(graph, a.secondSpot.offset, naming), angle: a.secondSpot.angle ? figure(graph, a.secondSpot.angle, naming) : null, share: a.secondSpot.share ? figure(graph, a.secondSpot.share, naming) : null } : null,
});

/** A reading as written, and what became of it. */
function readingJson(x: Reading, r: Results, naming: Naming): Members {
  const v = verdictOf(x, r);
  const q = x.value?.kind === 'quantity' ? x.value.quantity : undefined;
  return {
    words: x.words, measured: x.measured?.kind ?? null, place: place(x.at, naming), value: number(q?.value), unit: q ? siUnit(q.dim) || '1' : null, by: x.by?.name ?? null, on: x.on ?? null, fate: v.fate,
    result: v.of ?? null, length: number(v.length), tells: tells(v), planned: number(v.planned), shown: [planText(v), v.words].filter(Boolean).join('; '),
  };
}

/** What a reading says by what is known of its instrument, whatever it was read of. */
function tells({ length, tells: light }: Verdict): Members | null {
  const told = light ?? (length === undefined ? undefined : { value: length, dim: LENGTH });
  return told ? { value: number(told.value), unit: siUnit(told.dim) || '1' } : null;
}

/** What a thing says in the place of the item of an inventory that it is. */
const override = (o: Override, naming: Naming): Members => ({ name: `${o.thing.id}.${o.key}`, text: factText(o.fact), place: place(o.fact.at, naming), item: o.item, instead: o.instead, itemPlace: place(o.at, naming) });

/** What a variant changes, and which results differ: as they are written, and in the variant. */
function variantJson({ variant: v, results: own, difference }: VariantResults, base: Results, naming: Naming): Members {
  return {
    name: v.name, note: v.doc ?? null, place: place(v.at, naming), changes: v.changes.map(c => ({ text: changeText(c), place: place(c.at, naming) })),
    results: difference.results.map(d => ({ name: d.name, written: d.before ? figure(base.graph, d.before, naming) : null, variant: d.after ? figure(own.graph, d.after, naming) : null })),
    goals: own.goals.map(g => goal(g, naming)),
  };
}

/** Every cell that has a name of its own in `server/core.md`, in the order in which the text makes them. */
function resultCells(r: Results): Cell[] {
  const cells = new Set<Cell>([...[...r.legs].map(([, cell]) => cell), ...r.published]);
  for (const p of r.plates) {
    for (const a of p.arms) cells.add(a.coherencePath);
    for (const x of p.pairs) for (const part of x.parts) cells.add(part.mismatch);
  }
  // What moves is only worked out when somebody asks, so that its place in the graph says nothing.
  return [...[...cells].sort((a, b) => a.index - b.index), ...r.movement.things().flatMap(d => [d.delicacy, d.allowed])];
}

export function figure(graph: Graph, cell: Cell, naming: Naming): Members {
  const shown = showCell(graph, cell);
  const needs = rootsOf(cell);
  return {
    name: cell.name, words: cell.words, value: number(shown.value), unit: unitOf(cell), u: number(shown.u), band: shown.band ? { low: number(shown.band.low), high: number(shown.band.high) } : null,
    origin: cell.origin, status: needs.length === 0 ? 'computed' : needs.every(n => UNKNOWN.has(n.code)) ? 'unknown' : 'failed', shown: shown.text,
    needs: needs.map(n => ({ code: n.code, why: n.why, place: n.at ? place(n.at, naming) : null })),
  };
}

/** Reasons that say no more than that something is not written, or not computed yet. */
const UNKNOWN: ReadonlySet<string> = new Set(['value-missing', 'unknown-asked', 'not-computed-yet']);

/** The problems at the roots of a cell without a value, each once. */
function rootsOf(cell: Cell, seen = new Set<Cell>(), found = new Map<string, Missing>()): Missing[] {
  if (cell.missing && !seen.has(cell)) {
    seen.add(cell);
    const lost = cell.inputs.filter(c => c.missing);
    if (lost.length === 0) found.set(`${cell.missing.code} ${cell.missing.why}`, cell.missing);
    for (const c of lost) rootsOf(c, seen, found);
  }
  return [...found.values()];
}

function goal(g: GoalResult, naming: Naming): Members {
  const { line } = g.goal.node;
  return {
    kind: g.goal.kind, text: line.text.slice(g.goal.at.start, line.comment?.start).trim(), asked: g.goal.result, result: g.cell?.name ?? null, compare: g.goal.op ?? null,
    limits: g.limits.map(number), unit: g.cell ? unitOf(g.cell) : null, value: number(g.value), outcome: g.outcome, place: place(g.goal.at, naming),
  };
}

export function finding(f: Finding, naming: Naming): Members {
  return {
    code: f.code, severity: f.severity, setup: f.setup ?? null, variant: f.variant ?? null, subject: f.subject, place: place(f.at, naming), message: f.message,
    data: Object.fromEntries(Object.entries(f.data).map(([k, v]) => [k, typeof v === 'number' ? number(v) : v])), accepted: f.accepted ?? null,
  };
}

/** Lines and columns count from 1, columns in UTF-16 units; `endColumn` is the column behind the last character. */
export const place = (at: Place, naming: Naming): Members => ({ file: naming(at.uri), line: at.line + 1, column: at.start + 1, endColumn: at.end + 1 });
const unitOf = (cell: Cell): string => siUnit(cell.dim) || '1';

/** Twelve digits: what is behind them differs between machines. */
export function number(v: number | undefined): number | null {
  return v === undefined || !Number.isFinite(v) ? null : Number(v.toPrecision(12)) + 0;
}
