/** What the server and its client say to each other of an evening at the table: readings, shots, outcomes. */

/** What is asked of a page during an evening at the table is of one setup: that of the name, else the one that the line is in. */
export interface EveningParams {
  readonly textDocument: { readonly uri: string };
  /** zero-based line of the cursor */
  readonly line?: number;
  readonly setup?: string;
}
interface Span { readonly start: { readonly line: number; readonly character: number }; readonly end: { readonly line: number; readonly character: number } }
/** Edits of one version of a document that only ever add lines; of another version they must not be made. */
export interface Additions {
  readonly version: number;
  readonly edits: readonly { readonly range: Span; readonly newText: string }[];
}
/** Why not, as a sentence. */
export interface Refused { readonly refused: string }

/** Request of a client: what there is to read of a setup, in the order in which it is set up. */
export const READINGS = 'platewright/readings';
export interface ReadingsAnswer {
  readonly setup: string;
  readonly readings: readonly {
    /** by which it is entered: what stands between `measured` and the colon */
    readonly subject: string;
    readonly group: 'legs' | 'sums' | 'paths' | 'light' | 'wheels' | 'powers';
    readonly what: string;
    readonly how: string;
    /** as shown: `752 ± 2 mm`; empty where nothing on the page tells */
    readonly expected: string;
    readonly known: string;
    /** of a bare number; empty where it has none */
    readonly unit: string;
    /** with what it is taken to be read */
    readonly by?: string;
    /** what the page has of it: `751 mm, on 2026-02-18 at 21:40` */
    readonly read?: string;
    /** and that is of the day that was asked for */
    readonly today: boolean;
  }[];
}
export interface ReadingsParams extends EveningParams { /** `2026-02-18`, by the clock of whoever reads */ readonly day: string }

/** Request of a client: the line of a reading, and what comes of it. Nothing is written: that is up to the client. */
export const ENTER = 'platewright/enterReading';
export interface EnterParams extends EveningParams {
  readonly subject: string;
  /** as it was typed: `752`, `752 mm ± 2 mm by tape` */
  readonly value: string;
  /** `2026-02-18T21:40` */
  readonly on: string;
}
export type EnterAnswer = Refused | (Additions & {
  readonly line: string;
  /** what was read beside what was planned, and by how many standard uncertainties they lie apart */
  readonly says: string;
  /** missing where there was nothing to hold it against */
  readonly agrees?: boolean;
  /** what it brings: what disagrees, the likeliest cause, what to move */
  readonly findings: readonly string[];
});

/** Request of a client: what of the losses along the beams the powers tell that were read, and how each is written into the page. */
export const LOSSES = 'platewright/losses';
export interface LossesAnswer {
  readonly setup: string;
  readonly version: number;
  readonly losses: readonly { readonly words: string; readonly detail: string; readonly edits: Additions['edits'] }[];
  /** what they cannot tell, and what to read for it, sentences */
  readonly open: readonly string[];
}

/** Request of a client: what a panel needs that goes through a shot with somebody. */
export const SHOOT = 'platewright/shoot';
export interface ShootParams extends EveningParams { readonly day: string }
export interface ShootStep { readonly text: string; readonly small?: string; readonly write?: string }
export interface ShootOpening {
  /** missing where there is one only */
  readonly name?: string;
  /** what becomes of the table before it, and what is done once it is over */
  readonly change: readonly ShootStep[];
  readonly close: string;
  /** s; missing where nothing on the page tells one figure */
  readonly seconds?: number;
  /** what it comes to by the page: `13 to 55 s`; empty where nothing tells */
  readonly byPage: string;
  readonly strips: readonly { readonly of: string; readonly times: readonly string[] }[];
}
export type ShootAnswer = Refused | {
  readonly setup: string;
  /** what the entry will be called */
  readonly shot: string;
  readonly cautions: readonly string[];
  readonly before: readonly ShootStep[];
  readonly dark: readonly ShootStep[];
  readonly handsOff: string;
  readonly away: string;
  /** s; missing where nothing on the page tells */
  readonly settle?: number;
  /** of the shutter, in their order: one, but for a plate that gets several exposures; the plates rest before each */
  readonly openings: readonly ShootOpening[];
  readonly notes: readonly string[];
  /** which colour of a screen may be shown beside open plates, and why */
  readonly dim: { readonly hue: 'red' | 'green' | 'blue' | 'black'; readonly why: string };
};

/** Request of a client: the entry of a plate that was shot. Nothing is written: that is up to the client. */
export const SHOT = 'platewright/shot';
export interface ShotParams extends EveningParams {
  /** `2026-02-18` */
  readonly on: string;
  /** how long the shutter was open, s; with names of a plate that gets several exposures */
  readonly exposures: readonly { readonly name?: string; readonly seconds: number }[];
  readonly settle?: number;
  /** which plate it was */
  readonly plate?: string;
  readonly note?: string;
}
export type ShotAnswer = Refused | (Additions & { readonly shot: string; readonly text: string; readonly notes: readonly string[] });

/** Request of a client: the newest shot without an outcome, with the words that `why` knows; with `words` its line. */
export const OUTCOME = 'platewright/outcome';
export interface OutcomeParams extends EveningParams { readonly shot?: string; readonly words?: string }
export type OutcomeAnswer = Refused
  | { readonly setup: string; readonly shot: string; readonly on?: string; readonly more: number; readonly known: readonly string[] }
  | (Additions & { readonly line: string; /** line of the shot */ readonly at: number; /** what `why` understands by it */ readonly says: string });
