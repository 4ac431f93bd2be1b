/** Markdown that is shown beside a text or written as a page: pieces of it, and text from a file that must not become markup. */

/** Text on one line, in which nothing is taken for a mark of Markdown, for HTML or for an address to follow. What means nothing where it stands is left as it is: such pages are read as plain text, too. */
export function escaped(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu, ' ').trim()
    .replace(/[\\`*_[\]<>#|~$@]|&(?=#?\w+;)/g, '\\$&').replace(/:(?=\/\/)/g, '\\:').replace(DOMAIN, '\\.').replace(/^(\d+)(?=[.)](?:\s|$))/, '$1\\').replace(/^(?:[-+](?=[\s-]|$)|=(?==*$))/, '\\$&');
}
/** The dot before what may be the end of a name on the web, which editors make an address of. */
const DOMAIN = /(?<=\bwww)\.|\.(?=(?:\p{L}{2}|biz|com|edu|gov|net|org|pro|web|xxx|aero|asia|coop|info|museum|name|shop)(?![\p{L}\p{N}]))/giu;

/** Paragraphs of a note, in which single line ends mean nothing. Slanted: editors indent a quotation far. */
export const note = (text: string): string => text.split(/\n\s*\n/).map(escaped).filter(p => p !== '').map(p => `*${p}*`).join('\n\n');

export const strong = (text: string): string => `**${escaped(text)}**`;

/** Blocks, parted by empty lines; those that say nothing are left out. */
export const blocks = (...parts: readonly (string | undefined)[]): string => parts.filter(p => p !== undefined && p !== '').join('\n\n');

/** A table; what stands in its cells is no markup. */
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string => [head, head.map(() => '---'), ...rows.map(r => r.map(escaped))].map(r => `| ${r.join(' | ')} |`).join('\n');

export const bullets = (rows: readonly string[]): string => rows.map(r => `- ${r}`).join('\n');
