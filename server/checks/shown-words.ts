/** What findings about a finished hologram share: figures and colours in words, and the lines of their examples. */
import { plain, show } from '../model/show.ts';
import { ANGLE, LENGTH, parseUnit } from '../model/units.ts';
import type { Shown } from '../results/replay/shown.ts';
import { num, type Data } from './check.ts';

const [NM, DEGREE, MM] = [parseUnit('nm')!, parseUnit('°')!, parseUnit('mm')!];
const short = (v: number, digits = 3): number => Number(v.toPrecision(digits));

/** Lengths, angles and multiples of a finding's data, with the digits that anybody needs. */
export const mm = (data: Data, key: string): string => { const v = Math.abs(num(data, key)); return show(short(v), LENGTH, 0, v < 10 ? MM : undefined); };
export const nm = (data: Data, key: string): string => show(Math.round(num(data, key) * 1e9) * 1e-9, LENGTH, 0, NM);
export const degrees = (data: Data, key: string): string => show(short(Math.round((num(data, key) * 1800) / Math.PI) / 10, 4) * (Math.PI / 180), ANGLE, 0, DEGREE);
export const times = (data: Data, key: string): string => `${plain(Math.abs(num(data, key)), 3)} times`;
/** `230 mm behind the plate`, `in the plate` */
export const where = (data: Data, key: string): string => (Math.abs(num(data, key)) < 5e-4 ? 'in the plate' : `${mm(data, key)} ${num(data, key) > 0 ? 'behind' : 'before'} the plate`);

/** Ends of what eyes see, m, and of the colours between; as handbooks draw them, from memory. */
const COLOURS: readonly (readonly [number, string])[] = [[400e-9, ''], [450e-9, 'violet'], [495e-9, 'blue'], [565e-9, 'green'], [590e-9, 'yellow'], [620e-9, 'orange'], [700e-9, 'red']];
/** The name of a colour; undefined of what no eye sees well. */
export function colourWord(wavelength: number): string | undefined {
  const at = COLOURS.findIndex(([to]) => wavelength < to);
  return at <= 0 ? undefined : COLOURS[at]![1];
}

/** Data of a figure: rounded, since its last digits are nobody's affair. */
export const figure = (v: number): number => short(v, 4);
/** Which plate it is, and whose recording on it where several lasers recorded there. */
export const recording = ({ plate, laser }: Shown): Data => ({ plate: laser ? `${plate.id} in ${laser.id}` : plate.id, ...(laser ? { laser: laser.id } : {}) });
export const middle = (s: Shown): NonNullable<Shown['image']>['parts'][number] | undefined => s.image?.parts.find(p => p.part === 'middle');

interface Page { readonly name?: string; readonly hologram?: string; readonly object?: string; readonly plate: string; readonly lamp: string; readonly viewer?: string; readonly setup?: string }
const block = (head: string, facts: string): string => `  ${head} {\n${facts.split('; ').map(f => `    ${f}\n`).join('')}  }\n`;
/** A page of two beams by string, and the lamp under which its hologram will hang. */
export const hangs = ({ name = 'Limpet shell', hologram = 'transmission', object = '300 mm', plate, lamp, viewer }: Page): string => `setup "${name}" {
  hologram: ${hologram}
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object limpet {
    size: 40 x 30 x 20 mm
  }
${block('plate P1', plate)}${block('lamp spot', lamp)}${viewer === undefined ? '' : block('viewer visitor', viewer)}  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> limpet: ${1500 - parseFloat(object)} mm
    -> P1: ${object}
}
`;
