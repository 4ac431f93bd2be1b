/** What all shots teach, and all shots by date, as an editor asks for them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { HistoryAnswer, LearnAnswer } from '../../server/lsp/protocol.ts';
import { startEditor, type Editor } from './editor.ts';

const BOX = 'inventory lab {\n  plate fine {\n    sensitivity: 40 µJ/cm² ×÷ 2 // the usual range\n  }\n}\n';
const page = (name: string, shots: string): string => `use "box.plate"
setup "${name}" {
  laser red
  splitter S1
  object limpet
  plate P1 = lab.fine
  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1200 mm
  beam object from S1 reflected
    -> limpet: 1000 mm
    -> P1: 200 mm
${shots}}
`;
const shot = (n: number, day: string, dose: number): string => `  shot ${n} on ${day} {\n    dose: ${dose} µJ/cm²\n    outcome: "bright"\n  }\n`;

let folder: string;
let editor: Editor;
beforeEach(() => { folder = mkdtempSync(join(tmpdir(), 'platewright-shots-')); });
afterEach(() => { editor.close(); rmSync(folder, { recursive: true }); });

async function asked<T>(method: string, files: Readonly<Record<string, string>>, open: Readonly<Record<string, string>> = {}): Promise<T> {
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  editor = await startEditor({ folder: pathToFileURL(folder).href });
  for (const [name, text] of Object.entries(open)) await editor.open(text, pathToFileURL(join(folder, name)).href);
  return editor.connection.sendRequest(method, {});
}
const learnt = (files: Readonly<Record<string, string>>, open?: Readonly<Record<string, string>>): Promise<LearnAnswer> => asked('platewright/learn', files, open);

describe('what shots teach', () => {
  it('is learnt from all pages of the folder, and offered as a change of the inventory', async () => {
    const { shots, pages, markdown, updates } = await learnt({ 'box.plate': BOX, 'a.plate': page('Limpet', shot(1, '2026-01-10', 50)), 'b.plate': page('Cockle', shot(1, '2026-01-12', 72)), 'c.plate': page('Whelk', '') });
    expect([shots, pages]).toEqual([2, 2]);
    expect(markdown).toMatch(/^# What 2 shots on 2 pages teach\n/);
    expect(markdown).toContain('a.plate, shot 1 on 2026-01-10: 50 µJ/cm²');
    expect(markdown).toContain('Two shots: how plates differ is told by no more than the difference of the two.');
    // Two lie by ln(72/50) = 0.365 apart, and Student's t of one degree is 12.7: that is less sure than a factor of two.
    expect(markdown).toContain('What stands there is surer than so few shots can make it: shoot more before it is written.');
    expect(updates).toHaveLength(1);
    // √(50 · 72) = 60
    expect(updates[0]).toMatchObject({
      uri: pathToFileURL(join(folder, 'box.plate')).href, line: '    sensitivity: 40 µJ/cm² ×÷ 2 // the usual range', range: { start: { line: 2, character: 17 }, end: { line: 2, character: 31 } },
      newText: expect.stringMatching(/^60 µJ\/cm² ×÷ \d/) as string, words: expect.stringMatching(/^lab\.fine: sensitivity: 60 µJ/) as string, detail: '2 shots; there stands 40 µJ/cm² ×÷ 2, which is surer',
    });
  });
  it('is learnt from a page as it is open, saved or not', async () => {
    const { shots, updates } = await learnt({ 'box.plate': BOX, 'a.plate': page('Limpet', '') }, { 'a.plate': page('Limpet', shot(1, '2026-01-10', 50)) });
    expect([shots, updates[0]?.newText]).toEqual([1, expect.stringMatching(/^50 µJ\/cm²/)]);
  });
  it('offers nothing where shots contradict one another, and says so', async () => {
    const strip = (n: number, best: number): string => `  shot ${n} {\n    dose: 10 µJ/cm²\n    exposure: 10 s\n    best exposure: ${best} s\n  }\n`;
    const { markdown, updates } = await learnt({ 'box.plate': BOX, 'a.plate': page('Limpet', strip(1, 10) + strip(2, 40)) });
    expect(updates).toEqual([]);
    expect(markdown).toContain('These shots do not go together');
  });
  it('says where there is no shot', async () => {
    const { shots, markdown, updates } = await learnt({ 'box.plate': BOX, 'a.plate': page('Limpet', '') });
    expect([shots, updates]).toEqual([0, []]);
    expect(markdown).toContain('There is no shot on these pages.');
  });
  it('of a page that is torn in the middle of a shot is what the rest tells', async () => {
    const { markdown } = await learnt({ 'box.plate': BOX, 'a.plate': page('Limpet', shot(1, '2026-01-10', 50)).slice(0, -20) });
    expect(markdown).not.toMatch(/NaN|Infinity|undefined/);
  });
});

it('all shots by date, of all pages', async () => {
  const { shots, pages, markdown } = await asked<HistoryAnswer>('platewright/history', { 'box.plate': BOX, 'a.plate': page('Limpet', shot(1, '2026-01-12', 50)), 'b.plate': page('Cockle', shot(1, '2026-01-10', 72)) });
  expect([shots, pages]).toEqual([2, 2]);
  const rows = markdown.split('\n').filter(l => l.startsWith('| 2026'));
  expect(rows.map(r => /b\.plate|a\.plate/.exec(r.replaceAll('\\', ''))?.[0])).toEqual(['b.plate', 'a.plate']);
});
