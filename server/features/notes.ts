/** The notes of a setup: what stands behind `///` above its statements and legs. */
import type { Node } from '../../grammar/tree.ts';
import type { Setup } from '../model/model.ts';
import { statementText } from '../model/written.ts';

export interface Note {
  /** the line that it is about, as written: `mirror M1 at (1100, 100) mm` */
  readonly about: string;
  readonly text: string;
  /** that line, from 0 */
  readonly line: number;
}

/** In the order of the text. That above the setup, and those above variants, are shown with these. */
export function notesOf({ node }: Setup): Note[] {
  const notes: Note[] = [];
  const look = (n: Node): void => {
    if (n.doc !== undefined && n.line.head?.text !== 'variant') notes.push({ about: statementText(n.line), text: n.doc.replace(/\n+/g, ' '), line: n.at });
    n.legs.forEach(look);
    n.children.forEach(look);
  };
  for (const child of node.children) look(child);
  return notes;
}
