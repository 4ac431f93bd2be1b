/** What is written as a table or drawn as a plot: how, and where to. */
import type { Done, ExitCode } from './done.ts';
import { Misuse } from './files.ts';
import { writeMade } from './writing.ts';

export const TABLE_FORMATS = ['text', 'json', 'markdown', 'csv', 'svg'] as const;
export type TableFormat = (typeof TABLE_FORMATS)[number];

export interface Target {
  readonly format?: TableFormat;
  readonly output?: string;
  /** a plot on a dark ground */
  readonly dark: boolean;
}

/** A plot is written in the ways of any picture. */
const ENDS: Readonly<Record<string, TableFormat>> = { csv: 'csv', json: 'json', md: 'markdown', txt: 'text', svg: 'svg', png: 'svg', pdf: 'svg' };

/** As it is asked for, else by the end of the name of what is written. @param what "A sweep" */
export function formatOf(what: string, { format, output, dark }: Target): TableFormat {
  const byEnd = output === undefined ? undefined : ENDS[/\.([^./\\]*)$/.exec(output)?.[1]?.toLowerCase() ?? ''];
  if (output !== undefined && format === undefined && byEnd === undefined) throw new Misuse(`${what} is written as ${Object.keys(ENDS).map(e => `.${e}`).join(', ')}: choose another name for ${output}, or say --format.`);
  if (format === 'svg' && output !== undefined && byEnd !== 'svg') throw new Misuse(`A plot is written as .svg, .png or .pdf: choose another name for ${output}.`);
  const kind = format ?? byEnd ?? 'text';
  if (dark && kind !== 'svg') throw new Misuse('--dark is for plots: add --format svg, or -o with a name that ends in .svg, .png or .pdf.');
  return kind;
}

/** Without a name it goes to standard output, as text. */
export function handedOver(made: string | Uint8Array, output: string | undefined, code: ExitCode): Done {
  if (output === undefined) return { out: made as string, code };
  writeMade(output, made);
  return { out: `${output}: written\n`, code };
}
