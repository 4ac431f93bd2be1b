/** Which blocks of the program have run, by V8's own count: an input that reaches a new one is worth changing further. */
import { Session, type Profiler } from 'node:inspector';

/** Of each function, which of its blocks have not run yet; of one that has not run at all nothing. */
export type Known = Map<string, ReadonlySet<string>>;

export class Coverage {
  private readonly session = new Session();
  /** @param isOwn whether a script is of the program */
  constructor(private readonly isOwn: (url: string) => boolean) {
    this.session.connect();
    this.session.post('Profiler.enable');
    this.session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  /** True where blocks ran since the last look that are not known to have run; then they are. */
  isNew(known: Known): boolean {
    let found = false;
    for (const script of this.take()) {
      if (!this.isOwn(script.url)) continue;
      for (const { ranges: [whole, ...parts] } of script.functions) {
        if (!whole || whole.count === 0) continue;
        const key = `${whole.startOffset} ${whole.endOffset}`;
        const idle = new Set(parts.filter(r => r.count === 0).map(r => `${r.startOffset} ${r.endOffset}`));
        const before = known.get(key);
        const left = before ? new Set([...before].filter(r => idle.has(r))) : idle;
        if (!before || left.size < before.size) {
          found = true;
          known.set(key, left);
        }
      }
    }
    return found;
  }

  close(): void { this.session.disconnect(); }

  private take(): Profiler.ScriptCoverage[] {
    let result: Profiler.ScriptCoverage[] = [];
    // On its own thread a session answers before it returns.
    this.session.post('Profiler.takePreciseCoverage', (_, answer) => { result = answer.result; });
    return result;
  }
}
