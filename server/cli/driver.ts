/** What `git diff` and `git show` print for a page where they are set up for it: git starts this in the place of its own comparison of lines. */
import { pathToFileURL } from 'node:url';
import { resolve } from 'node:path';
import { analyse, type Snapshot } from '../analysis.ts';
import { reviewPage } from '../features/review/page.ts';
import { reviewText } from '../features/review/text.ts';
import { reviewOf } from '../review/review.ts';
import { onScreen, type Done } from './done.ts';
import { DISK, libraryIn, Misuse, readText, Trouble } from './files.ts';

/** What git shows where there is no file on that side. */
const NO_FILE = '/dev/null';

/**
 * `args`: path, old file, its id and mode, new file, its id and mode; of a renamed page the new path behind them (gitdiff, “GIT_EXTERNAL_DIFF”). Always ends well: else git itself would stop in the middle of
 * what it shows. What a page uses is read as it is on disk, since git does not say of which revisions the sides are.
 */
export function driver(args: readonly string[]): Done {
  if (args.length === 1) return { out: `${onScreen(args[0]!)}: not merged yet\n`, code: 0 };
  if (args.length < 7) throw new Misuse('git calls this with seven words or more: platewright diff --as-driver PATH OLD-FILE OLD-ID OLD-MODE NEW-FILE NEW-ID NEW-MODE. How it is set up: platewright diff --help.');
  const [path, old, , , now] = args as [string, string, string, string, string];
  const name = args[7] === undefined || args[7] === path ? path : `${path} → ${args[7]}`;
  try {
    const [before, after] = [side(old, path), side(now, args[7] ?? path)];
    return { out: onScreen(reviewText([{ file: name, page: reviewPage(reviewOf(before, after)) }])), code: 0 };
  } catch (e) {
    if (!(e instanceof Trouble)) throw e;
    return { out: onScreen(`${name}: ${e.message}\n`), code: 0 };
  }
}

function side(file: string, path: string): Snapshot | undefined {
  if (file === NO_FILE || file === 'nul') return undefined;
  return analyse(pathToFileURL(resolve(path)).href, readText(file, path), libraryIn(process.cwd(), [], DISK));
}
