/** What stands on the table where a thing is: its face, which light meets, and the mount that holds it. */

/** Lengths in mm, as they are said at a bench. */
export interface Footprint {
  /** shape of the face; a `body`, such as a shell, has none and stands around its place */
  readonly face: 'round' | 'rectangular' | 'body';
  /** facts that say how wide and high the face is, the one that counts first */
  readonly by: readonly ('diameter' | 'size')[];
  /** width and height of the face where none of them is written */
  readonly assumed: readonly [number, number];
  /** how far the mount stands out beyond the face on each side */
  readonly mount: number;
  /** how deep it is, mount included */
  readonly depth: number;
  /** whether its depth lies behind the face, away from the light that comes, or half of it on each side */
  readonly lies: 'behind' | 'around';
  /** it is held by a post that reaches down to the table */
  readonly post: boolean;
  /** false: it may as well stand beside the table */
  readonly onTable: boolean;
  /** where the assumed sizes are from, completing "because …" */
  readonly why: string;
}

const PRACTICE = 'common practice, from memory';
const of = (face: Footprint['face'], by: Footprint['by'], assumed: Footprint['assumed'], more: Partial<Footprint> & Pick<Footprint, 'mount' | 'depth' | 'why'>): Footprint =>
  ({ face, by, assumed, lies: 'around', post: true, onTable: true, ...more, why: `${more.why}; ${PRACTICE}` });

/** A body whose light leaves it at its place and in front. */
export const LASER: Footprint = of('rectangular', [], [60, 60], { mount: 0, depth: 300, lies: 'behind', post: false, why: 'small gas lasers are some 60 mm thick and 300 mm long or more' });
export const MIRROR: Footprint = of('round', ['diameter', 'size'], [50, 50], { mount: 8, depth: 30, lies: 'behind', why: 'a mirror of 50 mm in a mount with two screws behind it is the usual one' });
export const SPLITTER: Footprint = of('rectangular', ['size'], [50, 50], { mount: 6, depth: 15, why: 'a splitter of 50 mm in a holder that clasps its rim is the usual one' });
/** Its place is where the light enters; behind that are the pinhole and its screws. Its clear diameter says nothing of them. */
export const SPREADER: Footprint = of('rectangular', [], [45, 60], { mount: 0, depth: 50, lies: 'behind', why: 'an objective and its pinhole with their screws take a mount of about 50 mm' });
export const LENS: Footprint = of('round', ['diameter'], [50, 50], { mount: 8, depth: 15, why: 'a lens of 50 mm in a ring is the usual one' });
export const COLLIMATOR: Footprint = of('round', ['diameter'], [150, 150], { mount: 10, depth: 25, why: 'a collimator has to be wider than the plate; 150 mm is a usual one' });
/** A polarizer or a wave plate. */
export const RING: Footprint = of('round', ['diameter'], [25, 25], { mount: 12, depth: 15, why: 'sheets and wave plates of 25 mm in a ring that turns are usual' });
export const FILTER: Footprint = of('rectangular', [], [50, 50], { mount: 5, depth: 10, why: 'filters of 50 mm in a holder are usual' });
export const SHUTTER: Footprint = of('rectangular', ['size'], [60, 80], { mount: 0, depth: 30, onTable: false, why: 'a shutter that is driven by a magnet takes about 60 mm' });
export const CARD: Footprint = of('rectangular', ['size'], [100, 150], { mount: 0, depth: 3, onTable: false, why: 'a card of 100 × 150 mm is a handy one' });
export const STOP: Footprint = of('rectangular', ['size'], [50, 50], { mount: 0, depth: 30, onTable: false, why: 'a beam stop of 50 mm is a usual one' });
export const SCREEN: Footprint = of('rectangular', ['size'], [100, 100], { mount: 5, depth: 8, why: 'a ground glass of 100 mm is a usual one' });
/** An aperture or a slit: `size` is its outside, its opening is another fact. */
export const MASK: Footprint = of('rectangular', ['size'], [50, 50], { mount: 0, depth: 3, why: 'a mask of 50 mm is a usual one' });
export const OBJECT: Footprint = of('body', ['size', 'diameter'], [50, 50], { mount: 0, depth: 50, post: true, why: 'what is recorded on small plates is some 50 mm in size' });
export const PLATE: Footprint = of('rectangular', ['size'], [100, 125], { mount: 10, depth: 15, why: 'a plate of 102 × 127 mm is the usual one, and its holder stands out by about 10 mm' });

/** The same in words, for the page of things. */
export function footprintWords({ face, by, assumed, mount, depth, lies, post, onTable }: Footprint): string {
  const size = face === 'round' ? `${assumed[0]} mm across` : `${assumed[0]} × ${assumed[1]} mm`;
  const known = by.length > 0 ? `as wide as its ${by.map(f => `\`${f}\``).join(' or ')} says, else ${size}` : size;
  return `On the table: ${known}${mount > 0 ? `, its mount ${mount} mm more on each side` : ''}; ${depth} mm deep${lies === 'behind' ? ', behind its face' : ''}${post ? '; on a post' : ''}.${onTable ? '' : ' It may as well stand beside the table.'}`;
}
