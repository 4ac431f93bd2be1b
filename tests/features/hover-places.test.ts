/** Where a thing stands and how it meets its light, as a hover says it. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { hoverAt } from '../../server/features/hover/hover.ts';
import { disk, EXAMPLES } from '../examples/library.ts';
import { marked } from './source.ts';

function shown(source: string): string | undefined {
  const { snapshot, line, character } = marked(source);
  return hoverAt(snapshot, line, character)?.markdown.replaceAll('\\', '');
}
const page = (...lines: string[]): string => `setup "a" {\n${lines.join('\n')}\n}\n`;

describe('a hover', () => {
  // 3-4-5: from (0, 0) to (300, 400) and on along −x. The light is turned from 53.13° to 180°: by 126.87°; it meets the mirror at 26.57°.
  const table = (mirror: string): string => page('laser red at (0, 0) mm heading 53.13°', mirror, 'beam stop B1 at (0, 400) mm', 'beam raw from red', '-> M1', '-> B1');
  it.each(['mirror M|1 at (300, 400) mm', 'mirror M1 |at (300, 400) mm', 'mirror M1 at (3|00, 400) mm'])('%s', mirror => {
    const text = shown(table(mirror));
    expect(text).toContain('Stands at (300, 400, 120) mm.');
    expect(text).toContain('Heading 206.6°');
    expect(text).toContain('Light meets it at 26.6° from its normal and is turned by 127°.');
  });
  it('says how sure a place is', () => { expect(shown(table('mirror M|1 at (300, 400) mm ± 2 mm'))).toMatch(/Stands at x 300\.0 ± 2\.3 mm, y 400\.0 ± 2\.3 mm, height 120 mm/); });
  it('says where a thing stands that follows the light', () => { expect(shown(page('laser red at (0, 0) mm heading 0°', 'beam stop B1 |beyond red by 30 mm'))).toBe('Stands at (30, 0, 120) mm.'); });
  it('says why a place is not known', () => { expect(shown(page('laser red at (0, 0) mm', 'beam stop B1 |beyond red by 30 mm'))).toBe('Where it stands is unknown, because red has no heading.'); });
  it('says how a laser points, and how light comes to a plate', () => {
    expect(shown(page('laser r|ed at (0, 0) mm heading 90° tilted 5°'))).toContain('Heading 90°, counter-clockwise from the right in the plan, 5° upwards.');
    expect(shown(page('laser red at (0, 0) mm', 'plate P|1 at (300, 400) mm heading 0°', 'beam all from red', '-> P1'))).toContain('From its normal, all arrives at 53.1°.');
  });
  it('tells in one breath what is assumed alike for the same reason', () => {
    const page = EXAMPLES.find(e => e.name.endsWith('whelk-on-the-table.plate'))!;
    const line = page.text.split('\n').findIndex(l => l.includes('mirror M1 '));
    const text = hoverAt(analyse(page.uri, page.text, disk), line, '  mirror M'.length)!.markdown;
    expect(text).toMatch(/- face width, face height: .* is assumed: /);
    expect(text.match(/face height/g)).toHaveLength(1);
  });
  it('says nothing of places where there are none', () => { expect(shown(page('mirror M|1'))).not.toMatch(/Stands|Heading|normal/); });
});
