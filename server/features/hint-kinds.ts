/** Which hints are wanted; each can be turned off by itself. */
export interface HintKinds {
  readonly legLengths: boolean;
  readonly armTotals: boolean;
  readonly mismatch: boolean;
  /** values for what is written `?` */
  readonly found: boolean;
}
export const ALL_HINTS: HintKinds = { legLengths: true, armTotals: true, mismatch: true, found: true };
