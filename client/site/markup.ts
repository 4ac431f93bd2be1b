/** Marks as text of HTML. */
import type { PictureMark } from '../../server/lsp/protocol.ts';

export const escaped = (words: string): string => words.replace(/[&<>"']/g, c => `&#${c.charCodeAt(0)};`);

export function markup(marks: readonly PictureMark[]): string {
  return marks.map(({ tag, attributes, children, text }) => `<${tag}${Object.entries(attributes).map(([k, v]) => ` ${k}="${escaped(v)}"`).join('')}>${text === undefined ? markup(children) : escaped(text)}</${tag}>`).join('');
}
