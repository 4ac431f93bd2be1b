/** An edit that may cure a finding, before it is tried. */
import type { Snapshot } from '../../analysis.ts';
import type { Edit } from '../../model/edits.ts';

export interface Candidate {
  readonly edits: readonly Edit[];
  /** one of many places: tried by the check of the finding first */
  readonly moves?: true;
  /** things one of which is moved or set otherwise by it; none where nothing on the table is */
  readonly things?: readonly string[];
  /** the thing of which the readings no longer count then: that is said by the fix, and no fault of it */
  readonly anew?: string;
  /** what it is called, once the page is known that it makes */
  readonly title: (after: Snapshot) => string;
}
