/** The shots of the pages that are named. */
import { analyse } from '../../analysis.ts';
import { shotsIn, type Shot } from '../../features/learn/shots.ts';
import { openAll, pathFrom, type Opened, type Reach, type Trouble } from '../files.ts';

export interface Read {
  readonly shots: readonly Shot[];
  readonly opened: readonly Opened[];
  readonly troubles: readonly Trouble[];
  readonly naming: (uri: string) => string;
}

export function readShots(args: readonly string[], reach: Reach): Read {
  const { opened, troubles } = openAll(args, reach);
  const shots = opened.flatMap(file => shotsIn(analyse(file.uri, file.text, file.texts)));
  return { shots, opened, troubles, naming: uri => opened.find(f => f.uri === uri)?.name ?? pathFrom(process.cwd(), uri) };
}
