/** Rules that are no cells, by figures by hand: a master that is lit otherwise, how it is turned, where light comes from, and what of a ball is lit and seen. */
import { describe, expect, it, test } from 'vitest';
import { slipped, topNow } from '../../../server/results/rules/masters.ts';
import { lightFrom, lookedAt, sourceOf } from '../../../server/results/rules/object.ts';
import { facingEye, lookingFrom } from '../../../server/results/rules/seen.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const R = Math.SQRT1_2;
const close = (is: object, should: Readonly<Record<string, number>>): void => { for (const [name, value] of Object.entries(should)) expect((is as Record<string, number>)[name], name).toBeCloseTo(value, 9); };

describe('a master that is lit otherwise than its reference ran', () => {
  const ANGLES = { object: 0, reference: rad(45) };
  it.each([-1, 1] as const)('lit as it should be shows the object as it was (order %d)', order => { close(slipped(order, 0.3, 1, ANGLES, {}), { place: 0.3, width: 1, depth: 1, turned: 0 }); });
  // 1/R = 1/0.3 − 1/1 = 1/0.428571: as much wider, and deeper by its square (Meier 1965).
  it('lit side by side instead of toward a metre, it comes farther, wider and deeper', () => { close(slipped(-1, 0.3, 1, ANGLES, { curvature: 0 }), { place: 0.3 / 0.7, width: 1 / 0.7, depth: 1 / 0.49, turned: 0 }); });
  // In a colour that is a tenth longer, all side by side: nearer and shallower by a tenth, as wide, and sin i = sin 45°·(1 − 1.1).
  it('in another colour it comes nearer and turned', () => { close(slipped(-1, 0.3, 0, ANGLES, { ratio: 1.1 }), { place: 0.3 / 1.1, width: 1, depth: 1 / 1.1, turned: Math.asin(-0.1 * R) }); });
  it('from another angle it is turned, by the difference of the sines', () => { close(slipped(-1, 0.3, 0, ANGLES, { angle: rad(47) }), { place: 0.3, width: 1, depth: 1, turned: Math.asin(Math.sin(rad(47)) - R) }); });
  it('of an object off the axis it is turned from where that was', () => { close(slipped(-1, 0.3, 0, { object: rad(10), reference: rad(45) }, { angle: rad(47) }), { turned: Math.asin(Math.sin(rad(10)) + Math.sin(rad(47)) - R) - rad(10) }); });
  it('no image is no number', () => { expect(slipped(-1, 0.3, 0, ANGLES, { ratio: 3 }).turned).toBeNaN(); });
});

describe('the edge of a plate that was up', () => {
  // Recorded upright; who is where the object was looks north at the plate, and the reference ran to his right.
  const recorded = [0, 0, 0, 0, -1, 0, 0, -0.3, 0, R, R, 0];
  const flipped = (...light: readonly number[]): number[] => [0, 0, 0, 0, -1, 0, 0, -0.3, 0, ...light];
  const looked = (...light: readonly number[]): number[] => [0, 0, 0, 0, -1, 0, 0, 0.3, 0, ...light];
  test.each([[[-R, -R, 0], 'up'], [[R, -R, 0], 'down'], [[0, -R, -R], 'left'], [[0, -R, R], 'right'], [[0, -1, 0], undefined], [[Math.sin(rad(4)), -Math.cos(rad(4)), 0], undefined], [[Math.sin(rad(6)), -Math.cos(rad(6)), 0], 'down']] as const)('flipped, with light that runs %j: %s', (light, top) => { expect(topNow(recorded, flipped(...light), -1)).toBe(top); });
  // Who takes up the image stands on the other side now: his right is the other one.
  test.each([[[R, R, 0], 'up'], [[-R, R, 0], 'down'], [[0, R, R], 'right'], [[0, R, -R], 'left'], [[0, 1, 0], undefined]] as const)('lit as it was, with light that runs %j: %s', (light, top) => { expect(topNow(recorded, looked(...light), 1)).toBe(top); });
  test.each([[0, undefined], [4, undefined], [6, 'up']] as const)('goes by no side where the reference came within five degrees of the normal: %d° is %s', (degrees, top) => { expect(topNow([0, 0, 0, 0, -1, 0, 0, -0.3, 0, Math.sin(rad(degrees)), Math.cos(rad(degrees)), 0], flipped(-R, -R, 0), -1)).toBe(top); });
  // Tipped up by so much it looks south, with light from the west over it.
  test.each([[0, undefined], [4, undefined], [8, 'up']] as const)('goes by no side on a plate that lies, or is tipped by less than that: %d° is %s', (degrees, top) => {
    const n = [0, -Math.sin(rad(degrees)), Math.cos(rad(degrees))] as const;
    const light = [-R, -R * n[1], -R * n[2]];
    expect(topNow(recorded, [0, 0, 0, ...n, ...n.map(v => 0.3 * v), ...light], -1)).toBe(top);
  });
  it('whichever way the normals are told', () => { expect(topNow(recorded.map((v, i) => (i >= 3 && i < 6 ? -v : v)), flipped(0, -R, -R).map((v, i) => (i >= 3 && i < 6 ? -v : v)), -1)).toBe('left'); });
  it('wherever the plates stand', () => { expect(topNow(recorded.map((v, i) => ([0, 6].includes(i) ? v + 2 : [1, 7].includes(i) ? v - 1 : v)), flipped(0, -R, R).map((v, i) => ([2, 8].includes(i) ? v + 0.4 : v)), -1)).toBe('right'); });
});

describe('where light comes from', () => {
  const of = (past?: number, rayleigh?: number) => sourceOf([1, 2, 3], [2, 0, 0], past, rayleigh);
  it('side by side where its spread is not told, at its focus, or where it is all but flat', () => { for (const s of [of(), of(1), of(0, 2), of(1e7, 0), of(-1e7, 0)]) expect(s).toEqual({ kind: 'parallel', direction: [1, 0, 0] }); });
  // R = (z² + b²)/z: 1 m; 25/3 m
  it('from a point as far back as its waves are curved', () => {
    expect(of(1, 0)).toEqual({ kind: 'point', at: [0, 2, 3] });
    expect((of(3, 4) as unknown as { at: number[] }).at[0]).toBeCloseTo(1 - 25 / 3, 9);
    expect(of(5e5, 0)).toMatchObject({ kind: 'point' });
  });
  it('toward a point before its focus', () => { expect(of(-1, 0)).toEqual({ kind: 'toward', at: [2, 2, 3] }); });
  // Who looks from the plate, south of the object, looks north: east is right.
  test.each([[[1, 0, 0], [-1, 0, 0]], [[0, 0, -2], [0, 1, 0]], [[0, 1, 0], [0, 0, 1]]] as const)('light that runs %j comes from %j of the object, as the plate sees it', (light, from) => { lightFrom([0, -1, 0], [0, 0, 0], light).forEach((v, i) => { expect(v).toBeCloseTo(from[i]!, 12); }); });
});

describe('what of a ball is lit and seen from far', () => {
  const BALL = { shape: 'sphere', lying: 'upright', assumed: false } as const;
  const at = (what: Parameters<typeof lookedAt>[0], light: readonly number[], plate: readonly number[] = [0, -1000, 0]) => ({ rule: lookedAt(what, BALL, false), x: [...plate, 0, 0, 0, ...light, 0.1, 0.1, 0.1] });
  const of = (...a: Parameters<typeof at>): number => { const { rule, x } = at(...a); return rule.compute(x); };
  // Of two halves of a ball whose poles lie α apart, 1 − α/π is common to both; as many parts as are looked at are good to 3 in 100.
  test.each([0, 60, 90, 120])('with the light %d° beside the line of sight', degrees => {
    const light = [Math.sin(rad(degrees)), Math.cos(rad(degrees)), 0];
    for (const what of ['lit side', 'seen side'] as const) expect(Math.abs(of(what, light) - (1 - degrees / 180))).toBeLessThan(0.03);
  });
  it('its depth is its radius where the light comes with the sight', () => { expect(Math.abs(of('lit depth', [0, 1, 0]) - 0.05)).toBeLessThan(0.005); });
  it('without a direction of light, or at the plate itself, nothing is known', () => {
    expect(of('lit side', [0, 0, 0])).toBeNaN();
    expect(of('lit side', [0, 1, 0], [0, 0, 0])).toBeNaN();
  });
  // 1 − α/π with α = π/2 − atan ε, over steps of 0.15: atan(0.15)/0.15/π
  it('has its slope by the direction of the light, over some degrees', () => {
    const { rule, x } = at('lit side', [1, 0, 0]);
    const slopes = rule.partials!(x);
    expect(Math.abs(slopes[7]! - Math.atan(0.15) / 0.15 / Math.PI)).toBeLessThan(0.1);
    expect(slopes.filter((_, i) => i < 6 || i > 8)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(rule.partials!(x, x.map((_, i) => i !== 7))[7]).toBe(0);
  });
});

describe('what somebody sees', () => {
  const patch = (normal: readonly [number, number, number]) => ({ point: [0, 0, 0] as const, normal, area: 1 });
  it('squarely, aslant, from behind, and from every side', () => {
    const found = facingEye([patch([0, -1, 0]), patch([0, -0.5, Math.sqrt(0.75)]), patch([0, 1, 0]), patch([0, 0, 0])], [0, -2, 0]);
    [1, 0.5, 0, 1].forEach((v, i) => { expect(found[i]).toBeCloseTo(v, 12); });
  });
  test.each([[[1, 0, 0], [1, 0, 0]], [[0, 0, 1], [0, 1, 0]], [[0, -0.5, 0], [0, 0, 0.5]]] as const)('%j lies at %j for who looks from the south', (point, seen) => { lookingFrom([0, -1, 0], [0, 0, 0])(point).forEach((v, i) => { expect(v).toBeCloseTo(seen[i]!, 12); }); });
  it('counts from the place that is looked at', () => { lookingFrom([5, 4, 3], [5, 5, 3])([6, 5, 4]).forEach((v, i) => { expect(v).toBeCloseTo([1, 1, 0][i]!, 12); }); });
});
