/** A few inputs for each target, the same in every run; `npm run fuzz` tries many. Every input that something was wrong with once is tried again. */
import { describe, expect, it, test } from 'vitest';
import * as own from '../../server/lsp/protocol.ts';
import { ANSWERED } from '../lsp/methods.ts';
import { ASKS } from './asks.ts';
import { keptOf } from './kept.ts';
import { failureOf, tryMany } from './loop.ts';
import { shrink } from './shrink.ts';
import { TARGETS } from './targets.ts';

describe.each(TARGETS.map(t => [t.name, t] as const))('%s', (_, target) => {
  it('holds for a few inputs', async () => {
    const { inputs, wrong } = await tryMany(target, { inputs: target.few, seed: 20260211 });
    expect(wrong).toEqual([]);
    expect(inputs).toBe(target.few);
  });
  it.each(keptOf(target.name).map(k => [k.name, k.input] as const))('holds for what was found: %s', async (name, input) => { expect(await failureOf(target, input), name).toBeUndefined(); });
});

test('the shares make a thousand', () => { expect(TARGETS.reduce((n, t) => n + t.share, 0)).toBe(1000); });

test('every question that the server answers is asked', () => {
  // `initialize` begins a session and `shutdown` ends it; findings of all pages wait for news.
  const standard = Object.keys(ANSWERED).filter(m => !['initialize', 'shutdown', 'workspace/diagnostic'].includes(m));
  // Two are asked by the server, one is told.
  const more = (Object.values(own) as unknown[]).filter((m): m is string => typeof m === 'string' && m.startsWith('platewright/') && ![own.READ_FILE, own.LIST_FILES, own.BASE].includes(m as never));
  expect(Object.keys(ASKS).sort()).toEqual([...standard, ...more].sort());
});

describe('what is wrong', () => {
  const wanting = (bad: string): (typeof TARGETS)[number] => ({ ...TARGETS[0]!, run: text => { if (text.includes(bad)) throw new Error(`“${bad}” is there`); } });
  it('is found and cut down to what is wrong', async () => {
    const { wrong } = await tryMany(wanting('M1'), { inputs: 400, seed: 1 });
    expect(wrong.map(w => w.input)).toEqual(['M1']);
  });
  it('is cut down across lines', async () => {
    expect(await shrink('a\nb ->\nc\nd M1 e\nf', t => Promise.resolve(t.includes('->') && t.includes('M1')))).toBe('->M1');
  });
});
