/** `platewright check`: the findings of files. */
import { analyse } from '../analysis.ts';
import { openAll, type Reach } from './files.ts';
import { exitFor } from '../features/listed.ts';
import { checkMarkdown, checkText } from './findings.ts';
import { checkJson } from './json.ts';
import { onScreen, troubled, type CheckFormat, type Done, type ExitCode } from './done.ts';
import { checkSarif } from './sarif.ts';

export function check(args: readonly string[], { format, strict, ...reach }: { format: CheckFormat; strict: boolean } & Reach): Done {
  const { opened, troubles } = openAll(args, reach);
  const files = opened.map(file => {
    const snapshot = analyse(file.uri, file.text, file.texts);
    return { file, snapshot, findings: snapshot.findings };
  });
  const code: ExitCode = troubles.length > 0 ? 3 : exitFor(files.flatMap(f => f.findings), strict);
  return troubled({ out: written(), code }, troubles);

  function written(): string {
    switch (format) {
      case 'json': return checkJson(files, troubles);
      case 'sarif': return checkSarif(files, troubles, code);
      case 'markdown': return onScreen(checkMarkdown(files, troubles));
      case 'text': return files.length > 0 ? onScreen(checkText(files)) : '';
    }
  }
}
