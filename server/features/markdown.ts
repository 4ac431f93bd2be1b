/** Markdown that is shown beside a text: pieces of it, and text from a file that must not become markup. */

/** Text of a file on one line, in which nothing is taken for a mark of Markdown, for HTML or for an address to follow. */
export function escaped(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ').trim()
    .replace(/[\\`*_{}[\]<>()#+!|~&$@=]/g, '\\$&').replace(/:(?=\/\/)/g, '\\:').replace(/\.(?=\p{L})/gu, '\\.').replace(/^(\d+)(?=\.(?:\s|$))/, '$1\\').replace(/^-/, '\\-');
}

/** Paragraphs of a note, in which single line ends mean nothing. Slanted: editors indent a quotation far. */
export const note = (text: string): string => text.split(/\n\s*\n/).map(escaped).filter(p => p !== '').map(p => `*${p}*`).join('\n\n');

export const strong = (text: string): string => `**${escaped(text)}**`;

/** Blocks, parted by empty lines; those that say nothing are left out. */
export const blocks = (...parts: readonly (string | undefined)[]): string => parts.filter(p => p !== undefined && p !== '').join('\n\n');

export const bullets = (rows: readonly string[]): string => rows.map(r => `- ${r}`).join('\n');
