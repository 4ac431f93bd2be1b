/** The shots of the pages that are named. */
import { analyse } from '../../analysis.ts';
import { shotsIn, type Shot } from '../../features/learn/shots.ts';
import { openAll, pathFrom, type Opened, type Reach, type Trouble } from '../files.ts';

export interface Read {
  readonly shots: readonly Shot[];
  readonly opened: readonly Opened[];
  readonly troubles: readonly Trouble[];
  readonly naming: (uri: string) => string;
  /** the text of each file that they rest on, as it was read */
  readonly seen: ReadonlyMap<string, string>;
}

export function readShots(args: readonly string[], reach: Reach): Read {
  const { opened, troubles } = openAll(args, reach);
  const seen = new Map<string, string>();
  const shots = opened.flatMap(file => {
    const snapshot = analyse(file.uri, file.text, file.texts);
    for (const f of snapshot.files) {
      const text = f === file.uri ? file.text : file.texts.text(f);
      if (text !== undefined && !seen.has(f)) seen.set(f, text);
    }
    return shotsIn(snapshot);
  });
  return { shots, opened, troubles, seen, naming: uri => opened.find(f => f.uri === uri)?.name ?? pathFrom(process.cwd(), uri) };
}
