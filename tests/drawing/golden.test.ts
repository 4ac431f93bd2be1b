// Pictures pinned as files, one of each view and some of what stands in it in other ways, so that a change of the looks is seen in review: `npx vitest run tests/drawing/golden.test.ts -u` writes them afresh. Look at each that changed, and say in the commit why.
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { overlaidOf } from '../../server/drawing/overlaid/overlaid.ts';
import { svgOf } from '../../server/drawing/svg.ts';
import { viewNamed, VIEWS } from '../../server/drawing/views.ts';
import { reviewOf } from '../../server/review/review.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const PINNED = [
  ['plan', 'whelk-on-the-table'],
  ['side', 'single-beam-oyster'],
  ['arms', 'whelk-too-long'],
  ['object', 'whelk-on-the-table'],
  ['pair', 'whelk-on-the-table'],
  ['light', 'whelk-on-the-table'],
  ['ratio', 'whelk-on-the-table'],
  ['brightness', 'whelk-on-the-table'],
  ['hung', 'limpet-for-the-porch'],
] as const;
const MORE = [['object', 'back-lit-leaf'], ['object', 'image-plane-transfer']] as const;

test('there is one of each view', () => { expect(PINNED.map(([view]) => view)).toEqual(VIEWS.map(v => v.name)); });

describe('pictures as they are pinned', () => {
  test.each<readonly [string, string, string]>([...PINNED.map(([view, name]) => [view, name, view] as const), ...MORE.map(([view, name]) => [view, name, `${view}-${name}`] as const)])('%s of %s', async (view, name, file) => {
    const { uri, text } = EXAMPLES.find(e => e.name === `examples/${name}.plate`)!;
    const of = viewNamed(view)!.of(analyse(uri, text, disk).results[0]!, {});
    expect(of, 'has a picture').toBeTypeOf('function');
    if (typeof of === 'function') await expect(svgOf(of().sheet)).toMatchFileSnapshot(`golden/${file}.svg`);
  });

  test('a change of whelk-on-the-table over how it was', async () => {
    const { uri, text } = EXAMPLES.find(e => e.name === 'examples/whelk-on-the-table.plate')!;
    const other = text.replace('mirror M3 at (400, 640) mm', 'mirror M3 at (420, 760) mm').replace('  shutter gate at (130, 100) mm\n', '').replace('    -> gate\n', '').replace('  mirror M1', '  black card C1 at (250, 250) mm\n  mirror M1');
    const of = overlaidOf(reviewOf(analyse(uri, text, disk), analyse(uri, other, disk)).setups[0]!);
    expect(of, 'has a picture').toBeTypeOf('function');
    if (typeof of === 'function') await expect(svgOf(of().sheet)).toMatchFileSnapshot('golden/overlaid.svg');
  });
});
