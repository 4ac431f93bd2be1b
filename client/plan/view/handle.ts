/** What a thing is turned by: a small ring that stands off it, in pixels. */
import { made } from './svg.ts';

/** How far it stands off, to the right and up. */
const OFF = 16;
const RADIUS = 6;

export function handleOn(item: SVGGElement, layer: SVGGraphicsElement): SVGGElement {
  const handle = made('g');
  const { right, top } = item.getBoundingClientRect();
  const corner = new DOMPoint(right, top).matrixTransform(layer.getScreenCTM()?.inverse());
  handle.setAttribute('class', 'handle');
  handle.setAttribute('data-turn', item.getAttribute('data-item')!);
  handle.setAttribute('transform', `translate(${corner.x} ${corner.y})`);
  const [inner, line, ring] = [made('g'), made('line'), made('circle')];
  const reach = OFF - RADIUS * Math.SQRT1_2;
  for (const [name, value] of [['x2', reach], ['y2', -reach]] as const) line.setAttribute(name, String(value));
  for (const [name, value] of [['cx', OFF], ['cy', -OFF], ['r', RADIUS]] as const) ring.setAttribute(name, String(value));
  inner.append(line, ring);
  handle.append(inner);
  return handle;
}
