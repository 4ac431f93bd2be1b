/** The features that are asked for once a page is open, in a file of their own when it is packed: a start does not wait for them. */
export { dragged } from '../drawing/drag/drag.ts';
export { pictureOf } from '../drawing/picture.ts';
export { completionsAt, completionWords, wantsFiles } from '../features/completion/completion.ts';
export { definitionAt } from '../features/definition.ts';
export { figuresOf } from '../features/figures.ts';
export { fixesFor } from '../features/fixes.ts';
export { foldsOf } from '../features/folding.ts';
export { formatChanges } from '../features/formatting.ts';
export { hintsOf, hintWords } from '../features/hints.ts';
export { hoverAt } from '../features/hover/hover.ts';
export { linksOf } from '../features/links.ts';
export { highlightsAt, isShared, useAt, usesOf } from '../features/references.ts';
export { rename, renamable } from '../features/rename.ts';
export { summaryAt, summaryMarkdown } from '../features/summary.ts';
export { symbolsOf } from '../features/symbols.ts';
export { tokensOf } from '../features/tokens.ts';
export { shotAt, whyAt, whyTitle } from '../features/why/shot.ts';
