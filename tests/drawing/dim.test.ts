/** Which colour of a screen a picture may have beside open plates, and what such a picture is drawn with. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { dimOf, type Dim } from '../../server/drawing/dim.ts';
import { pictureOf } from '../../server/drawing/picture.ts';
import { coloursOf, dim, DIM_HUES } from '../../server/drawing/style.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const setup = (name: string, light: string | undefined, ...plates: (readonly string[])[]): string => `setup "${name}" {\n${light === undefined ? '' : `  room {\n    safelight: ${light}\n  }\n`}${plates.map((facts, i) => `  plate P${i + 1}${facts.length > 0 ? ` {\n${facts.map(f => `    ${f}\n`).join('')}  }` : ''}\n`).join('')}}\n`;
const of = (text: string, at = 0): Dim => { const { results } = analyse('file:///saltmarsh/setup.plate', text); return dimOf(results[at]!, results.filter((_, i) => i !== at)); };
const SILVER = 'material: fine-grain silver halide';

describe('the colour of a picture beside open plates', () => {
  // The plate's colours and the safelight's are written; that silver halide takes blue light whatever it is sensitised to is common practice.
  test.each([
    ['green', 'red', [], 'green', 'The safelight is green, and P1 is said to be sensitive to red only, so the panel is green alone, on black.'],
    ['red', 'green', [SILVER], 'red', undefined],
    ['red', 'green and blue', ['material: dichromated gelatin'], 'red', undefined],
    ['amber', 'blue', ['material: photoresist'], 'red', 'The safelight is amber, and P1 is said to be sensitive to blue only. A screen would mix amber from red and green, so the panel is red alone, on black.'],
    ['blue', 'red', ['material: photopolymer'], 'blue', undefined],
    ['red', 'red', [], 'black', 'The safelight is red, and P1 is sensitive to red, so the panel is black.'],
    ['green', 'all', [], 'black', 'The safelight is green, and P1 is sensitive to all colours, so the panel is black.'],
    ['green', 'red and green', [], 'black', undefined],
    ['amber', 'red', [], 'black', 'The safelight is amber, and P1 is sensitive to red, so the panel is black.'],
    ['amber', 'green', [], 'black', 'Whether P1, sensitive to green, takes amber light does not follow from the page, so the panel is black.'],
    ['blue', 'red', [SILVER], 'black', 'The safelight is blue, and P1 takes blue light as all layers of its sort do, so the panel is black.'],
    ['blue', 'red', [], 'black', 'Whether P1, sensitive to red, takes blue light does not follow from the page, so the panel is black.'],
    ['none', 'red', [], 'black', 'There is no safelight, so the panel is black.'],
  ] as const)('safelight %s, plate sensitive to %s %j: %s', (light, to, facts, hue, why) => {
    const d = of(setup('Whelk', light, [`sensitive to: ${to}`, ...facts]));
    expect(d.hue).toBe(hue);
    if (why !== undefined) expect(d.why).toBe(why);
  });
  test.each([
    ['no safelight is written', setup('Whelk', undefined, ['sensitive to: red']), /^The colour of the safelight is not written in “Whelk”.*“safelight: green”\.$/],
    ['the safelight is no colour that there is', setup('Whelk', 'gren', ['sensitive to: red']), /^The colour of the safelight is not written/],
    ['nothing is said of a plate', setup('Whelk', 'green', ['sensitive to: red'], []), /^What P2 is sensitive to is not written.*“sensitive to: red”\.$/],
    ['what is said of a plate is no colour', setup('Whelk', 'green', ['sensitive to: rde']), /^What P1 is sensitive to is not written/],
    ['there is no plate', setup('Whelk', 'green'), /^No plate is on the page/],
    ['one plate of two sees it', setup('Whelk', 'green', ['sensitive to: red'], ['sensitive to: green']), /^The safelight is green, and P2 is sensitive to green/],
    ['a plate of another setup sees it', setup('Whelk', 'green', ['sensitive to: red']) + setup('Cockle', 'green', ['sensitive to: all']), /^The safelight is green, and P1 of “Cockle” is sensitive to all colours/],
    ['a line that may name a plate cannot be read', setup('Whelk', 'green', ['sensitive to: red']).replace('  plate P1', '  plate\n  plate P1'), /^A line of the page cannot be read/],
  ])('is black where %s', (_, text, why) => {
    expect(of(text)).toMatchObject({ hue: 'black', why: expect.stringMatching(why) as unknown });
  });
  test('is told of all plates', () => {
    expect(of(setup('Whelk', 'green', ['sensitive to: red'], ['sensitive to: red'])).why).toBe('The safelight is green, and of the 2 plates on the page none is said to be sensitive to green, so the panel is green alone, on black.');
  });
  test('comes with the picture, of the variant that is shown, with how many errors the page has', () => {
    const text = setup('Whelk', 'green', ['sensitive to: red']).replace(/\}\n$/, '  laser lamp at (0, 0) mm heading 0°\n  beam stop B1 at (500, 0) mm\n  beam raw from lamp\n    -> B1\n  variant "panchromatic" {\n    P1 {\n      sensitive to: all\n    }\n  }\n}\n');
    const picture = (t: string, variant?: string): unknown => { const p = pictureOf(analyse('file:///saltmarsh/setup.plate', t), variant === undefined ? {} : { variant }); return [p?.dim.hue, p?.errors()]; };
    expect(picture(text)).toEqual(['green', 0]);
    expect(picture(text, 'panchromatic')).toEqual(['black', 0]);
    // one slip, one error
    expect(picture(text.replace('500, 0) mm', '500, 0) mW'))).toEqual(['green', 1]);
  });
  test('is drawn without a look for errors, which steps of a drag would wait for', () => {
    const snapshot = analyse('file:///saltmarsh/setup.plate', setup('Whelk', 'green', ['sensitive to: red']));
    let looks = 0;
    const watched = new Proxy(snapshot, { get: (of, name) => { if (name === 'findings') looks++; return Reflect.get(of, name) as unknown; } });
    const picture = pictureOf(watched)!;
    expect(looks).toBe(0);
    expect([picture.errors(), looks]).toEqual([0, 1]);
  });
  test('on the workshop’s pages never is one that a plate there sees', () => {
    const told = EXAMPLES.flatMap(e => { const p = pictureOf(analyse(e.uri, e.text, disk)); return p ? [[e.name.split('/').at(-1), p.dim.hue]] : []; });
    // The only page with a safelight: green, beside the workshop's fine-grain plates, which are for red.
    expect(told.filter(([, hue]) => hue !== 'black')).toEqual([['shots.plate', 'green']]);
  });
});

describe('inks in the dark', () => {
  const channels = (hex: string): number[] => [1, 3, 5].map(i => parseInt(hex.slice(i, i + 2), 16));
  test.each([['red', 0], ['green', 1], ['blue', 2]] as const)('%s is of one channel of the screen alone', (hue, own) => {
    const levels = Object.values(dim(hue)).map(channels);
    expect(levels.flatMap(l => l.filter((_, i) => i !== own))).toEqual(levels.flatMap(() => [0, 0]));
    expect(new Set(levels.map(l => l[own])).size).toBeGreaterThan(3);
  });
  // WCAG 2.2: relative luminance, 1 for white; 4.5 is what it asks of text. Pure blue has 0.0722 and cannot have that on black.
  const luminance = (hex: string): number => channels(hex).map(c => c / 255).map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i]!, 0);
  test.each(DIM_HUES)('%s has less than a fifth of the light of white, on black', hue => {
    const p = dim(hue);
    expect([p.paper, p.table]).toEqual(['#000000', '#000000']);
    for (const ink of Object.values<string>({ ...p })) expect(luminance(ink)).toBeLessThan(0.2);
    if (hue !== 'blue') for (const ink of [p.ink, p.quiet, p.amiss]) expect((luminance(ink) + 0.05) / 0.05).toBeGreaterThan(4.5);
  });
  test('are those of the one table', () => { expect(coloursOf(ink => dim('green')[ink])).not.toMatch(/\$|undefined/); });
});
