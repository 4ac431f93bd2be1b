/** The walkthroughs of `server/adding.md` as steps: files to write, parts to replace, commands with what they print. */
export interface Replacement { readonly old: string; readonly new: string }
export type Step =
  | { readonly kind: 'new'; readonly path: string; readonly text: string }
  | { readonly kind: 'edit'; readonly path: string; readonly parts: readonly Replacement[] }
  | { readonly kind: 'run'; readonly commands: readonly string[]; prints?: readonly string[] };
export interface Walkthrough { readonly title: string; readonly steps: readonly Step[] }

/** By their headings; what stands before the first is the part without a title. */
export function walkthroughs(page: string): Walkthrough[] {
  return page.split(/^## /m).map((part, i) => ({ title: i === 0 ? '' : part.slice(0, part.indexOf('\n')), steps: stepsOf(part) }));
}

function stepsOf(part: string): Step[] {
  const steps: Step[] = [];
  for (const [, what, path, language, text] of part.matchAll(/(?:^\*\*(New|Edit)\*\* `(.*?)`\n\n)?^```(\w+)\n(.*?)^```$/gms)) {
    const last = steps.at(-1);
    if (what === 'New') steps.push({ kind: 'new', path: path!, text: text! });
    else if (what === 'Edit') steps.push({ kind: 'edit', path: path!, parts: text!.split('@@\n').map(h => ({ old: side(h, '-'), new: side(h, '+') })) });
    else if (language === 'sh') steps.push({ kind: 'run', commands: text!.trim().split('\n') });
    else if (language === 'text' && last?.kind === 'run' && !last.prints) last.prints = text!.trimEnd().split('\n');
    else throw new Error(`a block of ${language} belongs to nothing: ${text!.slice(0, 60)}`);
  }
  return steps;
}

const side = (hunk: string, sign: string): string => hunk.split('\n').filter(l => l.startsWith(sign)).map(l => l.slice(1)).join('\n');

/** The text with each part replaced; an error where one is not there exactly once. */
export function replaced(text: string, { path, parts }: Extract<Step, { kind: 'edit' }>): string {
  return parts.reduce((t, p) => {
    const pieces = t.split(p.old);
    if (pieces.length !== 2) throw new Error(`${path} has ${pieces.length - 1} times: ${p.old}`);
    return pieces.join(p.new);
  }, text);
}

/** Whether something printed has, in this order, lines that hold what is expected; `…` stands for anything. */
export function isPrinted(printed: string, expected: readonly string[]): boolean {
  const lines = printed.replaceAll(/\x1B\[[\d;]*m/g, '').split('\n');
  let at = 0;
  return expected.every(e => {
    const found = lines.findIndex((l, i) => i >= at && e.split('…').map(p => p.trim()).reduce((from, p) => (from < 0 ? from : ((n => (n < 0 ? n : n + p.length))(l.indexOf(p, from)))), 0) >= 0);
    at = found + 1;
    return found >= 0;
  });
}
