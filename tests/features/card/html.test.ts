/** A card as a page of HTML: text stays text, nothing is asked for, and it prints by itself. */
import { describe, expect, it } from 'vitest';
import { alone, analyse } from '../../../server/analysis.ts';
import { cardPictures } from '../../../server/drawing/on-card.ts';
import { cardHtml } from '../../../server/features/card/html.ts';
import type { Paper } from '../../../server/features/card/paper.ts';
import { whole } from '../../../server/features/card/whole.ts';
import { cardsOf, example, EXAMPLES } from './source.ts';

const html = (s: ReturnType<typeof example>, paper: Paper = 'a4'): string => cardHtml(cardsOf(s), 'cards', paper, s.results.map((r, i) => cardPictures(r, `card-${i + 1}-`)));

const HOSTILE = `/// <script>alert(1)</script> & "quoted"
setup "<img src=x onerror=alert(1)>" {
  laser red
  splitter S1
  object whelk
  plate P1 {
    batch: "</td><iframe src='//x'>"
    emulsion: toward the object
  }
  black card B1 {
    note: "<b onclick=x>"
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> whelk: 1171 mm
    -> P1: 300 mm
  process on 2026-02-12 {
    developer: "<style>*{display:none}</style>"
  }
}
`;

describe('what a page says is text', () => {
  const page = html(analyse('file:///saltmarsh/a.plate', HOSTILE, alone));
  it('and never markup', () => {
    expect(page).not.toMatch(/<(?:script|img|iframe|b|link|object|embed|form|input)\b/i);
    expect(page.match(/<style>/g)).toHaveLength(1);
    for (const tag of page.match(/<[^>]*>/g)!) expect(tag).not.toMatch(/\son\w+\s*=|\b(?:src|href)\s*=/i);
    for (const text of ['&#60;img src=x onerror=alert(1)&#62;', '&#60;script&#62;alert(1)&#60;/script&#62; &#38; &#34;quoted&#34;', '&#60;style&#62;']) expect(page).toContain(text);
  });
});

describe.each(EXAMPLES)('%s', name => {
  const page = html(example(name));
  it('asks for nothing from a network', () => {
    expect(page).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
    expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|@import|url\((?!#card-)/);
  });
  it('has no name of a part twice, and each that is used', () => {
    const ids = [...page.matchAll(/\bid="([^"]*)"/g)].map(m => m[1]!);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, used] of page.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(used);
  });
  it('is black on white in any scheme', () => {
    expect(page).toContain('color-scheme: only light');
    expect(page).not.toContain('prefers-color-scheme');
  });
});

it.each([['a4', 'size: A4;'], ['letter', 'size: letter;']] as const)('on %s', (paper, size) => { expect(html(example('whelk-too-long.plate'), paper)).toContain(size); });
it('is the same each time', () => { expect(html(example('key-and-fill.plate'))).toBe(html(example('key-and-fill.plate'))); });
it('several setups are several cards, each with a picture', () => {
  const page = html(example('readings.plate'));
  expect(page.match(/<article>/g)).toHaveLength(2);
  expect(page.match(/<svg /g)).toHaveLength(2);
});

describe('lines part between words only', () => {
  it.each([
    ['reads 1.32 ± 0.11 µW/cm² now', 'reads 1.32 ±_0.11_µW/cm² now'], ['13 to 55 s', '13 to 55_s'], ['at (1100, 100) mm', 'at (1100,_100)_mm'], ['81.0% ± 1.5 points', '81.0% ±_1.5_points'],
    ['(1, 2, 3) mm', '(1,_2, 3)_mm'], ['P1 min', 'P1_min'], ['4 mirrors', '4 mirrors'], ['S1, M2', 'S1, M2'], ['−3 ± 3 mm', '−3 ±_3_mm'],
  ])('%s', (text, kept) => { expect(whole(text).replaceAll('\u00a0', '_')).toBe(kept); });
});

it('shows the finished hologram as it hangs, under each lamp, and without a lamp nothing of it', () => {
  const page = html(example('limpet-for-the-porch.plate'));
  expect(page.match(/<figure class="hung">/g)).toHaveLength(2);
  expect(page).toContain('1200 mm from the plate');
  const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(m => m[1]!);
  expect(new Set(ids).size).toBe(ids.length);
  expect(html(example('whelk-on-the-table.plate'))).not.toContain('class="hung"');
});
