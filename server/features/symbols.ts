/** The outline of a file: inventories and setups; in them things, beams with their legs, variants and shots. */
import type { Snapshot } from '../analysis.ts';
import { show } from '../model/show.ts';
import type { Beam, Leg, Place, Thing } from '../model/model.ts';
import type { Results } from '../results/plan.ts';
import { showCell } from './chain.ts';
import { nodeAt } from './cursor.ts';

export interface OutlineItem {
  readonly kind: 'setup' | 'inventory' | 'thing' | 'beam' | 'leg' | 'variant' | 'shot';
  readonly name: string;
  /** the kind of a thing, the length of a leg or arm; may be empty */
  readonly detail: string;
  /** where its name stands */
  readonly at: Place;
  /** last line of its block or legs */
  readonly end: number;
  readonly children: readonly OutlineItem[];
}

export function symbolsOf(snapshot: Snapshot): OutlineItem[] {
  const setups = snapshot.results.map(setupSymbol);
  const inventories = snapshot.model.inventories.map((i): OutlineItem => {
    const things = [...i.things.values()].map(thingSymbol);
    return { kind: 'inventory', name: i.name, detail: '', at: i.at, end: nodeAt(snapshot.tree, i.at.line)?.end ?? i.at.line, children: things };
  });
  return [...inventories, ...setups].sort((a, b) => a.at.line - b.at.line);
}

function setupSymbol(r: Results): OutlineItem {
  const { setup } = r;
  const named = (kind: 'variant' | 'shot') => (x: { name: string; at: Place; node: { end: number } }): OutlineItem => ({ kind, name: x.name, detail: '', at: x.at, end: x.node.end, children: [] });
  const children = [
    ...[...setup.things.values()].map(thingSymbol), ...[...setup.beams.values()].map(b => beamSymbol(b, r)), ...setup.variants.map(named('variant')), ...setup.shots.map(named('shot')),
  ].sort((a, b) => a.at.line - b.at.line);
  const hologram = setup.facts.get('hologram')?.value;
  return { kind: 'setup', name: setup.name, detail: hologram?.kind === 'words' ? hologram.text : '', at: setup.at, end: setup.node.end, children };
}

const thingSymbol = (t: Thing): OutlineItem => ({ kind: 'thing', name: t.id, detail: t.kind.word, at: t.at, end: t.node.end, children: [] });

function beamSymbol(beam: Beam, r: Results): OutlineItem {
  const arms = r.plates.flatMap(p => p.arms).filter(a => a.arm.beam === beam);
  return { kind: 'beam', name: beam.id, detail: arms.map(a => showCell(r.graph, a.length).text).join(', '), at: beam.at, end: beam.node.end, children: beam.legs.map(l => legSymbol(l, r)) };
}

/** Lengths of legs are given without their uncertainty: an outline is asked for at every edit. */
function legSymbol(leg: Leg, { legs, graph }: Results): OutlineItem {
  const cell = legs.get(leg);
  const value = cell && graph.value(cell);
  return { kind: 'leg', name: `→ ${leg.to || '?'}`, detail: value === undefined ? '' : show(value, cell!.dim, 0, cell!.unit), at: leg.at, end: leg.node.at, children: [] };
}
