/** What of the program the building of the site needs: bundled, and asked for as one module. */
export { findCheck } from '../../server/checks/registry.ts';
export { svgOf } from '../../server/drawing/svg.ts';
export { cssOf, PALETTES } from '../../server/drawing/style.ts';
export { isWhole, stepsOf } from './blocks.ts';
export { look } from './looked.ts';
export { escaped, markup } from './markup.ts';
export { codeOf, resultOf } from './result.ts';
