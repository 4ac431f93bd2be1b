/** What is written, as it is shown. */
import type { Expr, LineTree, Word } from '../../grammar/tree.ts';
import { gapBefore } from './show.ts';

/** A statement as it stands, without its comment and the brace of its block. */
export const statementText = ({ text, comment }: LineTree): string => withoutBrace(text.slice(0, comment?.start).trim());

export const withoutBrace = (text: string): string => (text.endsWith('{') ? text.slice(0, -1).trimEnd() : text);

/** An expression as it would be written: for the formula behind a value that the text computes. */
export function written(e: Expr): string {
  switch (e.kind) {
    case 'number': return `${e.value}${unit(e.unit)}`;
    case 'unknown': return `?${unit(e.unit)}`;
    case 'ratio': return `${e.left}:${e.right}`;
    case 'date': return e.text;
    case 'string': return `“${e.value}”`;
    case 'phrase': return e.words.map(w => w.text).join(' ');
    case 'call': return `${e.name.text}(${e.args.map(written).join(', ')})${unit(e.unit)}`;
    case 'group': return `(${e.items.map(written).join(', ')})${unit(e.unit)}`;
    case 'unary': return `${e.op === '-' ? '−' : '+'}${written(e.arg)}`;
    case 'binary': return `${written(e.left)} ${{ '+': '+', '-': '−', '*': '·', '/': '/' }[e.op]} ${written(e.right)}`;
    case 'sizes': return e.parts.map(written).join(' × ');
    case 'tolerance': return `${written(e.value)} ${e.op} ${written(e.by)}${e.std ? ' std' : ''}`;
    case 'path': return e.items.map(written).join(' → ');
    case 'row': return e.items.map(written).join(' ');
    case 'list': return e.items.map(written).join(', ');
  }
}

const unit = (u: Word | undefined): string => (u === undefined ? '' : (u.text === '%' ? '' : gapBefore(u.text)) + u.text);
