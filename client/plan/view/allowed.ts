/** What a picture may be made of. Whatever else a message names is left out: no mark can load, run or style anything. */
export const TAGS: ReadonlySet<string> = new Set(['g', 'path', 'line', 'circle', 'ellipse', 'rect', 'text', 'tspan', 'title', 'defs', 'pattern', 'clipPath']);

const ATTRIBUTES: ReadonlySet<string> = new Set([
  'class', 'id', 'data-item', 'data-layer', 'transform', 'd', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'dx', 'dy', 'cx', 'cy', 'r', 'rx', 'ry', 'width', 'height', 'fill', 'clip-path', 'font-size', 'text-anchor', 'patternUnits', 'patternTransform',
]);
/** Addresses are names in the picture itself. */
export const allows = (attribute: string, value: string): boolean => ATTRIBUTES.has(attribute) && (!/url\s*\(/i.test(value) || /^url\(#[\w-]+\)$/.test(value));
