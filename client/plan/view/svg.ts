/** Draws marks as SVG in the page. Elements are made one by one, and text is only ever text. */
import { allows, TAGS } from './allowed.ts';
import type { Canvas } from './patch.ts';

const SVG = 'http://www.w3.org/2000/svg';

export const made = <T extends keyof SVGElementTagNameMap>(tag: T): SVGElementTagNameMap[T] => document.createElementNS(SVG, tag);

export const CANVAS: Canvas<SVGElement> = {
  make: tag => (TAGS.has(tag) ? document.createElementNS(SVG, tag) : undefined),
  set(node, attribute, value) {
    if (value !== undefined && allows(attribute, value)) node.setAttribute(attribute, value);
    else if (allows(attribute, '')) node.removeAttribute(attribute);
  },
  write(node, text) { node.textContent = text; },
  put(parent, node, before) { parent.insertBefore(node, before ?? null); },
  drop(node) { node.remove(); },
};
