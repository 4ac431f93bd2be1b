// The history of a page that is read in parts is the one that is read in one go.
import { beforeAll, describe, expect, it } from 'vitest';
import { rowsOf } from '../../../server/cli/log.ts';
import { revisionsOf } from '../../../server/cli/history.ts';
import { Repository, type Revision } from '../../../server/cli/git/repository.ts';
import { partsOf } from '../../../server/cli/threads.ts';
import { readFileSync } from 'node:fs';
import { changed, platewright } from '../command.ts';
import { made, type Made } from './made.ts';

const page = (n: number): string => `setup "Cockle" {\n  laser red {\n    wavelength: 633 nm\n  }\n  mirror M1\n  object cockle\n  plate P1\n  splitter S1\n  beam raw from red\n    -> S1\n  beam reference from S1 through\n    -> P1: 1000 mm\n  beam object from S1 reflected\n    -> M1: ${500 + n} mm\n    -> cockle: 300 mm\n    -> P1: 200 mm\n}\n`;

describe('parts of a list', () => {
  it('hold each once, in order, and as many as there are processors, or fewer where each would be too short', () => {
    for (const count of [0, 1, 47, 48, 49, 200, 1001]) for (const processors of [1, 2, 3, 64]) {
      const parts = partsOf(count, 24, processors);
      expect(parts.flatMap(p => Array.from({ length: p.to - p.from }, (_, i) => p.from + i))).toEqual(Array.from({ length: count }, (_, i) => i));
      // 8 threads at most; a list of 47 is too short for two parts of 24.
      expect(parts).toHaveLength(count < 48 ? 1 : Math.min(processors, 8, Math.floor(count / 24)));
    }
  });
});

describe('a page with many revisions', () => {
  let shop: Made;
  let revisions: readonly Revision[];
  const SOME = 60;
  beforeAll(async () => {
    shop = made();
    for (let n = 0; n < SOME; n++) {
      // It is gone once, and not readable as text twice in a row.
      if (n === 20) shop.remove('a.plate').commit('gone');
      else shop.write({ 'a.plate': n === 30 || n === 31 ? Buffer.from([0xff, 0xfe, n, 0xd8]) : page(n) }).commit(`by ${n}`);
    }
    revisions = await Repository.with(shop.path('a.plate'), async r => revisionsOf(r, shop.path('a.plate'), { inventory: [] }));
  }, 60_000);

  it('is told by the parts as by the whole, wherever they are parted', async () => {
    const job = { named: shop.path('a.plate'), reach: { inventory: [] }, setup: undefined, revisions };
    const whole = await rowsOf({ ...job, from: 0, to: SOME });
    expect(whole).toHaveLength(SOME);
    for (const at of [1, 20, 21, 30, 31, 32, 33, SOME - 1]) {
      expect([...await rowsOf({ ...job, from: 0, to: at }), ...await rowsOf({ ...job, from: at, to: SOME })], `parted at ${at}`).toEqual(whole);
    }
  });

  it('is told by the program in threads, the newest first, and only the newest where no more are asked for', async () => {
    // As on a machine with more processors than this one may have.
    const threads = readFileSync('server/cli/threads.ts', 'utf8');
    expect(threads).toContain('availableParallelism() - 1');
    const { out, code, err } = platewright(['log', 'a.plate'], { cwd: shop.at, cli: await changed(/cli\/threads\.ts$/, threads.replace('availableParallelism() - 1', '3')) });
    expect([code, err]).toEqual([0, '']);
    expect(platewright(['log', 'a.plate'], { cwd: shop.at })).toEqual({ code, out, err });
    // Each revision makes the object arm a millimetre longer than the one before it; that behind the ones that cannot be read by three.
    expect(out.match(/object beam \+1 mm/g)).toHaveLength(SOME - 1 - 2 - 3);
    expect(out.match(/object beam \+3 mm/g)).toHaveLength(1);
    expect([...out.matchAll(/^\S+ \S+ [0-9a-f]{7} (.*)$/gm)].map(m => m[1])).toEqual(Array.from({ length: SOME }, (_, i) => SOME - 1 - i).map(n => (n === 20 ? 'gone' : `by ${n}`)));
    expect(platewright(['log', 'a.plate', '--max', '3'], { cwd: shop.at }).out).toBe(`${out.split('\n\n').slice(0, 3).join('\n\n')}\n`);
  });
});
