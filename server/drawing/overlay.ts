/** The picture of what a change does on the table. */
import type { SetupReview } from '../review/review.ts';
import type { Drawn } from './view.ts';
import { viewNamed } from './views.ts';

/** How it is drawn, or a sentence that says why it cannot be. */
export const overlaid = (s: SetupReview): (() => Drawn) | string => viewNamed('plan')!.of((s.after ?? s.before)!, {});
