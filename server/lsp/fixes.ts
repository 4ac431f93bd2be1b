/** Fixes of findings: looked for in steps, and kept as long as the text is the same. */
import type { Snapshot } from '../analysis.ts';
import type { Finding } from '../checks/check.ts';
import type { Fix } from '../features/fixes/fixes.ts';
import type { Document, Documents } from './documents.ts';
import { minuteOf } from './stamp.ts';
import { later } from './later.ts';
import { inSteps } from './steps.ts';

export class Fixes {
  private readonly known = new WeakMap<Finding, Promise<readonly Fix[]>>();

  constructor(private readonly documents: Documents) {}

  /** None once the text has moved on. */
  async of(finding: Finding, s: Snapshot, d: Document): Promise<readonly Fix[]> {
    let known = this.known.get(finding);
    if (!known) this.known.set(finding, known = this.look(finding, s, d));
    return known;
  }

  private async look(finding: Finding, s: Snapshot, d: Document): Promise<readonly Fix[]> {
    const { fixing } = await later();
    return await inSteps(() => fixing(s, finding, this.documents.textsFor(d), minuteOf(new Date())), () => d.kept?.snapshot === s) ?? [];
  }
}
