/** `platewright learn`: what the shots of pages teach of stocks and lasers, shown, or written into the inventory. */
import { fileURLToPath } from 'node:url';
import { analyse } from '../../analysis.ts';
import { learn as taught, type Lesson } from '../../features/learn/learn.ts';
import { learnedPage } from '../../features/learn/page.ts';
import { learnedMarkdown, learnedText } from '../../features/learn/text.ts';
import { applyEdits, type Edit } from '../../model/edits.ts';
import { siUnit } from '../../model/units.ts';
import { onScreen, troubled, type Done, type Format } from '../done.ts';
import { openFile, type Reach } from '../files.ts';
import { document, number, place, type Members } from '../json.ts';
import { readShots } from './shots.ts';
import { replaceText } from '../writing.ts';

export interface LearnOptions extends Reach { readonly format: Format; readonly write: boolean }

export function learn(args: readonly string[], { format, write, ...reach }: LearnOptions): Done {
  const { shots, troubles, naming, seen } = readShots(args, reach);
  const found = taught(shots);
  const page = learnedPage(found, naming);
  const out = format === 'json' ? json(found.lessons, found.shots, naming) : onScreen(format === 'markdown' ? learnedMarkdown(page) : learnedText(page));
  return troubled({ out, ...(write ? { err: writeAll(found.lessons, naming, seen, reach) } : {}), code: 0 }, troubles);

  function json(lessons: readonly Lesson[], count: number, named: (uri: string) => string): string {
    return document('learn', { shots: count, lessons: lessons.map(l => lessonJson(l, named)), idle: found.idle.map(i => ({ shot: shotJson(i.shot, named), why: i.why })), unread: troubles.map(t => t.message) });
  }
}

/** Writes the values, each in the place of what stands there, or on a line of its own; nothing else changes. */
function writeAll(lessons: readonly Lesson[], naming: (uri: string) => string, seen: ReadonlyMap<string, string>, reach: Reach): string[] {
  const files = new Map<string, { edits: Edit[]; lines: string[] }>();
  for (const { line, of } of lessons) {
    if (!line?.edit) continue;
    const file = files.get(line.uri) ?? { edits: [], lines: [] };
    files.set(line.uri, file);
    file.edits.push(line.edit);
    file.lines.push(`${naming(line.uri)}: ${of}: ${line.text} written`);
  }
  if (files.size === 0) return ['nothing was written'];
  return [...files].flatMap(([uri, { edits, lines }]) => {
    const path = fileURLToPath(uri);
    const { texts } = openFile(path, reach);
    const text = seen.get(uri)!;
    const end = text.includes('\r\n') ? '\r\n' : '\n';
    const after = applyEdits(text, edits.map(e => ({ ...e, newText: e.newText.replace('\n', end) })));
    // Tried on a copy, as all that is offered.
    const errors = (t: string): number => analyse(uri, t, texts).findings.filter(f => f.severity === 'error').length;
    if (errors(after) > errors(text)) return [`${naming(uri)}: nothing was written, since it could not be read then`];
    replaceText(path, naming(uri), text, after);
    return lines;
  });
}

type Naming = (uri: string) => string;
const shotJson = ({ setup, name, on, at }: Lesson['evidence'][number]['shot'], naming: Naming): Members => ({ setup: setup.name, name, on: on ?? null, place: place(at, naming) });

function lessonJson(l: Lesson, naming: Naming): Members {
  return {
    about: l.about, of: l.of, batches: l.batches, unit: siUnit(l.dim) || '1', value: number(l.value), low: number(l.low), high: number(l.high), factor: number(l.factor),
    evidence: l.evidence.map(e => ({ shot: shotJson(e.shot, naming), kind: e.kind, value: number(e.value), words: e.words, against: l.against.includes(e) })), limits: l.limits,
    line: l.line ? { text: l.line.text, file: naming(l.line.uri), line: l.line.at + 1, was: l.line.was ?? null, canWrite: l.line.edit !== undefined } : null,
  };
}
