/** What the server and its client say to each other beyond the standard protocol. Names and plain data, so that both sides can import it. */
import type { Probe } from '../drawing/probe.ts';

export * from './check-protocol.ts';
export * from './evening-protocol.ts';
export * from './shots-protocol.ts';
export * from './starts-protocol.ts';
export type { Probe };

/** Request of a client: the figures of the setup at a line, for a status bar. */
export const SUMMARY = 'platewright/summary';

export interface SummaryParams {
  readonly textDocument: { readonly uri: string };
  /** zero-based line of the cursor */
  readonly line: number;
}

export interface SummaryAnswer {
  readonly setup: string;
  /** plate that the figures are of, when the setup has more than one */
  readonly plate?: string;
  /** as shown: `84 ± 7 mm` */
  readonly mismatch?: string;
  /** brightness of the part that records worst, as shown: `16 to 53 %` */
  readonly brightness?: string;
  /** what records worst: `darkest part of whelk` */
  readonly part?: string;
  /** all of this in Markdown, in which nothing of the file is markup */
  readonly markdown: string;
  /** the worst finding in the setup; accepted ones don't count */
  readonly worst?: {
    readonly severity: 'error' | 'warning' | 'note' | 'hint';
    readonly message: string;
    readonly line: number;
    readonly character: number;
  };
}

/** Request of a client: why the shot at a line came out as it did; at any other line, what holds its setup back. */
export const WHY = 'platewright/why';
/** Command of a client that opens the answer: address of the page, line. The server offers it to a client that says in its {@link InitializationOptions} that it has it. */
export const WHY_COMMAND = 'platewright.why';

export interface WhyParams {
  readonly textDocument: { readonly uri: string };
  /** zero-based */
  readonly line: number;
}

export interface WhyAnswer {
  readonly title: string;
  /** in which nothing of the file is markup */
  readonly markdown: string;
}

/** Request of a client: the card for the bench of a setup, as a page of HTML to be saved and printed. Nothing is written: that is up to the client. */
export const CARD = 'platewright/card';

export interface CardParams {
  readonly textDocument: { readonly uri: string };
  /** zero-based line of the cursor: of the setup that it is in */
  readonly line: number;
  /** A4 by default */
  readonly paper?: 'a4' | 'letter';
  /** HTML by default. PDF is made by a server that says in `experimental.printsCards` of its capabilities that it does */
  readonly form?: 'html' | 'pdf';
}

export interface CardAnswer {
  /** of which setup */
  readonly setup: string;
  /** a whole page, which asks for nothing from the network and runs no script; missing where a PDF was asked for */
  readonly html?: string;
  /** a whole file, in base64; missing where HTML was asked for, and where it could not be made */
  readonly pdf?: string;
  /** why there is no PDF, as a sentence */
  readonly refused?: string;
}

/** Request of a client: the picture of a setup, for a panel beside the text. */
export const PICTURE = 'platewright/picture';

export interface PictureParams {
  readonly textDocument: { readonly uri: string };
  /** zero-based line of the cursor: the setup that it is in is drawn, unless `setup` names one */
  readonly line?: number;
  readonly setup?: string;
  readonly variant?: string;
  /** one of the names in {@link PictureShown.views}; the first by default */
  readonly view?: string;
  /** of views of one plate */
  readonly plate?: string;
  /** of views from a plate: which point of it the eye is at, as shares of half its width and height, −1 to 1, to the right and up for somebody who looks through it at the object; the middle by default */
  readonly viewpoint?: { readonly x: number; readonly y: number };
}

/** A mark of a picture. Tags and attributes are of SVG; what is text is never markup. */
export interface PictureMark {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly PictureMark[];
  readonly text?: string;
}

export interface PictureSheet {
  readonly title: string;
  /** in mm of the table, y downwards */
  readonly box: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  readonly marks: readonly PictureMark[];
}

export interface PictureItem {
  /** that of `data-item` of its marks */
  readonly id: string;
  readonly words: string;
  /** where it stands in the text; undefined for what stands in another file */
  readonly range?: TextRange;
  /** where the middle of a thing is in the sheet from above, mm */
  readonly x?: number;
  readonly y?: number;
  /** what of it can be dragged: see {@link DRAG} */
  readonly drags: readonly ('move' | 'turn')[];
  /** why it cannot be moved, in words that go on from its name */
  readonly stays?: string;
}

export interface TextRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** A picture and what stands beside it. */
export interface PictureShown {
  /** of the document that it was made of */
  readonly version: number;
  readonly setup: string;
  readonly variant?: string;
  readonly choices: readonly { readonly setup: string; readonly variants: readonly string[] }[];
  /** which view it is of */
  readonly view: string;
  /** all that there are, with what they show; `why` says in a sentence why one cannot be drawn */
  readonly views: readonly { readonly name: string; readonly words: string; readonly why?: string }[];
  /** of a view of one plate: which; and which plates there are */
  readonly plate?: string;
  readonly plates: readonly string[];
  /** missing where the view cannot be drawn */
  readonly sheet?: PictureSheet;
  /** the figures of a map, to be shown under a pointer */
  readonly probe?: Probe;
  readonly items: readonly PictureItem[];
  /** mismatch, beam ratio and the like, as shown */
  readonly figures: readonly { readonly label: string; readonly text: string }[];
  /** which colour of a screen it may be shown in while plates lie open, by what is written of plates and safelight, and in a sentence or two why */
  readonly dim: { readonly hue: 'red' | 'green' | 'blue' | 'black'; readonly why: string };
}
export interface PictureAnswer extends PictureShown {
  /** how many errors the page has */
  readonly errors: number;
}

/** Request of a client: what the page and its picture would be with a thing moved or turned. Nothing is written: that is up to the client, once, when the thing is let go. */
export const DRAG = 'platewright/drag';

export interface DragParams extends PictureParams {
  /** of the document that the pointer is over; of another one nothing is answered */
  readonly version: number;
  readonly item: string;
  readonly gesture: 'move' | 'turn';
  /** where the pointer is in the sheet, mm */
  readonly x: number;
  readonly y: number;
  /** a key did it: `x` and `y` are steps from where the thing is, to the next hole that way; of a turn `x` is degrees counterclockwise */
  readonly stepped?: boolean;
  /** the modifier is held: no snapping */
  readonly free: boolean;
  /** it was let go: what is written then must leave no new error */
  readonly dropped: boolean;
}

export type DragAnswer =
  /** edits of that version of the document, and the picture as it would be, whose errors nobody has counted */
  | { readonly version: number; readonly edits: readonly { readonly range: TextRange; readonly newText: string }[]; readonly picture: PictureShown }
  /** why not, as a sentence */
  | { readonly refused: string };

/** An earlier text of a page, that the page is held against. */
export interface EarlierText {
  readonly text: string;
  /** its address, where it is another file: from there it names the files that it uses */
  readonly uri?: string;
  /** the files that it used, as they were then; null where there was none. What is not here is read as it is now */
  readonly files: readonly { readonly uri: string; readonly text: string | null }[];
}

/** Request of a client: the addresses of files that an earlier text used and that are not among its `files`. Asked again with these, it names what they used in turn; at last nothing. */
export const USED = 'platewright/used';
export interface UsedParams {
  readonly textDocument: { readonly uri: string };
  readonly before: EarlierText;
}

/** Request of a client: what of its own a page can be held against, setup by setup: its variants, and how it stood when a plate was shot. */
export const AGAINST = 'platewright/against';
export interface AgainstParams { readonly textDocument: { readonly uri: string } }
export type AgainstAnswer = readonly { readonly setup: string; readonly variants: readonly string[]; readonly shots: readonly { readonly name: string; /** `2026-02-11` */ readonly on?: string }[] }[];

/** Request of a client: a page as it stood when a plate was shot, as far as its own dates tell. Answered by nothing where it has no such shot. */
export const AS_SHOT = 'platewright/asShot';
export interface AsShotParams {
  readonly textDocument: { readonly uri: string };
  readonly setup: string;
  readonly shot: string;
}
export interface AsShotAnswer {
  readonly on?: string;
  /** missing where the shot has no date to go by, or where a brace is missing, so that nobody knows what belongs to the setup */
  readonly text?: string;
  readonly unclosed?: true;
}

/** Request of a client: whether a text has a shot of that name, in whatever setup. The oldest of the revisions that have it tells how the page stood then. */
export const HAS_SHOT = 'platewright/hasShot';
export interface HasShotParams { readonly text: string; readonly shot: string }

/** Request of a client: what has become of a page since an earlier text, or what a variant makes of it, by its newest text. */
export const REVIEW = 'platewright/review';
export interface ReviewParams {
  readonly textDocument: { readonly uri: string };
  /** a variant is held against its setup as written, and shown as what comes after it */
  readonly before: EarlierText | { readonly variant: string; readonly setup: string };
  /** of an earlier text: only this setup is wanted, by its name now or before */
  readonly setup?: string;
}

/** Where something stands; `before`: in the earlier text. */
export interface ReviewPlace {
  readonly side: 'before' | 'after';
  readonly uri: string;
  readonly range: TextRange;
}

/** Something that was written otherwise, a result that is another one, or a finding. Texts are as they are shown. */
export interface ReviewRow {
  /** `M3 was moved`, a result by its name, what a finding says */
  readonly words: string;
  readonly before?: string;
  readonly after?: string;
  /** `+79 mm`, `42 mm further away` */
  readonly by?: string;
  /** so unsure are both that it may as well be as it was */
  readonly unsure?: boolean;
  /** of a finding: its kind, and how bad it is */
  readonly code?: string;
  readonly severity?: 'error' | 'warning' | 'note' | 'hint';
  readonly at?: ReviewPlace;
}

export interface ReviewFindings {
  readonly cured: readonly ReviewRow[];
  readonly added: readonly ReviewRow[];
  readonly accepted: readonly ReviewRow[];
  /** errors of both texts, which keep figures from both */
  readonly amiss: readonly ReviewRow[];
  /** how many others are still there */
  readonly still: number;
}

export interface ReviewSetup {
  readonly name: string;
  /** its name, and what it was called before */
  readonly title: string;
  /** what became of it, as a sentence */
  readonly headline: string;
  readonly unchanged: boolean;
  readonly changes: readonly ReviewRow[];
  readonly results: readonly ReviewRow[];
  readonly goals: readonly ReviewRow[];
  /** how much is the same, as a sentence; missing where only one of the texts has the setup */
  readonly same?: string;
  readonly findings: ReviewFindings;
  /** where it begins, in the newer text if it is there */
  readonly at: ReviewPlace;
  /** both on one table; missing where it cannot be drawn, and `why` says in a sentence why */
  readonly sheet?: PictureSheet;
  readonly why?: string;
  readonly items: readonly { readonly id: string; readonly words: string; readonly at: ReviewPlace }[];
}

export interface ReviewAnswer {
  /** of the document that it was made of */
  readonly version: number;
  readonly setups: readonly ReviewSetup[];
  readonly inventories: readonly { readonly name: string; readonly changes: readonly ReviewRow[] }[];
  /** what stands beside setups and inventories */
  readonly rest: { readonly changes: readonly ReviewRow[]; readonly findings: ReviewFindings };
  /** says in a sentence that nothing differs; missing where something does */
  readonly nothing?: string;
  /** files that the earlier text used, of which nothing was said: read as they are now */
  readonly borrowed: readonly string[];
}

/** Notification of a client: the text of an open page in the last commit, by which each setup is told what became of it; null where none is known, or it is not wanted. Sent again when it is another one. */
export const BASE = 'platewright/base';
export interface BaseParams {
  readonly textDocument: { readonly uri: string };
  /** `since` is what it is called: `the last commit` */
  readonly base: (EarlierText & { readonly since: string }) | null;
}
/** Command of a client that shows the {@link REVIEW} of a page since that text: address of the page. The server offers it to a client that says in its {@link InitializationOptions} that it has it. */
export const REVIEW_COMMAND = 'platewright.sinceLastCommit';

/** Request of the server: the text of a file that the server cannot read itself; null where it is missing. Only sent to a client that says so in its {@link InitializationOptions}. */
export const READ_FILE = 'platewright/readFile';

export interface ReadFileParams {
  readonly uri: string;
}

/** Request of the server: the addresses of the pages in the open folders, for references and names in other pages. At most {@link MAX_LISTED} and one more, which says that there are more. */
export const LIST_FILES = 'platewright/listFiles';
export const MAX_LISTED = 2000;

export interface InitializationOptions {
  /** the client has {@link WHY_COMMAND} */
  readonly opensWhy?: boolean;
  /** the client has {@link REVIEW_COMMAND}, and tells of each page its {@link BASE} */
  readonly opensReview?: boolean;
  /** findings of all pages of the open folders are wanted, not only of those that are open */
  readonly checksAllPages?: boolean;
  /** the client answers {@link LIST_FILES} */
  readonly listsFiles?: boolean;
  /** the client answers {@link READ_FILE} */
  readonly readsFiles?: boolean;
  /** folders that the files which a page uses are looked for in, besides those that are open: absolute paths or addresses */
  readonly inventoryFolders?: readonly string[];
}
