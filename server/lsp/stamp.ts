/** The day and minute by the clock on the wall, as a page dates them. */
const two = (n: number): string => String(n).padStart(2, '0');

/** `2026-02-18` */
export const dayOf = (d: Date): string => `${String(d.getFullYear()).padStart(4, '0')}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
/** `2026-02-18T21:40` */
export const minuteOf = (d: Date): string => `${dayOf(d)}T${two(d.getHours())}:${two(d.getMinutes())}`;
