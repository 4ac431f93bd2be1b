/** Text that stays text in a page of HTML. */
export const escaped = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu, ' ').replace(/[&<>"']/g, c => `&#${c.charCodeAt(0)};`);
