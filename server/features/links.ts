/** The paths of `use` lines as links to the files that they found. */
import type { Snapshot } from '../analysis.ts';
import { fileName } from '../model/scope.ts';
import type { Place } from '../model/model.ts';

export interface Link {
  /** the path, without its quotes */
  readonly at: Place;
  readonly to: string;
  readonly title: string;
}

/** Where no file was found, or only outside of the open folder, there is none. */
export function linksOf({ model }: Snapshot): Link[] {
  const broken = new Set(model.problems.filter(p => p.code === 'import-unreadable' || p.code === 'import-outside').map(p => p.at.line));
  return model.uses.filter(u => u.uri !== '' && !broken.has(u.at.line))
    .map(({ at, uri }) => ({ at: { uri: at.uri, line: at.line, start: at.start + 1, end: at.end - 1 }, to: uri, title: `Open ${fileName(uri)}` }));
}
