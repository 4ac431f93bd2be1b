/** What is written down that night and looked up next winter: the words of a shot, so that they go onto the page next morning. */
import type { Results } from '../../results/plan.ts';
import { blank, type Block, type Section } from '../blocks/blocks.ts';

const LINES = 3;

export function notes(r: Results): Section {
  const log: Block[] = r.plates.length === 0 ? [] : [
    { kind: 'blanks', blanks: [blank('shot', '', 3), blank('on', '', 4), blank('plate', '', 5)] },
    { kind: 'blanks', blanks: [blank('exposure', 's'), blank('settle', 'min')] },
    { kind: 'blanks', blanks: [blank('power', 'mW'), blank('beam ratio', ':1')] },
    { kind: 'blanks', blanks: [blank('temperature', '°C'), blank('humidity', '%')] },
    { kind: 'blanks', blanks: [blank('outcome')] },
  ];
  return { name: 'notes', title: 'Notes', blocks: [...log, { kind: 'lines', count: LINES }] };
}
