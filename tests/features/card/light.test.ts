/** In which light a card can be read: black print by a safelight that no plate takes, and by nothing else. */
import { describe, expect, it } from 'vitest';
import { whelk } from '../source.ts';
import { all, card, lines } from './source.ts';

const COLOURS = ['red', 'green', 'blue', 'amber', 'none'] as const;
const TO = ['red', 'green', 'blue', 'red and green', 'green and blue', 'all'] as const;
const setup = (colour: string | undefined, to: string | undefined): string => whelk.replace('  plate P1\n', `  plate P1${to === undefined ? '' : ` {\n    sensitive to: ${to}\n  }`}\n${colour === undefined ? '' : `  room {\n    safelight: ${colour}\n  }\n`}`);

/** What may be lit by common practice: the colour is none of those that the plate takes, amber with red left out too; blue of no layer that nobody has named. */
const MAY: readonly string[] = ['red|green', 'red|blue', 'red|green and blue', 'green|red', 'green|blue', 'amber|blue'];

describe('each safelight beside each plate', () => {
  const pairs = COLOURS.flatMap(colour => TO.map(to => ({ colour, to, may: MAY.includes(`${colour}|${to}`) })));
  it.each(pairs)('$colour beside a plate for $to: $may', ({ colour, to, may }) => {
    const c = card(setup(colour, to));
    expect(c.light.includes(`By the ${colour} safelight its black print can be read`)).toBe(may);
    expect(c.light).toMatch(/^Read this card, and write on it, with the room light on and the plates shut away\./);
    // Nowhere on it is a safelight lit that does not go with the plate.
    expect(/safelight on|By the \w+ safelight/.test(all(c))).toBe(may);
    expect(lines(c, 'shoot').some(l => l.includes(may ? `${colour} safelight on` : 'no safelight'))).toBe(true);
  });
});

it('says that orange turns pale in red light, and only there', () => {
  expect(card(setup('red', 'green')).light).toContain('but not what is orange');
  expect(card(setup('green', 'red')).light).not.toContain('orange');
});
it('a safelight that fogs is to stay off', () => { expect(card(setup('red', 'red')).light).toContain('The safelight that is written is red, and P1 takes red light: leave it off while plates are open.'); });
it.each([[undefined, undefined], [undefined, 'red'], ['green', undefined]])('safelight %s beside a plate for %s: what is needed is learnt by heart', (colour, to) => {
  expect(card(setup(colour, to)).light).toContain('by heart');
});
it('counts on no light where a line with a plate cannot be read', () => { expect(card(setup('green', 'red').replace('  splitter S1\n', '  splitter S1\n  plate = = {\n')).light).not.toContain('can be read'); });
