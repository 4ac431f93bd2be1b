/** Outlines around items: two lines that follow their shape, so that they are told by more than a colour. */
import { made } from './svg.ts';

/** Arrowheads lie on their line, which is enough. */
const SHAPES = ':is(path, line, circle, ellipse, rect):not(.arrow)';
/** What says where a shape is, and how large. */
const GEOMETRY = ['d', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'rx', 'ry', 'width', 'height'];

/** @param name class of these rings */
export function ringsOf(items: readonly SVGElement[], layer: SVGGraphicsElement, name: string): SVGGElement[] {
  // Asking where the layer is lays all of the picture out.
  const back = items.length > 0 ? layer.getScreenCTM()?.inverse() : undefined;
  if (!back) return [];
  return items.map(item => {
    const shapes = item.matches(SHAPES) ? [item] : [...item.querySelectorAll<SVGElement>(SHAPES)];
    const ring = made('g');
    ring.setAttribute('class', `ring ${name}`);
    for (const part of ['outer', 'inner']) for (const shape of shapes) ring.append(...copyOf(shape, back, part));
    return ring;
  });
}

function copyOf(shape: SVGElement, back: DOMMatrix, part: string): SVGElement[] {
  const at = shape instanceof SVGGraphicsElement ? shape.getScreenCTM() : null;
  if (!at) return [];
  const copy = shape.cloneNode(false) as SVGElement;
  for (const { name } of [...copy.attributes]) if (!GEOMETRY.includes(name)) copy.removeAttribute(name);
  const { a, b, c, d, e, f } = back.multiply(at);
  copy.setAttribute('transform', `matrix(${[a, b, c, d, e, f].join(' ')})`);
  copy.setAttribute('class', part);
  return [copy];
}
