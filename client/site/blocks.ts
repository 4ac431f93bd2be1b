/** The pages that stand in a text of Markdown, with what lies beside each. */
import { parse } from '../../grammar/parse.ts';

export interface Block {
  /** `plate whelk.plate adds` */
  readonly info: string;
  readonly text: string;
  /** of its first fence, from 1 */
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export interface Step {
  readonly block: Block;
  /** the files as they stand behind this block: one that is named is a file, and lines that are said to add to one stand before its last brace from then on */
  readonly files: Readonly<Record<string, string>>;
}

export function stepsOf(markdown: string): Step[] {
  const files: Record<string, string> = {};
  return blocksOf(markdown).map(block => {
    const [language, name, how] = block.info.split(' ');
    if (language === 'plate' && name !== undefined) files[name] = how === 'adds' ? added(files[name]!, block.text) : block.text;
    return { block, files: { ...files } };
  });
}

const blocksOf = (markdown: string): Block[] => [...markdown.matchAll(/^```(.+)\n([^]*?)^```$/gm)].map(m => {
  const start = m.index + m[1]!.length + 4;
  return { info: m[1]!, text: m[2]!, start, end: start + m[2]!.length, line: markdown.slice(0, m.index).split('\n').length };
});

function added(page: string, piece: string): string {
  const last = page.lastIndexOf('}');
  return `${page.slice(0, last).trimEnd()}\n\n${piece}}\n`;
}

/** Whether a text can be run by itself, and is no piece of a page. */
export const isWhole = (text: string): boolean => parse(text).nodes.some(n => ['setup', 'inventory'].includes(n.line.head?.text ?? ''));
