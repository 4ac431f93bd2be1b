/** Slips in what is written: a comma for a point, the unit of another quantity, a thousandfold of what was read, sides of an opening the wrong way round. */
import type { Snapshot } from '../../analysis.ts';
import { text } from '../../checks/check.ts';
import type { Finding } from '../../checks/check.ts';
import { within } from '../../model/place.ts';
import { unitsFor } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import type { Candidate } from './candidate.ts';

/** Of units that fit the commonest come first; more than that nobody reads through. */
const MOST = 3;

/** `r`: the setup that the finding is about, where there is one. */
export function* slipFixes(finding: Finding, r: Results | undefined, { uri, tree }: Snapshot): Generator<Candidate> {
  const { at, data } = finding;
  const written = at.uri === uri ? tree.lines[at.line]?.text.slice(at.start, at.end) : undefined;
  if (written === undefined) return;
  switch (finding.code) {
    case 'decimal-comma': {
      const found = text(data, 'found');
      const start = tree.lines[at.line]!.text.indexOf(found, at.start);
      if (start >= 0) yield change(finding, start, found, found.replace(',', '.'));
      break;
    }
    case 'wrong-unit': {
      const [unit, units] = [text(data, 'unit'), text(data, 'units')];
      const start = unit === '' ? -1 : written.lastIndexOf(unit);
      if (start >= 0) for (const other of units.split(', ').slice(0, MOST)) if (other !== '') yield change(finding, at.start + start, unit, other);
      break;
    }
    case 'light-unlikely': {
      const reading = r?.setup.readings.find(x => x.words === finding.subject && x.node.at === at.line);
      const value = reading?.value?.kind === 'quantity' ? reading.value.quantity : undefined;
      const line = tree.lines[at.line]!.text;
      const start = value?.unit && reading?.valueAt ? line.indexOf(value.unit.text, reading.valueAt.start) : -1;
      if (value?.unit && start >= 0) for (const other of unitsFor(value.dim)) if (other !== value.unit.text) yield change(finding, start, value.unit.text, other);
      break;
    }
    case 'slit-along-reference': {
      const size = r?.setup.things.get(text(data, 'hologram'))?.facts.get('size');
      const sides = size?.at.uri === uri ? /^(\d[\d.]*(?:\s*[^\s\dx×.]+)?)(\s*[x×]\s*)(\d[\d.]*)/.exec(tree.lines[size.at.line]!.text.slice(size.at.start, size.at.end)) : undefined;
      if (size && sides) yield {
        edits: [{ at: within(size.at, { start: size.at.start, end: size.at.start + sides[0].length }), newText: `${sides[3]!}${sides[2]!}${sides[1]!}` }],
        title: () => `Turn what is open of ${text(data, 'hologram')} by a quarter: ${sides[3]!}${sides[2]!}${sides[1]!} instead of ${sides[0]}`,
      };
      break;
    }
    default:
  }
}

const change = ({ at }: Finding, start: number, from: string, to: string): Candidate => ({ edits: [{ at: within(at, { start, end: start + from.length }), newText: to }], title: () => `Write “${to}” instead of “${from}”` });
