/** Tasks: what they do, and whether the editor finds the findings in what is printed. */
import { describe, expect, test } from 'vitest';
import { doesOf, MATCHER, onTerminal, TASKS, TYPE } from '../../client/task-words.ts';
import { folder, matched } from '../cli/folder.ts';
import { inside } from '../cli/inside.ts';
import { MANIFEST } from './manifest.ts';

const [definition] = MANIFEST.contributes.taskDefinitions;
const [matcher] = MANIFEST.contributes.problemMatchers;

test('the tasks are those that can be written', () => {
  expect(definition!.type).toBe(TYPE);
  expect(definition!.required).toEqual(['does']);
  expect(definition!.properties['does']!.enum).toEqual(TASKS.map(t => t.does));
  expect(definition!.properties['does']!.enumDescriptions).toHaveLength(TASKS.length);
  for (const { does } of TASKS) expect(doesOf({ type: TYPE, does })).toBe(does);
  for (const does of [undefined, 'Check', 'toString', 3]) expect(doesOf({ type: TYPE, does })).toBeUndefined();
});

test('lines end as a terminal wants them', () => { expect(onTerminal('a\nb\n')).toBe('a\r\nb\r\n'); });

describe('the matcher', () => {
  const { pattern } = matcher!;
  const place = ({ file, line, column }: { file: string; line: number; column: number }): object => ({ file, line, column });
  const found = (text: string): unknown[] => text.split('\n').flatMap(line => {
    const m = new RegExp(pattern.regexp).exec(line);
    return m ? [{ file: m[pattern.file], line: Number(m[pattern.line]), column: Number(m[pattern.column]), severity: m[pattern.severity], message: m[pattern.message], code: m[pattern.code] }] : [];
  });
  const pages = folder({
    'fine.plate': matched(),
    'long way.plate': matched().replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n'),
    'sub/broken: yes.plate': matched('  what is this ((\n  mirror M1\n  expect mismatch > 20 mm\n'),
  });

  test('is the one that the tasks name', () => { expect(`$${matcher!.name}`).toBe(MATCHER); });
  test('finds each finding of the command line, with its place, and nothing else', async () => {
    const printed = (await inside(['check', '.'], { cwd: pages })).out;
    const told = JSON.parse((await inside(['check', '.', '--format', 'json'], { cwd: pages })).out) as { files: { findings: { severity: string; code: string; message: string; place: { file: string; line: number; column: number } }[] }[] };
    const expected = told.files.flatMap(f => f.findings.map(x => ({ ...place(x.place), severity: x.severity, message: x.message, code: x.code })));
    expect(new Set(expected.map(e => e.severity))).toContain('error');
    expect(new Set(expected.map(e => e.severity))).toContain('warning');
    expect(found(printed)).toEqual(expected);
  });
  test('takes a path of Windows, and no line of a report', async () => {
    expect(found('C:\\saltmarsh\\whelk.plate:22:8: note: Reads well. [arms-mismatched]')).toMatchObject([{ file: 'C:\\saltmarsh\\whelk.plate', line: 22, column: 8, code: 'arms-mismatched' }]);
    const { out } = await inside(['report', 'fine.plate'], { cwd: pages });
    expect(out).toContain('Paths to P1');
    expect(found(out)).toEqual([]);
  });
  test('says nothing twice of a page that is open', () => { expect(matcher!.applyTo).toBe('closedDocuments'); });
});
