/** The shots of pages as plain data: what was set, on which plate of which box, and what came of it. */
import type { Node } from '../../../grammar/tree.ts';
import type { Snapshot } from '../../analysis.ts';
import { factOn, readFact } from '../../model/bind/facts.ts';
import { noSuchDate } from '../../model/calendar.ts';
import type { Place, Setup, Thing } from '../../model/model.ts';
import { itemName } from '../../model/overrides.ts';
import { placeIn } from '../../model/place.ts';
import type { Quantity } from '../../model/quantity.ts';
import { factIndex, PROCESS_FACTS, SHOT_FACTS } from '../../model/things/index.ts';
import type { Fact } from '../../model/things/kind.ts';
import { NUMBER } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import { shotsOf, type Shot as Written } from '../../review/as-shot.ts';

export interface Shot {
  readonly snapshot: Snapshot;
  readonly results: Results;
  readonly setup: Setup;
  /** `7` */
  readonly name: string;
  /** `2026-02-11`, with a time where one is written; undefined where nothing says when */
  readonly on: string | undefined;
  readonly at: Place;
  readonly numbers: ReadonlyMap<string, Quantity>;
  readonly words: ReadonlyMap<string, string>;
  /** the plate of the setup; undefined where it has several, and the shot does not say which */
  readonly plate: Thing | undefined;
  /** `lab.fine-grain`, else the name of a plate that is of no inventory */
  readonly stock: string | undefined;
  readonly batch: string | undefined;
  /** the developer of the processing that names it */
  readonly developer: string | undefined;
}

/** All shots of a page, in the order of its text. */
export const shotsIn = (snapshot: Snapshot): Shot[] => shotsOf(snapshot).flatMap(shot => { const results = snapshot.results.find(r => r.setup === shot.setup); return results ? [told(shot, results, snapshot)] : []; });

function told({ node, name, on }: Written, results: Results, snapshot: Snapshot): Shot {
  const { setup } = results;
  const { numbers, words } = factsIn(node, SHOT_FACTS);
  const plates = [...setup.things.values()].filter(t => t.kind.word === 'plate');
  const said = words.get('plate') ?? '';
  const named = plates.filter(p => new RegExp(`(?:^|[^\\p{L}\\p{N}])${p.id.replace(/[^\p{L}\p{N}]/gu, '\\$&')}(?![\\p{L}\\p{N}])`, 'u').test(said));
  const plate = plates.length === 1 ? plates[0] : named.length === 1 ? named[0] : undefined;
  const own = plate?.facts.get('batch')?.value;
  // `plate: "box 3, number 5"`: the box is what stands before the comma.
  const batch = words.get('batch') ?? (said.includes(',') ? said.slice(0, said.indexOf(',')).trim() : undefined) ?? (own?.kind === 'words' ? own.text : undefined);
  const written = plate?.facts.get('stock')?.value;
  return {
    snapshot, results, setup, name, on: [on, words.get('date')].find(d => d !== undefined && noSuchDate(d) === undefined), at: placeIn(setup.uri, node, node.line.subject ?? node.line.head!), numbers, words, plate, batch,
    stock: plate && (itemName(plate) ?? (written?.kind === 'words' ? written.text : `${plate.id} of “${setup.name}”`)), developer: developerOf(setup, name),
  };
}

/** The facts of a block that can be read; what cannot is a finding of its own. */
function factsIn(node: Node, known: readonly Fact[]): { readonly numbers: Map<string, Quantity>; readonly words: Map<string, string> } {
  const numbers = new Map<string, Quantity>();
  const words = new Map<string, string>();
  for (const child of node.children) {
    const on = factOn(child.line, factIndex(known));
    const { value } = child.line;
    if (!on || !value || child.line.issue) continue;
    const read = readFact(child.line, value, on.fact.type);
    if ('problem' in read) continue;
    const { phrase } = on.fact;
    if (read.ok.kind === 'quantity') numbers.set(phrase, read.ok.quantity);
    else if (read.ok.kind === 'ratio') numbers.set(phrase, { value: read.ok.value, dim: NUMBER });
    else if (read.ok.kind === 'words') words.set(phrase, on.fact.type.type === 'text' && value.kind !== 'string' ? child.line.text.slice(value.start, child.line.clauses.at(-1)?.end ?? value.end).trim() : read.ok.text);
  }
  return { numbers, words };
}

function developerOf(setup: Setup, shot: string): string | undefined {
  for (const node of setup.node.children) {
    if (node.line.head?.text !== 'process') continue;
    const { words } = factsIn(node, PROCESS_FACTS);
    if ((words.get('shots') ?? '').split(/[\s,;]+/).includes(shot)) return words.get('developer');
  }
  return undefined;
}
