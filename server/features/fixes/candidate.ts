/** An edit that may cure a finding, before it is tried. */
import type { Snapshot } from '../../analysis.ts';
import type { Edit } from '../../model/edits.ts';

export interface Candidate {
  readonly edits: readonly Edit[];
  /** one of many places: tried by the check of the finding first */
  readonly moves?: true;
  /** what it is called, once the page is known that it makes */
  title(after: Snapshot): string;
}
