/** A setup of two arms around some readings of light. */
import { read, setup, type Read } from './read.ts';

interface Around { readonly laser?: readonly string[]; readonly splitter?: readonly string[]; readonly plate?: readonly string[]; readonly things?: readonly string[]; readonly facts?: readonly string[] }

const block = (head: string, facts: readonly string[] = []): string[] => (facts.length === 0 ? [head] : [`${head} {`, ...facts.map(f => `  ${f}`), '}']);

/** A meter with a round head of 1 cm² (11.28379 mm across), exact where nothing else is said. */
export const METER = ['meter m {', '  head: 11.283791670955126 mm', '  calibration: 1', '  dark: 0 nW', '}'];
export const NEEDLE = ['meter needle {', '  head: 8 mm', '}'];

/** `object`: the name of its object beam */
export function metered(readings: readonly string[], around: Around = {}, object = 'object'): Read {
  return read(setup(
    ...(around.facts ?? []), ...block('laser red', ['coherence length: 5 m', ...(around.laser ?? [])]), ...block('splitter S1', around.splitter), 'object whelk', ...block('plate P1', around.plate), ...(around.things ?? [...METER, ...NEEDLE]),
    'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> P1: 1500 mm', `beam ${object} from S1 reflected`, '-> whelk: 1200 mm', '-> P1: 300 mm', ...readings,
  ));
}

/** 1 µW/cm² in W/m². */
export const MICRO = 0.01;
