/**
 * What is assumed of a plate when only the sort of its layer is known: the ranges of the handbooks, each as a band.
 * Ranges from memory of Collier, Burckhardt and Lin, Optical Holography (1971), chapter 10, of Bjelkhagen, Silver-Halide Recording
 * Materials (1993), and of Hariharan, Optical Holography (1996), chapter 7. A data sheet or a test strip is always better.
 */
import type { Assumed } from './kind.ts';

export const MATERIALS = ['fine-grain silver halide', 'finer-grain silver halide', 'ultra-fine silver halide', 'dichromated gelatin', 'photopolymer', 'photoresist', 'thermoplastic'] as const;
/** Of the top of a table. Of wood no figure would be honest: it moves far more with damp than with warmth. */
export const TABLE_MATERIALS = ['steel', 'stainless steel', 'cast iron', 'aluminium', 'granite', 'concrete', 'plate glass', 'invar'] as const;
export type TableMaterial = (typeof TABLE_MATERIALS)[number];

type Material = (typeof MATERIALS)[number];
type Bands = Readonly<Partial<Record<Material, Assumed>>>;

const BOOK = 'Bjelkhagen 1993, from memory';
const COLLIER = 'Collier and others 1971, ch. 10, from memory';

/** Exposure for the brightest image. */
export const SENSITIVITY: Bands = {
  'fine-grain silver halide': { text: '12 µJ/cm² ×÷ 8', why: `plates of this sort need 1.5 to 100 µJ/cm² (${BOOK})` },
  'finer-grain silver halide': { text: '120 µJ/cm² ×÷ 2.5', why: `plates of this sort need 50 to 300 µJ/cm² (${BOOK})` },
  'ultra-fine silver halide': { text: '1.2 mJ/cm² ×÷ 4', why: `plates of this sort need 0.3 to 5 mJ/cm² (${BOOK})` },
  'dichromated gelatin': { text: '70 mJ/cm² ×÷ 7', why: `10 mJ/cm² in the blue to 500 and more in the green (${COLLIER})` },
  photopolymer: { text: '16 mJ/cm² ×÷ 3.2', why: 'dry photopolymers need 5 to 50 mJ/cm² (Hariharan 1996, from memory)' },
  photoresist: { text: '100 mJ/cm² ×÷ 5', why: `20 to 500 mJ/cm² at 442 to 458 nm (${COLLIER})` },
  thermoplastic: { text: '10 µJ/cm² ×÷ 10', why: `1 to 100 µJ/cm² (${COLLIER})` },
};

/** The ranges that those bands stand for, J/m² (1 µJ/cm² is 0.01 J/m²). */
const NEEDED: Readonly<Record<Material, readonly [number, number]>> = {
  'fine-grain silver halide': [0.015, 1], 'finer-grain silver halide': [0.5, 3], 'ultra-fine silver halide': [3, 50], 'dichromated gelatin': [100, 5000], photopolymer: [50, 500], photoresist: [200, 5000], thermoplastic: [0.01, 1],
};
/** Between which exposures, J/m², a layer of that sort is exposed; of any sort where none is named. */
export function exposuresOf(material: string | undefined): { readonly low: number; readonly high: number } {
  const known = Object.entries(NEEDED).filter(([m]) => material === undefined || m === material).map(([, range]) => range);
  return { low: Math.min(...known.map(r => r[0])), high: Math.max(...known.map(r => r[1])) };
}

export const RESOLVING_POWER: Bands = {
  'fine-grain silver halide': { text: '3000 lines/mm ± 20%', why: `grains of 30 to 50 nm are rated at about 3000 lines/mm (${BOOK})` },
  'finer-grain silver halide': { text: '5000 lines/mm ± 20%', why: `grains of 25 to 40 nm are rated at about 5000 lines/mm (${BOOK})` },
  'ultra-fine silver halide': { text: '8500 lines/mm ± 20%', why: `grains of 8 to 15 nm are rated at 7000 to more than 10000 lines/mm (${BOOK})` },
  'dichromated gelatin': { text: '7000 lines/mm ×÷ 1.4', why: `it has no grain; 5000 to 10000 lines/mm are stated (${COLLIER})` },
  photopolymer: { text: '4200 lines/mm ×÷ 1.4', why: '3000 to 6000 lines/mm are stated (Hariharan 1996, from memory)' },
  photoresist: { text: '1700 lines/mm ×÷ 1.75', why: `1000 to 3000 lines/mm (${COLLIER})` },
  thermoplastic: { text: '800 lines/mm ×÷ 2', why: `it records a band of 400 to 1500 lines/mm only (${COLLIER})` },
};

/** Thickness of the layer. */
export const LAYER: Bands = {
  'fine-grain silver halide': { text: '6 µm ± 1 µm', why: `5 to 7 µm are usual (${BOOK})` },
  'finer-grain silver halide': { text: '6 µm ± 1 µm', why: `5 to 7 µm are usual (${BOOK})` },
  'ultra-fine silver halide': { text: '8 µm ± 2 µm', why: `6 to 10 µm are usual (${BOOK})` },
  'dichromated gelatin': { text: '12 µm ×÷ 2.5', why: `5 to 30 µm (${COLLIER})` },
  photopolymer: { text: '16 µm ×÷ 3.2', why: '5 to 50 µm (Hariharan 1996, from memory)' },
  photoresist: { text: '1.2 µm ×÷ 2.5', why: `0.5 to 3 µm (${COLLIER})` },
  thermoplastic: { text: '1 µm ×÷ 1.5', why: `about 1 µm (${COLLIER})` },
};

const SILVER: Assumed = { text: '1.62 ± 0.03', why: `unexposed silver halide in gelatin has 1.6 to 1.65 (${BOOK})` };
/** Refractive index of the layer before processing; methods of measuring it disagree (Campbell, Kim and Kostuk, Appl. Opt. 34, 2548, 1995). */
export const INDEX: Bands = {
  'fine-grain silver halide': SILVER, 'finer-grain silver halide': SILVER, 'ultra-fine silver halide': SILVER,
  'dichromated gelatin': { text: '1.54 ± 0.03', why: 'dry gelatin has 1.51 to 1.55, by humidity; from memory' },
  photopolymer: { text: '1.5 ± 0.03', why: 'dry photopolymers have 1.49 to 1.52; from memory' },
  photoresist: { text: '1.65 ± 0.05', why: 'positive resists have 1.6 to 1.7 in the blue; from memory' },
};
