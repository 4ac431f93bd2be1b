/** What is known of a finished hologram under one lamp. Every figure is a cell. */
import type { Thing } from '../../model/model.ts';
import type { Fringes, PairFringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import type { Records } from '../masters/records.ts';
import type { HologramWay } from '../rules/fringes.ts';
import type { Hung, LampSide } from './hung.ts';
import type { Making } from '../making.ts';

/** Why there is no image, or none that could be told. */
export type Trouble = 'no angle' | 'too steep' | 'edge-on' | 'lamp behind' | 'other side' | 'no image' | 'no colour';

/** The light that shows it. */
export interface Light {
  readonly angle: Cell;
  /** curvature at the plate; missing where its distance is */
  readonly curvature: Cell;
  readonly distance?: Cell;
  readonly size?: Cell;
  readonly from?: LampSide;
  readonly beam: 'diverging' | 'parallel' | 'converging';
  /** white, or of one colour */
  readonly white: boolean;
  /** its wavelength, where it has one */
  readonly wavelength?: Cell;
}

/** Places, m behind the plate, and blur of one part of the object. */
export interface Part { readonly part: 'near' | 'middle' | 'far'; readonly place: Cell; readonly lampBlur?: Cell; readonly colourBlur?: Cell; readonly blur?: Cell; readonly unseen?: Cell }

export interface Image {
  readonly angle: Cell;
  /** that of the object light at the recording */
  readonly object: Cell;
  readonly reference: Cell;
  /** curvature of the reference */
  readonly curvature: Cell;
  readonly ratio?: Cell;
  /** in which it is seen: that of the lamp, that which the layer sends back, or that which comes to the eye of the viewer */
  readonly colour: Cell;
  readonly colourBy: 'lamp' | 'layer' | 'viewer' | 'laser';
  /** across the plane of the beams, and in it */
  readonly parts: readonly Part[];
  readonly other: Cell;
  /** blur for an eye, since both differ */
  readonly astigmatic?: Cell;
  readonly size: Cell;
  readonly depth: Cell;
  /** light of one colour only: share of its full brightness */
  readonly brightness?: Cell;
}

/** What there is for eyes. */
export interface View {
  readonly viewer?: Thing;
  readonly distance?: Cell;
  /** as written, or by heights */
  readonly angle?: Cell;
  /** angle through which an eye may go round the middle of the image, from side to side */
  readonly parallax?: Cell;
  /** how far aside it may go and see all of it */
  readonly zone?: Cell;
  /** of a transfer: where the opening of its master stands before the plate, and its width and height there */
  readonly opening?: { readonly place: Cell; readonly width?: Cell; readonly height?: Cell };
  /** of a rainbow hologram: how wide a band of colours runs over the plate, for an eye that is not where the slit is imaged */
  readonly colours?: Cell;
  /** where the line from the viewer to the middle of the image meets the plate, and half of the plate in that direction */
  readonly meets?: { readonly at: Cell; readonly half: number };
}

export interface Shown {
  /** what the names of its cells begin with: `P1.replay` */
  readonly base: string;
  readonly lamp: Thing;
  /** whose recording it is, where several lasers recorded on the plate */
  readonly laser?: Thing;
  readonly plate: Thing;
  readonly pair: PairFringes;
  readonly way: HologramWay;
  readonly rainbow: boolean;
  readonly hung: Hung;
  readonly light: Light;
  readonly trouble?: Trouble;
  readonly image?: Image;
  readonly view: View;
  /** how far its image is seen beside that of the first recording on the plate under that lamp, m where that one stands */
  readonly apart?: Apart;
}

/** `unseen`: what no eye sees there */
export interface Apart { readonly first: Shown; readonly cell: Cell; readonly unseen: Cell }

export interface ReplayContext extends Making {
  readonly fringes: Fringes;
  readonly records: Records;
}
