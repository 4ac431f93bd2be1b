/** `platewright format`: blanks, indents and line ends put in order. What could not be read stays as it is, and is listed. */
import { format as formatted } from '../../grammar/format.ts';
import { marksOf, parse } from '../../grammar/parse.ts';
import type { Finding } from '../checks/check.ts';
import { checkOf } from '../checks/registry.ts';
import { syntaxProblems } from '../checks/syntax.ts';
import { onScreen, troubled, type Done } from './done.ts';
import { Misuse, openAll, readInput, Trouble } from './files.ts';
import { findingLine } from '../features/listed.ts';
import { replaceText } from './writing.ts';

export async function format(args: readonly string[], { check }: { check: boolean }): Promise<Done> {
  if (args.includes('-')) {
    if (args.length > 1) throw new Misuse('“-” stands for standard input and is named alone');
    return formatInput(await readInput(), check);
  }
  const { opened, troubles } = openAll(args);
  const lines: string[] = [];
  let code: 0 | 1 = 0;
  for (const file of opened) {
    const { text, left } = tidy(file.text, file.name);
    lines.push(...left);
    if (left.length > 0) code = 1;
    if (text === file.text) continue;
    if (check) {
      code = 1;
      lines.push(`${file.name}: would change`);
      continue;
    }
    try {
      replaceText(file.path, file.name, file.text, text);
      lines.push(`${file.name}: formatted`);
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      troubles.push(e);
    }
  }
  return troubled({ out: onScreen(lines.map(l => `${l}\n`).join('')), code }, troubles);
}

function formatInput(before: string, check: boolean): Done {
  const { text, left } = tidy(before, 'standard input');
  const changes = check && text !== before;
  return { out: check ? '' : text, err: [...left, ...(changes ? ['standard input: would change'] : [])], code: left.length > 0 || changes ? 1 : 0 };
}

/** The formatted text, and a line for each line that was left as it is. Byte order marks are kept. */
function tidy(before: string, name: string): { text: string; left: string[] } {
  const mark = before.slice(0, marksOf(before));
  const { text, left } = formatted(before);
  if (left.length === 0) return { text: mark + text, left: [] };
  const kept = new Set(left);
  const seen = new Set<number>();
  // One line each: what stopped the formatter comes first.
  const problems = syntaxProblems(parse(before), name).filter(p => kept.has(p.at.line) && !seen.has(p.at.line) && seen.add(p.at.line));
  return {
    text: mark + text,
    left: problems.map(p => `${findingLine({ ...p, severity: checkOf(p.code).severity, message: checkOf(p.code).message(p.data) } satisfies Finding, () => name)}; the line stays as it is`),
  };
}
