import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignValues, printable, strip, width, wrap } from '../../server/features/plain-text.ts';
import { bandLegend, brightnessWords, pendingWords } from '../../server/features/report/words.ts';

describe('words for brightness', () => {
  // The limits of the design: note below 70 %, warn below 40 %, "will be dark" below 10 %.
  it.each([[1, 'full'], [0.7, 'full'], [0.6999, 'slightly dull'], [0.4, 'slightly dull'], [0.3999, 'dull'], [0.1, 'dull'], [0.0999, 'dark'], [0, 'dark']])('%d is %s', (share, word) => { expect(brightnessWords(share, share)).toBe(word); });
  it('a band has the words of its ends', () => { expect(brightnessWords(0.05, 0.95)).toBe('dark to full'); });
  it('the legend says the same', () => { expect(bandLegend()).toBe('full from 70 %, slightly dull from 40 %, dull from 10 %, dark below 10 %'); });
  it('a strip rises with brightness', () => { expect(strip([0, 0.01, 0.25, 0.5, 0.75, 1])).toBe('▁▁▂▄▆█'); });
});

it('what is not computed yet is grouped by what it belongs to', () => {
  expect(pendingWords('readings (measured), laser “power”, placing by “facing”, laser “warm-up”, “table” of a setup, “beam ratio”')).toBe('readings (measured), beam ratio; laser: power, warm-up; placing by: facing; setup: table');
});

describe('layout', () => {
  const text = fc.array(fc.stringMatching(/^[a-zäµ“”]{1,12}$/), { maxLength: 40 }).map(w => w.join(' '));
  it('wrapping keeps every word, in order, and the width', () => {
    fc.assert(fc.property(text, s => {
      const lines = wrap(s, { first: '  ', to: 40 });
      expect(lines.join(' ').split(/\s+/).filter(Boolean)).toEqual(s.split(/\s+/).filter(Boolean));
      for (const line of lines) expect(width(line)).toBeLessThanOrEqual(40);
    }));
  });
  it('keeps a value with its ± and its unit', () => { expect(wrap('aaaaaaaaaaaaaaaaaaaaaaa 84 ± 7 mm longer', { to: 30 })).toEqual(['aaaaaaaaaaaaaaaaaaaaaaa', '84 ± 7 mm longer']); });
  it('puts whole numbers under each other', () => { expect(alignValues(['750 ± 2 mm', '1471.1 mm', '−3 mm', 'unknown'])).toEqual([' 750 ± 2 mm', '1471.1 mm', '  −3 mm', 'unknown']); });
  it('leaves nothing that acts on a terminal', () => {
    const all = Array.from({ length: 0x2100 }, (_, i) => String.fromCharCode(i)).join('');
    expect(printable(all)).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/u);
    expect(printable('a\u001b[2J\u007f')).toBe('a␛[2J␡');
  });
});
