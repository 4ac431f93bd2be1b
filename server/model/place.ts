/** Places of the text. Those that a model holds move with the statement that they stand in. */
import type { Node, Span } from '../../grammar/tree.ts';

/**
 * A range in one line of one file; UTF-16 units, `end` exclusive, never empty in a model. Its line is that of the newest text: do not copy it by its members
 * (the type checker sees to that), but take `within` for another range of the same line.
 */
export declare class Place {
  private constructor();
  readonly uri: string;
  get line(): number;
  readonly start: number;
  readonly end: number;
}

class PlaceOf implements Place {
  constructor(readonly uri: string, private readonly on: { readonly at: number }, readonly start: number, readonly end: number) {}
  get line(): number { return this.on.at; }
  within(start: number, end: number): Place { return new PlaceOf(this.uri, this.on, start, end); }
  toJSON(): Place { return fixed(this); }
}

/** A range in the line of a statement or leg. */
export const placeIn = (uri: string, on: Node, span: Span): Place => new PlaceOf(uri, on, span.start, Math.max(span.end, span.start + 1));

/** Another range in the line of a place. */
export const within = (at: Place, { start, end }: Span): Place => (at instanceof PlaceOf ? at.within(start, end) : { uri: at.uri, line: at.line, start, end });

/** The place as it is now. */
export const fixed = ({ uri, line, start, end }: Place): Place => ({ uri, line, start, end });
