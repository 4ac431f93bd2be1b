/** A page as it stood when a plate was shot. */
import { parse } from '../../grammar/parse.ts';
import { analyse } from '../analysis.ts';
import { asShot, hasShot, shotsNamed, shotsOf, type Shot } from '../review/as-shot.ts';
import { Misuse, openFile, Trouble, type Opened, type Reach } from './files.ts';
import { openAt } from './git/pages.ts';
import { Repository, type Revision } from './git/repository.ts';

export interface WasShot {
  readonly file: Opened;
  readonly before: Opened;
  readonly words: { readonly before: string; readonly setup: string };
}

export async function asItWasShot(named: string, name: string, options: Reach & { readonly setup?: string }): Promise<WasShot> {
  const file = openFile(named, options);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const found = shotsNamed(snapshot, name).filter(s => options.setup === undefined || s.setup.name === options.setup);
  const all = shotsOf(snapshot);
  if (found.length === 0) throw new Misuse(`${file.name} has no shot “${name}”. ${all.length === 0 ? 'There is no shot in it.' : `Its shots: ${all.map(s => s.name).join(', ')}.`}`);
  if (found.length > 1) throw new Misuse(`${file.name} has several shots “${name}”; choose one with --setup: ${found.map(s => `“${s.setup.name}”`).join(', ')}.`);
  const [shot] = found as [Shot];
  const committed = await firstWith(named, shot, options);
  const words = `shot ${shot.name}${shot.on === undefined ? '' : ` on ${shot.on}`}`;
  if (committed) return { file: committed.file, before: committed.before, words: { before: `${words}, as committed in ${committed.revision.id.slice(0, 7)}`, setup: shot.setup.name } };
  const cut = asShot(snapshot, shot);
  if (cut === 'unclosed') throw new Misuse(`A brace is missing in “${shot.setup.name}”, so that it is not certain what belongs to it, and how the page stood when shot “${shot.name}” was made cannot be told. Close what “platewright check” names, and ask again.`);
  if (cut === 'undated') throw new Misuse(`Shot “${shot.name}” has no date and stands in no revision, so that nothing tells how the page stood then. Date it: shot ${shot.name} on 2026-02-11.`);
  return { file, before: { ...file, text: cut.text }, words: { before: `${words}, by the dates on the page`, setup: shot.setup.name } };
}

/** The oldest revision that has the shot, and has had it ever since; undefined where there is none, or no git. */
async function firstWith(named: string, shot: Shot, reach: Reach): Promise<{ file: Opened; before: Opened; revision: Revision } | undefined> {
  try {
    return await Repository.with(named, async repository => {
      const whole = repository.reach(reach);
      let found: { before: Opened; revision: Revision } | undefined;
      for (const revision of await repository.revisions(repository.pathOf(named))) {
        const before = revision.gone ? undefined : await openAt(repository, await repository.commit(revision.id), revision.path, whole);
        if (!before || !hasShot(parse(before.text), shot.name)) break;
        found = { before, revision };
      }
      return found && { ...found, file: openFile(named, whole) };
    });
  } catch (e) {
    // Without git there are still the dates.
    if (e instanceof Trouble) return undefined;
    throw e;
  }
}
