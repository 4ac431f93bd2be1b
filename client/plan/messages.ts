/** What the panel and the page in it say to each other. Each side takes only what it knows, and drops the rest: it may be of another version, or come from somewhere else. */
import type { PictureAnswer, PictureItem, Probe, PictureSheet } from '../../server/lsp/protocol.ts';
import { box, exactly, list, maybe, number, oneOf, record, sheet, truth, words, type Is } from '../guards.ts';

/** A thing or a leg in the picture. They come in the order of the text. */
export interface Item {
  readonly id: string;
  readonly words: string;
  /** it stands in the text of the page, and can be shown there */
  readonly written: boolean;
  readonly drags: PictureItem['drags'];
  /** why it cannot be moved, in words that go on from its name */
  readonly stays?: string | undefined;
  /** the middle of a thing in the sheet, mm */
  readonly x?: number | undefined;
  readonly y?: number | undefined;
}

/** A picture to be shown. */
export interface Shown {
  readonly kind: 'picture';
  /** address of the page that it is of */
  readonly page: string;
  /** of its text */
  readonly version: number;
  readonly setup: string;
  readonly variant?: string | undefined;
  readonly choices: PictureAnswer['choices'];
  /** which view it is of, and which there are */
  readonly look: string;
  readonly looks: PictureAnswer['views'];
  /** of a view of one plate: which, and which there are */
  readonly plate?: string | undefined;
  readonly plates: readonly string[];
  /** in which colour it may be shown beside open plates, and how many errors the page has */
  readonly dim: PictureAnswer['dim'];
  readonly errors: number;
  readonly figures: PictureAnswer['figures'];
  readonly probe?: Probe | undefined;
  readonly sheet: PictureSheet;
  readonly items: readonly Item[];
  /** items in the line of the cursor */
  readonly marked: readonly string[];
  /** why it is still the picture from before, or another view than the one that was chosen */
  readonly kept?: string | undefined;
  /** it is the picture from before */
  readonly old?: boolean | undefined;
}
/** Why there is no picture, and what to do. */
export interface Nothing {
  readonly kind: 'nothing';
  readonly words: string;
  /** lines to write, as an example */
  readonly example?: string | undefined;
  readonly setup?: string | undefined;
  readonly choices?: PictureAnswer['choices'] | undefined;
}
/** The cursor is in the line of these items now. */
export interface Marked { readonly kind: 'marked'; readonly ids: readonly string[] }
/** What comes of a {@link Drag}, which is answered once: the picture as it would be, which is not written; or why nothing moves. Neither when it was let go and written. */
export interface Would {
  readonly kind: 'would';
  /** that of the question */
  readonly n: number;
  readonly would?: Pick<Shown, 'sheet' | 'items' | 'figures'> | undefined;
  readonly words?: string | undefined;
}
/** Somebody wants the panel dark, or lit again. */
export interface Darken { readonly kind: 'darken' }
export type ToPage = Shown | Nothing | Marked | Would | Darken;

/** The page is there, and waits. */
export interface Ready { readonly kind: 'ready' }
/** Somebody wants to see an item in the text; with `focus` to write there too. */
export interface Show { readonly kind: 'show'; readonly id: string; readonly focus: boolean }
export interface Choose { readonly kind: 'choose'; readonly setup: string; readonly variant?: string | undefined }
/** Another view of the setup, or of another plate; of views from a plate, from another point of it, as shares of half its width and height. */
export interface Look { readonly kind: 'look'; readonly look: string; readonly plate?: string | undefined; readonly from?: Spot | undefined }
export interface Spot { readonly x: number; readonly y: number }
/** Somebody drags a thing, or has let it go. */
export interface Drag {
  readonly kind: 'drag';
  readonly n: number;
  readonly item: string;
  readonly gesture: 'move' | 'turn';
  /** in the sheet, mm: where the middle of the thing is to be, or what it is to be turned to; of a key, how many steps it goes */
  readonly x: number;
  readonly y: number;
  readonly stepped: boolean;
  /** no snapping */
  readonly free: boolean;
  /** it is to be written */
  readonly dropped: boolean;
}
export type FromPage = Ready | Show | Choose | Look | Drag;

/** What a page keeps for when the window is loaded anew. */
export interface Remembered {
  readonly page: string;
  readonly setup: string;
  readonly variant?: string | undefined;
  /** which view was chosen, of which plate, and from where */
  readonly look?: string | undefined;
  readonly plate?: string | undefined;
  readonly from?: Spot | undefined;
  /** how far the picture is moved, in pixels, and how large a millimetre is; undefined while all of it is in sight */
  readonly view?: { readonly x: number; readonly y: number; readonly k: number } | undefined;
  /** it was dark */
  readonly dark?: boolean | undefined;
}

const counted = record<Probe>({ box, columns: number, rows: number, values: list(number), texts: list(words), words, across: list(words), down: list(words) });
const probe: Is<Probe> = (v): v is Probe => counted(v) && Number.isInteger(v.columns) && Number.isInteger(v.rows) && v.columns > 0 && v.rows > 0 && v.texts.length === v.columns * v.rows && v.across.length === v.columns && v.down.length === v.rows;
const spot = record<Spot>({ x: number, y: number });
const looks = list(record<PictureAnswer['views'][number]>({ name: words, words, why: maybe(words) }));
const figures = list(record<PictureAnswer['figures'][number]>({ label: words, text: words }));
const dim = record<PictureAnswer['dim']>({ hue: oneOf('red', 'green', 'blue', 'black'), why: words });
const choices = list(record<PictureAnswer['choices'][number]>({ setup: words, variants: list(words) }));

const gesture: Is<Drag['gesture']> = oneOf('move', 'turn');
const items = list(record<Item>({ id: words, words, written: truth, drags: list(gesture), stays: maybe(words), x: maybe(number), y: maybe(number) }));

const isShown = record<Shown>({
  kind: exactly('picture'), page: words, version: number, setup: words, variant: maybe(words), choices, look: words, looks, plate: maybe(words), plates: list(words), dim, errors: number, figures, probe: maybe(probe), sheet, items, marked: list(words), kept: maybe(words), old: maybe(truth),
});
const isNothing = record<Nothing>({ kind: exactly('nothing'), words, example: maybe(words), setup: maybe(words), choices: maybe(choices) });
const isMarked = record<Marked>({ kind: exactly('marked'), ids: list(words) });
const isWould = record<Would>({ kind: exactly('would'), n: number, would: maybe(record<NonNullable<Would['would']>>({ sheet, items, figures })), words: maybe(words) });
const isDarken = record<Darken>({ kind: exactly('darken') });
export const isToPage = (v: unknown): v is ToPage => isShown(v) || isNothing(v) || isMarked(v) || isWould(v) || isDarken(v);

const isReady = record<Ready>({ kind: exactly('ready') });
const isShow = record<Show>({ kind: exactly('show'), id: words, focus: truth });
const isChoose = record<Choose>({ kind: exactly('choose'), setup: words, variant: maybe(words) });
const isLook = record<Look>({ kind: exactly('look'), look: words, plate: maybe(words), from: maybe(spot) });
const isDrag = record<Drag>({ kind: exactly('drag'), n: number, item: words, gesture, x: number, y: number, stepped: truth, free: truth, dropped: truth });
export const isFromPage = (v: unknown): v is FromPage => isReady(v) || isShow(v) || isChoose(v) || isLook(v) || isDrag(v);

export const isRemembered = record<Remembered>({ page: words, setup: words, variant: maybe(words), look: maybe(words), plate: maybe(words), from: maybe(spot), dark: maybe(truth), view: maybe(record<NonNullable<Remembered['view']>>({ x: number, y: number, k: number })) });
