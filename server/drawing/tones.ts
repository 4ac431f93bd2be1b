/**
 * Scales of colour. Their lightness rises evenly and never turns back: what is lighter is more, equal steps look equal, and nothing is lost in print or to who sees few colours.
 * Colours by hue alone would draw edges where there are none. They are the same on light and dark pages, since what is bright in a hologram is bright.
 */
import { interpolateLab, piecewise } from 'd3-interpolate';

/** Brightness that is told apart, in stops below the best; what is darker looks as dark as can be. */
export const STOPS = 6;
const greys = interpolateLab('#1c1c1f', '#fffdf6');

/** Of a share of the brightness that there is at best. */
export const greyOf = (share: number): string => greys(lightnessOf(share));
/** 1 at best, 0 from `STOPS` below that: even in stops, as eyes have it. */
export const lightnessOf = (share: number): number => (share > 0 ? Math.max(0, Math.min(1, 1 + Math.log2(share) / STOPS)) : 0);

/** The hue of the reference from night to paper, in steps of even lightness. */
const teals: (t: number) => string = piecewise(interpolateLab, ['#0d2129', '#487f90', '#f6f1e2']);
/** From 0, dark, to 1, light. */
export const mapColour = (t: number): string => teals(Math.max(0, Math.min(1, t)));
