import { nearestWithin } from '../range.ts';
import { extents } from '../depth.ts';
import { within, type Vector } from '../vectors.ts';
import { facing, upright, type Frame } from './frame.ts';

/**
 * What stands in the way of light, and what light falls on. All are convex. What is thin is a solid without thickness: a card or a
 * mirror's face is a box of depth 0, a round one a cylinder of height 0. Lengths in m, see `extents` of `depth.ts`.
 *
 * - `box`: `size` is width, height and depth along the axes of its frame, whose origin is its middle.
 * - `cylinder`: around `axis`, which goes through its middle.
 *
 * `frame`: where it matters how a round one is turned, because its surface is cut into parts; its third axis is that of a cylinder.
 */
export type Solid =
  | { readonly kind: 'box'; readonly frame: Frame; readonly size: Vector }
  | { readonly kind: 'cylinder'; readonly middle: Vector; readonly axis: Vector; readonly radius: number; readonly height: number; readonly frame?: Frame }
  | { readonly kind: 'sphere'; readonly middle: Vector; readonly radius: number; readonly frame?: Frame }

/** A card, a plate or a rectangular mirror, as thin as can be: width along the first axis of its frame, height along the second, m. */
export function card(frame: Frame, width: number, height: number): Solid {
  return { kind: 'box', frame, size: [width, height, 0] };
}

/** A round mirror or lens, as thin as can be: `normal` either way, diameter in m. */
export function disc(middle: Vector, normal: Vector, diameter: number): Solid {
  return { kind: 'cylinder', middle, axis: normal, radius: nearestWithin(extents, diameter) / 2, height: 0 };
}

/** An upright post, or a mount on its post, that stands on `foot`: radius and height in m. */
export function post(foot: Vector, radius: number, height: number): Solid {
  const [x, y, z] = within(foot);
  const h = nearestWithin(extents, height);
  const middle: Vector = [x, y, z + h / 2];
  return { kind: 'cylinder', middle, axis: [0, 0, 1], radius, height: h, frame: upright(middle) };
}

/** The frame of a solid: its middle, and its axis as the third of the axes. That of a sphere stands upright where none is given. */
export function frameOf(solid: Solid): Frame {
  switch (solid.kind) {
    case 'box':
      return solid.frame;
    case 'cylinder':
      return solid.frame ?? facing(solid.middle, solid.axis);
    case 'sphere':
      return solid.frame ?? upright(solid.middle);
  }
}

/** Half the width, height and depth of a box, m. */
export function halfSize(size: Vector): Vector {
  return [nearestWithin(extents, size[0]) / 2, nearestWithin(extents, size[1]) / 2, nearestWithin(extents, size[2]) / 2];
}
