/** Places for the things of a setup, on holes: looked for by changing one at a time, now and then for the worse at first (simulated annealing, Kirkpatrick et al. 1983). Seeded: the same setup has the same layouts. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Ways } from './ways.ts';
import { worth, type Places } from './worth.ts';

const STEPS = 24_000;
/** Between so many others have their turn. */
const TURN = 3000;
/** A change for the worse by that much is taken one time in three, at first and at the end, mm². */
const [HOT, COLD] = [4000, 2];

/** Where the light leaves a laser that lies on the table, mm; on a narrow one it lies beside it. */
const LASER = 325;
const ROOMY = 1500;

/** @param matched paths may differ by that much, mm */
export function* layout(ways: Ways, table: readonly [number, number], holes: number, seed: number, matched: number): Generator<void, { readonly places: Places; readonly worth: number }> {
  const rng = xoroshiro128plus(seed);
  const random = (): number => uniformFloat64(rng);
  const [nx, ny] = [Math.floor(table[0] / holes), Math.floor(table[1] / holes)];
  const state = ways.pieces.map(({ stand }): [number, number] => (stand.kind === 'laser' ? [Math.ceil((table[0] >= ROOMY ? LASER : 50) / holes), Math.ceil(75 / holes)] : stand.kind === 'before' ? [4 + Math.floor(random() * nx * 0.4), 0] : stand.kind === 'straight' ? [4 + Math.floor(random() * nx * 0.6), 0] : [Math.floor(random() * nx), Math.floor(random() * ny)]));
  let best = { places: placesOf(ways, state, holes), worth: Infinity };
  let now = worth(ways, best.places, table, matched);
  best = { ...best, worth: now };
  const moving = ways.pieces.map((_, i) => i).filter(i => ways.pieces[i]!.stand.kind !== 'laser');
  for (let n = 0; n < STEPS && best.worth > 0; n++) {
    if (n % TURN === TURN - 1) yield;
    const heat = HOT * (COLD / HOT) ** (n / STEPS);
    const i = moving[Math.floor(random() * moving.length)]!;
    const before = state[i]!;
    const reach = 1 + Math.floor(random() ** 3 * nx * 0.5 * (1 - n / STEPS));
    const step = (): number => Math.round((random() * 2 - 1) * reach);
    state[i] = [before[0] + step(), before[1] + step()];
    const places = placesOf(ways, state, holes);
    const then = worth(ways, places, table, matched);
    if (then <= now || random() < Math.exp((now - then) / heat)) {
      now = then;
      if (then < best.worth) best = { places, worth: then };
    } else state[i] = before;
  }
  return best;
}

function placesOf({ pieces }: Ways, state: readonly (readonly [number, number])[], holes: number): Places {
  const at: [number, number][] = [];
  pieces.forEach(({ stand }, i) => {
    const [a, b] = state[i]!;
    switch (stand.kind) {
      case 'before': at.push([at[stand.laser]![0] + Math.max(1, a) * holes, at[stand.laser]![1]]); break;
      case 'straight': {
        const [from, by] = [at[stand.from]!, at[stand.by]!];
        // So many times the shortest way from hole to hole in that direction.
        const [dx, dy] = [Math.round((by[0] - from[0]) / holes), Math.round((by[1] - from[1]) / holes)];
        const g = gcd(Math.abs(dx), Math.abs(dy)) || 1;
        const times = Math.max(1, Math.round(Math.max(1, a) / Math.max(1, Math.hypot(dx / g, dy / g))));
        at.push([by[0] + (times * dx * holes) / g, by[1] + (times * dy * holes) / g]);
        break;
      }
      default: at.push([a * holes, b * holes]);
    }
  });
  return at;
}
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
