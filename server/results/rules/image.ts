/** Rules of the light that a hologram sends into its image, for the plate of a transfer; and of the slit before it. */
import { imageSpread } from '../../optics/beams/image.ts';
import type { Rule } from '../graph.ts';
import { CALIBRATED } from './light.ts';
import { PREDICTED_OBJECT } from './object-light.ts';

/** A side of what is left open of a hologram behind a slit. Inputs: side of the hologram, width of the slit. */
export const OPEN_SIDE: Rule = {
  name: 'open side', formula: 'the lesser of the hologram and of the slit before it', compute: ([side, slit]) => Math.min(side!, slit!), partials: ([side, slit]) => (side! < slit! ? [1, 0] : [0, 1]),
};

/** Power behind a slit. Inputs: power before it, share that passes it. */
export const BEHIND_SLIT: Rule = { name: 'power behind a slit', formula: 'power · share that passes', compute: CALIBRATED.compute, partials: CALIBRATED.partials! };

/** Where nothing says where the image is: about at the plate. Inputs: distance of the plate, share of it. */
export const IMAGE_ABOUT: Rule = { name: 'image at the plate', formula: 'distance of the plate · share', compute: CALIBRATED.compute, partials: CALIBRATED.partials! };

/**
 * Light at the middle of a plate for each watt on what is open of a hologram, if all of it went into the image. Inputs: two sides of what is open, two of the image, distances of image and plate
 * from the hologram, angle at which the light comes to the plate; then, where nothing masks the hologram, the share of the beam that it catches. `virtual`: the image lies behind the hologram.
 */
export const imageLight = (virtual: boolean): Rule => ({
  name: 'light of an image', of: [virtual], source: 'geometry: each point of the hologram sends its light through each point of the image', curved: true,
  formula: 'cos θ / (F₁ F₂): F the greater of opening · |1 − L/D| and image · |L/D|, D and L the distances of image and plate',
  compute: ([a1, a2, b1, b2, d, l, angle, caught]) => {
    const at = virtual ? -d! : d!;
    const square = imageSpread(a1!, b1!, at, l!) * imageSpread(a2!, b2!, at, l!);
    return (Math.cos(angle!) / square) * (caught ?? 1);
  },
});

/** Light that nobody has metered. Inputs: power on the hologram, light for each watt, efficiency, what the image is beside even light over its size. */
export const PREDICTED_IMAGE: Rule = {
  name: 'predicted light of an image', formula: 'power on the hologram · light for each watt · efficiency · image light', curved: true,
  compute: PREDICTED_OBJECT.compute, partials: PREDICTED_OBJECT.partials!,
};
