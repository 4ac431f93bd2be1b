/** How marks look, by what they are: one table for pictures on paper, on screens and in the dark. Nothing is told by colour alone. */
import type { Attributes } from './marks.ts';

/** What colours are for. */
export interface Palette {
  readonly paper: string;
  readonly table: string;
  readonly edge: string;
  readonly hole: string;
  /** mounts, and things that are a box */
  readonly body: string;
  readonly ink: string;
  readonly quiet: string;
  readonly reference: string;
  readonly object: string;
  readonly amiss: string;
}
type Ink = keyof Palette;

export const PALETTES = {
  light: { paper: '#ffffff', table: '#fbfaf6', edge: '#333333', hole: '#c4c1b8', body: '#e9e6dd', ink: '#111111', quiet: '#5a5a5a', reference: '#00566e', object: '#963b00', amiss: '#b00020' },
  dark: { paper: '#16181a', table: '#1d2023', edge: '#c8c8c8', hole: '#4a4e52', body: '#34383c', ink: '#f2f2f2', quiet: '#a8a8a8', reference: '#66cdea', object: '#ffb26b', amiss: '#ff8a80' },
  // for editors that are set to high contrast
  contrast: { paper: '#000000', table: '#000000', edge: '#ffffff', hole: '#808080', body: '#202020', ink: '#ffffff', quiet: '#d6d6d6', reference: '#6fe0ff', object: '#ffc07a', amiss: '#ffa8a0' },
  contrastLight: { paper: '#ffffff', table: '#ffffff', edge: '#000000', hole: '#8c8c8c', body: '#f0f0f0', ink: '#000000', quiet: '#333333', reference: '#00445a', object: '#6e2a00', amiss: '#8a0012' },
} as const satisfies Record<string, Palette>;

/** The one channel of a screen that shines, and how brightly letters shine in it: as dim as letters on black can be and still have the contrast that WCAG asks for (4.5), a fifth of white or less. Blue never comes that far. Grey is for words that are read before it grows dark. */
const CHANNELS = { red: [[1, 0, 0], 0xf0], green: [[0, 1, 0], 0x8b], blue: [[0, 0, 1], 0xff], grey: [[1, 1, 1], 0x77] } as const;
export type DimHue = keyof typeof CHANNELS;
export const DIM_HUES = Object.keys(CHANNELS) as readonly DimHue[];

/** For work beside open plates: one channel of the screen on black, and of that as little as can be read. What is of which beam is told by dashes. */
export function dim(hue: DimHue): Palette {
  const [channel, most] = CHANNELS[hue];
  const at = (share: number): string => `#${channel.map(c => Math.round(c * most * share).toString(16).padStart(2, '0')).join('')}`;
  return { paper: at(0), table: at(0), edge: at(0.85), hole: at(0.4), body: at(0.2), ink: at(1), quiet: at(1), reference: at(1), object: at(1), amiss: at(1) };
}

type Properties = Readonly<Record<string, string | number>>;
/** A colour by what it is for. */
const of = (ink: Ink): string => `$${ink}`;

/** A mark of several classes takes the properties of each, the last one first. */
const STYLES: Readonly<Record<string, Properties>> = {
  paper: { fill: of('paper') },
  table: { fill: of('table'), stroke: of('edge'), 'stroke-width': 3 },
  hole: { fill: of('hole') },
  mount: { fill: of('body'), stroke: of('edge'), 'stroke-width': 1.2, 'stroke-linejoin': 'round' },
  hanging: { fill: 'none', 'stroke-dasharray': '8 5' },
  face: { stroke: of('ink'), 'stroke-width': 4.5, 'stroke-linecap': 'round', fill: 'none' },
  fine: { stroke: of('ink'), 'stroke-width': 1.5, fill: 'none' },
  glass: { fill: of('paper'), stroke: of('ink'), 'stroke-width': 2 },
  solid: { fill: of('ink'), stroke: of('ink'), 'stroke-width': 1 },
  bare: { fill: of('paper'), stroke: of('ink'), 'stroke-width': 2.5 },
  light: { stroke: of('ink'), 'stroke-width': 2.2, fill: 'none' },
  common: { 'stroke-width': 3.2 },
  reference: { stroke: of('reference') },
  object: { stroke: of('object'), 'stroke-dasharray': '14 6' },
  scattered: { stroke: of('object'), 'stroke-dasharray': '2 6', 'stroke-linecap': 'round' },
  other: { stroke: of('quiet'), 'stroke-dasharray': '14 5 2 5' },
  stray: { stroke: of('amiss'), 'stroke-width': 1.8, 'stroke-dasharray': '5 5', fill: 'none' },
  arrow: { fill: of('ink'), stroke: 'none' },
  'arrow-reference': { fill: of('reference') },
  'arrow-object': { fill: of('object') },
  'arrow-stray': { fill: of('amiss') },
  cone: { fill: of('ink'), 'fill-opacity': 0.06, stroke: 'none' },
  useful: { fill: of('ink'), 'fill-opacity': 0.1, stroke: 'none' },
  'cone-reference': { fill: of('reference'), 'fill-opacity': 0.1 },
  'cone-object': { fill: of('object'), 'fill-opacity': 0.1 },
  'used-reference': { fill: of('reference'), 'fill-opacity': 0.16 },
  'used-object': { fill: of('object'), 'fill-opacity': 0.16 },
  angle: { stroke: of('quiet'), 'stroke-width': 1.2, fill: 'none' },
  blocked: { stroke: of('amiss'), 'stroke-width': 4, fill: 'none' },
  card: { stroke: of('amiss'), 'stroke-width': 4, 'stroke-dasharray': '6 3', fill: 'none' },
  strip: { stroke: of('edge'), 'stroke-width': 1.2, fill: of('body') },
  'strip-reference': { fill: of('reference'), 'fill-opacity': 0.18 },
  'strip-object': { fill: of('object'), 'fill-opacity': 0.18 },
  guide: { stroke: of('reference'), 'stroke-width': 1.5, 'stroke-dasharray': '3 4', fill: 'none' },
  level: { stroke: of('quiet'), 'stroke-width': 1, 'stroke-dasharray': '2 5', fill: 'none' },
  post: { stroke: of('edge'), 'stroke-width': 6, 'stroke-opacity': 0.35, fill: 'none' },
  gap: { stroke: of('amiss'), 'stroke-width': 2.5, fill: 'none' },
  letter: { fill: of('ink'), 'font-family': 'Georgia, "DejaVu Serif", serif' },
  'letter-reference': { fill: of('reference') },
  'letter-object': { fill: of('object') },
  quiet: { fill: of('quiet') },
  warns: { fill: of('amiss') },
  // What is not there any more.
  ghost: { stroke: of('quiet'), 'stroke-width': 1.4, 'stroke-dasharray': '5 4', 'stroke-opacity': 0.8, 'stroke-linejoin': 'round', fill: 'none' },
  'ghost-reference': { stroke: of('reference') },
  'ghost-object': { stroke: of('object'), 'stroke-dasharray': '7 3 2 3' },
  'ghost-edge': { 'stroke-width': 0.8, 'stroke-dasharray': '2 5' },
  new: { stroke: of('ink'), 'stroke-width': 1.4, 'stroke-linejoin': 'round', fill: 'none' },
  shift: { stroke: of('ink'), 'stroke-width': 1.6, fill: 'none' },
  scale: { stroke: of('edge'), 'stroke-width': 2, fill: 'none' },
  // What a hologram shows is seen in the dark, on whatever page.
  night: { fill: '#0b0c0d' },
  lit: { fill: '#e08a4a', 'fill-opacity': 0.75, stroke: '#ffc79a', 'stroke-width': 1.2 },
  rim: { stroke: '#8a8f96', 'stroke-width': 1.2, 'stroke-linejoin': 'round', fill: 'none' },
  hatch: { stroke: '#757b83', 'stroke-width': 1.6 },
  dot: { fill: '#d9560b' },
  spot: { stroke: '#ff8d3a', 'stroke-width': 2.6, fill: 'none' },
  contour: { stroke: '#141414', 'stroke-width': 1.2, 'stroke-linejoin': 'round' },
  'contour-pale': { stroke: '#e6e6e6', 'stroke-width': 1.2, 'stroke-linejoin': 'round' },
  tag: { fill: of('paper'), 'fill-opacity': 0.85 },
  frame: { stroke: of('edge'), 'stroke-width': 1, fill: 'none' },
  // Curves of a plot, by dashes and hues.
  axis: { stroke: of('edge'), 'stroke-width': 1.2, fill: 'none' },
  curve: { 'stroke-width': 2.2, 'stroke-linejoin': 'round', fill: 'none' },
  'curve-0': { stroke: of('reference') },
  'curve-1': { stroke: of('object'), 'stroke-dasharray': '12 5' },
  'curve-2': { stroke: of('ink'), 'stroke-dasharray': '3 4' },
  'curve-3': { stroke: of('reference'), 'stroke-dasharray': '14 4 3 4' },
  'curve-4': { stroke: of('object'), 'stroke-dasharray': '5 3' },
  'curve-5': { stroke: of('ink'), 'stroke-dasharray': '16 4 3 4 3 4' },
  'band-0': { fill: of('reference'), 'fill-opacity': 0.14 },
  'band-1': { fill: of('object'), 'fill-opacity': 0.14 },
  'band-2': { fill: of('ink'), 'fill-opacity': 0.1 },
  'band-3': { fill: of('reference'), 'fill-opacity': 0.14 },
  'band-4': { fill: of('object'), 'fill-opacity': 0.14 },
  'band-5': { fill: of('ink'), 'fill-opacity': 0.1 },
  'band-of-many': { 'fill-opacity': 0.04 },
  'dot-0': { fill: of('reference'), stroke: of('reference') },
  'dot-1': { fill: of('object'), stroke: of('object') },
  'dot-2': { fill: of('ink'), stroke: of('ink') },
  'dot-3': { stroke: of('reference') },
  'dot-4': { stroke: of('object') },
  'dot-5': { stroke: of('ink') },
  'dot-open': { fill: of('paper'), 'stroke-width': 1.6 },
  give: { 'stroke-width': 1.4, 'stroke-dasharray': 'none', fill: 'none' },
  stretch: { stroke: of('amiss'), 'stroke-width': 5 },
  turns: { stroke: of('amiss'), 'stroke-width': 1, 'stroke-dasharray': '4 4', fill: 'none' },
  halo: { stroke: of('table'), 'stroke-width': 5, 'stroke-linejoin': 'round', 'paint-order': 'stroke' },
};

/** Whether a class is one of those that are asked for; all of them where nothing is said. */
const asked = (name: string, used?: ReadonlySet<string>): boolean => used?.has(name) ?? true;

/** @param colour what stands for a colour: its value, or a name that a page gives it @param used only these classes */
export function cssOf(colour: (ink: Ink) => string, used?: ReadonlySet<string>): string {
  return `${Object.entries(STYLES).filter(([name]) => asked(name, used)).map(([name, properties]) => `.${name} { ${Object.entries(properties).map(([k, v]) => `${k}: ${filled(v, colour)}`).join('; ')} }`).join('\n')}\n`;
}

/** Only what changes with the colours. */
export function coloursOf(colour: (ink: Ink) => string, used?: ReadonlySet<string>): string {
  const own = Object.entries(STYLES).filter(([name]) => asked(name, used)).map(([name, properties]) => [name, Object.entries(properties).filter(([, v]) => String(v).startsWith('$'))] as const).filter(([, p]) => p.length > 0);
  return `${own.map(([name, properties]) => `.${name} { ${properties.map(([k, v]) => `${k}: ${filled(v, colour)}`).join('; ')} }`).join('\n')}\n`;
}

/** The same as attributes, for whoever reads no style sheets: what a mark says itself comes last. */
export function styled({ class: names, ...own }: Attributes, palette: Palette): Attributes {
  const properties = (names ?? '').split(' ').flatMap(name => Object.entries(STYLES[name] ?? {}).map(([k, v]) => [k, filled(v, ink => palette[ink])] as const));
  return { ...Object.fromEntries(properties), ...own };
}

const filled = (value: string | number, colour: (ink: Ink) => string): string => {
  const text = String(value);
  return text.startsWith('$') ? colour(text.slice(1) as Ink) : text;
};
