/** Laying out plain text: wrapped paragraphs and columns. No colour, no control characters. */

export const WIDTH = 80;

/** Width on a screen, one for each character. */
export const width = (s: string): number => [...s].length;
export const padEnd = (s: string, to: number): string => s + ' '.repeat(Math.max(0, to - width(s)));
export const padStart = (s: string, to: number): string => ' '.repeat(Math.max(0, to - width(s))) + s;

/** Wraps a paragraph at blanks. `first` opens the first line, the others are indented by `rest`. A value stays with its unit and its `±`. */
export function wrap(text: string, { first = '', rest = first, to = WIDTH }: { first?: string; rest?: string; to?: number } = {}): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of joined(text)) {
    if (!empty && width(line) + 1 + width(word) > to) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}

/** Words that are not parted: `84 ± 7 mm`, and what stands in backticks, to be copied. */
function joined(text: string): string[] {
  const words: string[] = [];
  for (const w of text.match(/`[^`]*`\S*|\S+/gu) ?? []) {
    const last = words[words.length - 1];
    if (last !== undefined && (w === '±' || last.endsWith('±') || (/\d$/.test(last) && /^(?:[nµmc]?m|%|[kMGT]?Hz|°|points)(?![\p{L}\d])/u.test(w)))) words[words.length - 1] = `${last} ${w}`;
    else words.push(w);
  }
  return words;
}

/** Values under each other so that their whole numbers end in one column: ` 750 ± 2 mm` above `1471 ± 3 mm`. */
export function alignValues(values: readonly string[]): string[] {
  const split = values.map(v => /^[−-]?\d+/u.exec(v)?.[0]);
  const most = Math.max(0, ...split.map(n => (n === undefined ? 0 : width(n))));
  return values.map((v, i) => { const n = split[i]; return n === undefined ? v : padStart(n, most) + v.slice(n.length); });
}

const BLOCKS = '▁▂▃▄▅▆▇█';
/** A strip of blocks, one for each share: a whole block is full brightness. */
export const strip = (shares: readonly number[]): string => shares.map(s => BLOCKS[Math.min(BLOCKS.length - 1, Math.max(0, Math.round(s * BLOCKS.length) - 1))]!).join('');

/** Characters that would act on a terminal, made visible. */
export const printable = (s: string): string => s.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]/gu, c => {
  const code = c.charCodeAt(0);
  return code < 0x20 ? String.fromCharCode(0x2400 + code) : code === 0x7f ? '␡' : '\ufffd';
});
