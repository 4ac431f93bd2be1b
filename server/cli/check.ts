/** `platewright check`: the findings of files. */
import { analyse } from '../analysis.ts';
import { openAll, type Reach } from './files.ts';
import { checkMarkdown, checkText, exitFor } from './findings.ts';
import { checkJson } from './json.ts';
import { onScreen, troubled, type Done, type Format } from './done.ts';

export function check(args: readonly string[], { format, strict, ...reach }: { format: Format; strict: boolean } & Reach): Done {
  const { opened, troubles } = openAll(args, reach);
  const files = opened.map(file => {
    const snapshot = analyse(file.uri, file.text, file.texts);
    return { file, snapshot, findings: snapshot.findings };
  });
  const out = format === 'json' ? checkJson(files, troubles) : format === 'markdown' ? onScreen(checkMarkdown(files, troubles)) : files.length > 0 ? onScreen(checkText(files)) : '';
  return troubled({ out, code: exitFor(files.flatMap(f => f.findings), strict) }, troubles);
}
