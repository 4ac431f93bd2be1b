/** In which words it is said how bright a part is: with the limits at which findings speak. */
import { DARK, NOTE, WARN } from './paths/arms-mismatched.ts';

/** From the brightest down; a part belongs to the first band whose lower end it reaches. Shares of full brightness. */
export const BANDS: readonly { readonly word: string; readonly from: number }[] = [
  { word: 'full', from: NOTE }, { word: 'slightly dull', from: WARN }, { word: 'dull', from: DARK }, { word: 'dark', from: 0 },
];

export const brightnessWord = (share: number): string => (BANDS.find(b => share >= b.from) ?? BANDS[BANDS.length - 1]!).word;
