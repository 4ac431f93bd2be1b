/** The sheets that a card is made for. */
export const PAPERS = ['a4', 'letter'] as const;
export type Paper = (typeof PAPERS)[number];

/** Upright, mm. */
export const SIZES: Readonly<Record<Paper, readonly [width: number, height: number]>> = { a4: [210, 297], letter: [215.9, 279.4] };
/** What printers leave white, and room for a pin or a clip above, mm. */
export const MARGIN = 13;
