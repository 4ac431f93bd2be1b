// `platewright hang`: what to record, from where the finished hologram will hang.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from './folder.ts';
import { inside } from './inside.ts';
import { bySchema } from './schema.ts';

const page = (plate: string, lamp = '    distance: 1.5 m\n    angle: 45°\n'): string => `setup "Limpet" {\n  hologram: reflection\n  laser red {\n    wavelength: 632.8 nm\n  }\n  plate P1 {\n    ${plate}\n  }\n  lamp spot {\n${lamp}  }\n  viewer visitor {\n    distance: 500 mm\n  }\n}\n`;
interface Figure { value: number | null; unit: string; status: string }
interface Hung { setups: { says: string[]; lamps: { steps: number; way: string; image: Figure; referenceAngle: Figure; distances: Record<'referenceDistance' | 'objectDistance' | 'masterToPlate' | 'imageBeforePlate' | 'width', Figure | null>[]; write: { thing: string; text: string }[]; hitches: { kind: string; value: number | null; words: string }[]; notes: string[] }[] }[] }
const json = async (text: string): Promise<Hung> => bySchema((await inside(['hang', 'a.plate', '--format', 'json'], { cwd: folder({ 'a.plate': text }) })).out) as Hung;

describe('hang', () => {
  it('tells what to record and writes nothing', async () => {
    const text = page('image behind: 80 mm');
    const at = folder({ 'a.plate': text });
    const { out, code } = await inside(['hang', 'a.plate'], { cwd: at });
    expect(code).toBe(0);
    expect(out).toMatch(/reference angle {6}45°/);
    expect(out).toMatch(/object distance {6}80 mm/);
    expect(out).toMatch(/To write in P1\n\n {2}reference angle: 45°\n$/);
    expect(readFileSync(join(at, 'a.plate'), 'utf8')).toBe(text);
  });
  it('tells in JSON, by the schema, both steps of an image before the plate', async () => {
    const [lamp] = (await json(page('image before: 30 mm'))).setups[0]!.lamps;
    expect(lamp).toMatchObject({ steps: 2, way: 'reflection', image: { value: -0.03, unit: 'm' }, write: [{ thing: 'P1', text: 'reference angle: 45°' }], hitches: [] });
    expect(lamp!.referenceAngle.value).toBeCloseTo(Math.PI / 4, 9);
    // As in tests/features/hang.test.ts: 470 and 500 mm; the reference runs together at 1500 mm.
    expect(lamp!.distances[0]).toMatchObject({ referenceDistance: { value: 1.5 }, objectDistance: { value: 0.47 }, masterToPlate: { value: 0.5 }, imageBeforePlate: { value: 0.03 }, width: null });
  });
  it('says what stands against it, and ends with 1', async () => {
    const text = page('image behind: 80 mm', '    distance: 1 m\n    angle: 135°\n');
    expect(await inside(['hang', 'a.plate'], { cwd: folder({ 'a.plate': text }) })).toMatchObject({ code: 1, out: expect.stringContaining('Spot stands behind P1') as string });
    expect((await json(text)).setups[0]!.lamps[0]!.hitches).toMatchObject([{ kind: 'lamp behind', value: null }]);
    expect((await json(page('image behind: 80 mm', '    distance: 70 mm\n    angle: 45°\n'))).setups[0]!.lamps[0]!.hitches).toMatchObject([{ kind: 'no object', reference: 'parallel', value: 0.08 }]);
    expect((await json('setup "A" {\n  plate P1\n}\n')).setups[0]).toMatchObject({ lamps: [], says: [expect.stringContaining('No lamp is written') as string] });
  });
  it('an unknown figure is no number', async () => { expect((await json(page('image behind: 80 mm', '    angle: 45°\n'))).setups[0]!.lamps[0]!.distances[0]!.referenceDistance).toMatchObject({ value: null, status: 'unknown' }); });
  it('tells a variant', async () => {
    const at = folder({ 'a.plate': page('image behind: 80 mm').replace(/\}\n$/, '  variant "steep" {\n    spot.angle: 60°\n  }\n}\n') });
    expect((await inside(['hang', 'a.plate', '--variant', 'steep', '--format', 'markdown'], { cwd: at })).out).toContain('| reference angle | 60° |');
  });
  it('has words for wrong usage', async () => {
    expect(await inside(['hang', 'a.plate'], { cwd: folder({ 'a.plate': '' }) })).toMatchObject({ code: 3, err: expect.stringContaining('There is no setup') as string });
    expect(await inside(['hang', 'a.plate', '--setup', 'Limpit'], { cwd: folder({ 'a.plate': page('image behind: 80 mm') }) })).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean “Limpet”?') as string });
  });
});
