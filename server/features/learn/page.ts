/** What was learnt, as it is shown. */
import { percentBand, show, showBand } from '../../model/show.ts';
import type { Evidence } from './evidence.ts';
import type { Learned, Lesson } from './learn.ts';

export interface LessonPage {
  /** `lab.fine-grain, box 3: sensitivity` */
  readonly title: string;
  /** `41 µJ/cm², from 30 µJ/cm² to 57 µJ/cm²` */
  readonly says: string;
  readonly from: readonly string[];
  readonly limits: readonly string[];
  /** `write sensitivity: 41 µJ/cm² ×÷ 1.4 (saltmarsh-lab.plate, line 121; there stands 40 µJ/cm² ×÷ 2)` */
  readonly offer: string | undefined;
}

export interface LearnedPage {
  readonly lessons: readonly LessonPage[];
  readonly idle: readonly string[];
  readonly notes: readonly string[];
}

/** @param naming how files are called */
export function learnedPage(l: Learned, naming: (uri: string) => string): LearnedPage {
  return {
    lessons: l.lessons.map(x => lesson(x, naming)),
    idle: l.idle.map(i => `${shotName(i.shot, naming)}: ${i.why}`),
    notes: l.shots === 0 ? ['There is no shot on these pages. Write one below its setup: shot 1 on 2026-02-11 { exposure: 20 s, outcome: "bright" }, a fact a line.']
      : l.lessons.length === 0 ? ['Nothing can be learnt from these shots yet. What tells: an outcome with the dose or the exposure, the best exposure of a strip, the replay wavelength of a reflection hologram.'] : [],
  };
}

function lesson(l: Lesson, naming: (uri: string) => string): LessonPage {
  const said = (v: number): string => show(Number(v.toPrecision(2)), l.dim, 0, l.unit);
  const band = l.low !== undefined && l.high !== undefined ? (l.unit?.percent ? percentBand(l.low, l.high) : showBand(l.low, l.high, l.dim, l.unit)) : undefined;
  const against = new Set(l.against);
  return {
    title: `${[l.of, ...l.batches].join(', ')}: ${l.about}`,
    says: l.value !== undefined ? `${said(l.value)}, by these shots ${band!}` : l.low !== undefined ? `at least ${said(l.low)}` : l.high !== undefined ? `at most ${said(l.high)}` : 'these shots contradict one another',
    from: l.evidence.map(e => `${shotName(e.shot, naming)}: ${e.words}${against.has(e) ? ' (does not go with the rest)' : ''}`), limits: l.limits,
    offer: l.line && `${l.line.text} (${naming(l.line.uri)}, line ${l.line.at + 1}${l.line.was === undefined ? '' : `; there stands ${l.line.was}`}${l.line.edit ? '' : '; write it by hand'})`,
  };
}

export const shotName = ({ name, on, setup }: Evidence['shot'], naming: (uri: string) => string): string => `${naming(setup.uri)}, shot ${name}${on === undefined ? '' : ` on ${on}`}`;
