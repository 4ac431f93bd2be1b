/** What a map tells at each of its points: plain data, which panels are sent as it is. */
/** The figures of a map, to be read under a pointer: even steps over a rectangle of the sheet, from edge to edge, row by row from the upper left corner. */
export interface Probe {
  readonly box: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  readonly columns: number;
  readonly rows: number;
  readonly values: readonly number[];
  /** the same as people write them, with the unit */
  readonly texts: readonly string[];
  /** what they are: `light at P1` */
  readonly words: string;
  /** how far each column lies from the middle of the plate, as people say it: `25 mm to the left`; of the one that runs through it nothing; and of each row, `10 mm up` */
  readonly across: readonly string[];
  readonly down: readonly string[];
}
