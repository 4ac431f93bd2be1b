/** Rules of a splitter's glass: the second spot, which its back face throws back beside the beam that is reflected. */
import { refractiveIndex, type Glass } from '../../optics/glass.ts';
import { reflectedShares } from '../../optics/surfaces/fresnel.ts';
import { secondSpotAngle, secondSpotOffset, secondSpotShare } from '../../optics/ghosts/second-spot.ts';
import type { Rule } from '../graph.ts';
import { GLASSES } from './lengths.ts';

/** Distance of the second spot from the first. Inputs: thickness, wavelength, angle of incidence. */
export const secondSpot = (glass: Glass): Rule => ({
  name: 'second spot', of: [glass], formula: '2t sin θ cos θ / √(n² − sin²θ)', source: 'geometry of a plane-parallel plate (Born & Wolf, Principles of Optics, §7.5)',
  compute: ([t, wavelength, incidence]) => secondSpotOffset(t!, refractiveIndex(glass, wavelength!), incidence!),
});

/** Angle at which the second spot leaves the first. Inputs: wavelength, angle of incidence, wedge. */
export const secondSpotTurn = (glass: Glass): Rule => ({
  name: 'second spot of a wedge', of: [glass], formula: '2α √(n² − sin²θ) / cos θ, the wedge in the plane of incidence; across it cos θ times as much', source: 'Snell’s law, first order in the wedge',
  compute: ([wavelength, incidence, wedge]) => secondSpotAngle(refractiveIndex(glass, wavelength!), incidence!, wedge!),
});

/** Share of the reflected light that is in the second spot. Inputs: share that the film reflects, share of the light that is s-polarized, wavelength, angle of incidence. */
export const secondSpotLight = (glass: Glass): Rule => ({
  name: 'light in the second spot', of: [glass], formula: '(1 − r)²R / (r + (1 − r)²R), R of a bare back face', source: 'conservation of energy; Fresnel (Born & Wolf, Principles of Optics, §1.5)',
  compute: ([reflects, s, wavelength, incidence]) => {
    const R = reflectedShares(incidence!, refractiveIndex(glass, wavelength!));
    const part = Math.max(0, Math.min(1, s!));
    return secondSpotShare(reflects!, part * R.s + (1 - part) * R.p);
  },
});

/** Share of level light that is s on an upright face: all that is upright. Inputs: angle of the laser's polarization from vertical, its polarized share. */
export const S_PART: Rule = {
  name: 's-polarized share', formula: 'polarized share · cos² of its angle + half of the rest', source: 'Malus’s law (any optics text)',
  compute: ([angle, polarized]) => polarized! * Math.cos(angle!) ** 2 + (1 - polarized!) / 2,
};

/** Angle that a wedge of half a degree gives the second spot, in plain numbers. */
export const usualWedgeTurn = (glass: string, wavelength: number, incidence: number): number => secondSpotAngle(refractiveIndex(GLASSES[glass]!, wavelength), incidence, Math.PI / 360);
