/** What is shown when pointing at a place of the text: a figure with its chain of numbers, a thing with its facts, or the meaning of a word. */
import type { Node, TokenSpan } from '../../../grammar/tree.ts';
import type { Snapshot } from '../../analysis.ts';
import { findCheck } from '../../checks/registry.ts';
import { factKey, factOn, type FactLine } from '../../model/bind/facts.ts';
import { openingWords } from '../../model/bind/things.ts';
import { factIndex, factsOf, kindOf, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../../model/things/index.ts';
import type { Kind } from '../../model/things/kind.ts';
import type { Place } from '../../model/model.ts';
import { factText, overrideOf } from '../../model/overrides.ts';
import type { Results } from '../../results/plan.ts';
import { variantsOf, type VariantResults } from '../../results/variants.ts';
import { showCell } from '../chain.ts';
import { letAt, nodeAt, referenceAt, setupAt, thingDeclaredAt, thingWhere } from '../cursor.ts';
import { figureWords } from './chain.ts';
import { beamWordsOf, goalWords, insteadWords, legWordsOf, setupWords, thingWords } from './figures.ts';
import { placeWords } from './places.ts';
import { movedWords, readingWords } from './readings.ts';
import { factWords, kindWords, unitWords } from './vocabulary.ts';
import { shotWords } from '../why/shot.ts';
import { blocks, escaped, note, strong } from '../markdown.ts';
import { variantWords } from '../report/variants.ts';

export interface Hover {
  /** what it is about */
  readonly at: Place;
  readonly markdown: string;
}

const SILENT: readonly TokenSpan['type'][] = ['comment', 'doc', 'open', 'close', 'bad'];

export function hoverAt(snapshot: Snapshot, line: number, character: number): Hover | undefined {
  const tree = snapshot.tree.lines[line];
  const token = tree?.tokens.find(t => character >= t.start && character < t.end) ?? tree?.tokens.find(t => t.end === character);
  const node = nodeAt(snapshot.tree, line);
  if (!token || !node || SILENT.includes(token.type)) return undefined;
  const text = node.line.text.slice(token.start, token.end);
  const at = { uri: snapshot.uri, line, start: token.start, end: token.end };
  const markdown = token.type === 'unit' ? unitWords(text) : changeWords(snapshot, node, at) ?? nameWords(snapshot, at) ?? lineWords(snapshot, node, at, resultsAt(snapshot, line));
  return markdown === undefined ? undefined : { at, markdown: withNote(markdown, node.doc) };
}

/** The note above a line belongs to whatever is shown of it. */
function withNote(markdown: string, doc: string | undefined): string {
  const own = doc === undefined ? '' : note(doc);
  return own === '' || markdown.includes(own) ? markdown : blocks(markdown, own);
}

/** The name of a thing or of a `let`, declared or referred to. */
function nameWords(snapshot: Snapshot, at: Place): string | undefined {
  const r = resultsAt(snapshot, at.line);
  const thing = thingDeclaredAt(snapshot, referenceAt(snapshot, at.line, at.start)?.target ?? at);
  // The word that opens `room { … }` is kind and name at once: its meaning is asked for.
  if (thing && !(thing.at.line === at.line && thing.at.start === at.start && thing.id === thing.kind.word)) return thingWords(thing, r);
  const named = letAt(snapshot, at.line, at.start);
  const cell = named && r?.graph.find(named.let.name);
  return cell && figureWords(r!.graph, cell);
}

/** The name of a variant, or what a line of one changes. */
function changeWords(snapshot: Snapshot, node: Node, at: Place): string | undefined {
  const base = setupAt(snapshot, node.at);
  const own = base && variantAt(base, node.at);
  if (!own) return undefined;
  if (own.variant.node === node) return variantWords(own, base, own.results);
  // Before the colon stands what is changed; of a leg the names of its ends, which have words of their own.
  const change = own.variant.changes.find(c => c.node.at === node.at && (c.kind === 'fact' || c.kind === 'leg'));
  if (at.start >= (node.line.colon ?? Infinity)) return undefined;
  if (change?.kind === 'leg') return node.line.subject ? undefined : legAt(own.results, change.leg.node);
  const cell = change?.kind === 'fact' ? own.results.graph.find(`${change.thing.id}.${change.key}`) : undefined;
  return change?.kind === 'fact' ? factWords(change.fact.fact, cell && !cell.missing ? `${strong(showCell(own.results.graph, cell).text)} for ${escaped(change.thing.id)}, in this variant.` : undefined) : undefined;
}

/** The results that hold at a line: those of the variant that it stands in, else those of the setup. */
function resultsAt(snapshot: Snapshot, line: number): Results | undefined {
  const base = setupAt(snapshot, line);
  return base && (variantAt(base, line)?.results ?? base);
}
const variantAt = (base: Results, line: number): VariantResults | undefined =>
  (base.setup.variants.some(v => line >= v.node.at && line <= v.node.end) ? variantsOf(base).find(({ variant: v }) => line >= v.node.at && line <= v.node.end) : undefined);

/** What a place in a line means, where it is no name. */
function lineWords(snapshot: Snapshot, node: Node, at: Place, r: Results | undefined): string | undefined {
  const { line } = node;
  if (line.kind === 'leg') return r && legAt(r, node);
  const head = line.head?.text;
  const beam = head === 'beam' ? [...(r?.setup.beams.values() ?? [])].find(b => b.node === node) : undefined;
  if (beam) return beamWordsOf(beam, r!);
  const goal = r?.goals.find(g => g.goal.node === node);
  if (goal) return goalWords(goal, r!);
  const reading = r?.setup.readings.find(x => x.node === node);
  if (reading) return readingWords(reading, r!);
  const moved = r?.setup.moved.find(m => m.node === node);
  if (moved) return movedWords(moved, r!);
  if (head === 'accept') return acceptWords(line.text.slice(at.start, at.end));
  if (head === 'shot') return shotWords(snapshot, at.line);
  if (head === 'setup') return setupAt(snapshot, at.line)?.setup.node === node ? setupWords(r!) : undefined;
  const kind = opening(node, at);
  if (kind && line.colon === undefined) return kindWords(kind);
  // On a clause or its value: where the thing of that line stands.
  const placed = line.clauses.some(c => at.start >= c.start && at.end <= c.end) ? [...(r?.setup.things.values() ?? [])].find(t => t.node === node) : undefined;
  if (placed) return placeWords(placed, r!) || undefined;
  const found = line.colon === undefined ? undefined : factOf(node, r);
  return found && factWords(found.fact, ownValue(found, node, snapshot, r));
}

function legAt(r: Results, node: Node): string | undefined {
  for (const [leg] of r.legs) if (leg.node === node) return legWordsOf(leg, r);
  return undefined;
}

/** The kind whose words the cursor is on. */
function opening(node: Node, at: Place): Kind | undefined {
  const words = openingWords(node);
  const found = kindOf(words[0]?.text ?? '', words[1]?.text);
  return found && at.start < words[found.length - 1]!.end ? found.kind : undefined;
}

function factOf(node: Node, r: Results | undefined): FactLine | undefined {
  const parent = node.parent;
  if (!parent) return undefined;
  const head = parent.line.head?.text ?? '';
  const words = openingWords(parent);
  const kind = kindOf(head, words[1]?.text)?.kind ?? r?.setup.things.get(head)?.kind;
  const known = kind ? factsOf(kind) : { setup: SETUP_FACTS, shot: SHOT_FACTS, process: PROCESS_FACTS }[head];
  return known && factOn(node.line, factIndex(known));
}

/** What it is of the thing at hand: as written, else as it comes out of what is written. */
function ownValue(found: FactLine, node: Node, snapshot: Snapshot, r: Results | undefined): string | undefined {
  const owner = thingWhere(snapshot, t => t.node === node.parent);
  const over = owner && overrideOf(owner, factKey(found));
  const fact = over?.fact ?? owner?.facts.get(factKey(found));
  const cell = fact?.value.kind === 'formula' ? r?.graph.find(`${owner!.id}.${factKey(found)}`) : undefined;
  const text = cell && r!.graph.isPlanned(cell) && !cell.missing ? showCell(r!.graph, cell).text : fact && factText(fact);
  const own = text === undefined || text === '' ? undefined : `${strong(text)} for ${escaped(owner!.id)}`;
  return own && `${own}${insteadWords(over)}.`;
}

function acceptWords(code: string): string | undefined {
  const check = findCheck(code);
  return check && `${strong(code)}: ${check.title}. \`accept\` silences it here and keeps the reason.`;
}
