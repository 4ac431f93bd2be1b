// The bench card as the editor writes it: in each form and for each paper, read back from where it was written.
import * as vscode from 'vscode';
import placed from '../../../examples/whelk-on-the-table.plate';
import { closeAll, equal, ok, open, text, until } from './whelk.ts';

declare const EXPECTED_HOST: 'node' | 'worker';

const at = (name: string): vscode.Uri => vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, name);
const sizeOf = (uri: vscode.Uri): Thenable<number> => vscode.workspace.fs.stat(uri).then(s => s.size, () => 0);
/** Each byte as a letter, so that what is no text can be looked at as well. */
const read = async (uri: vscode.Uri): Promise<string> => [...await vscode.workspace.fs.readFile(uri)].map(b => String.fromCharCode(b)).join('');
/** Ends when all of the file is written, or the command has ended without one. What is offered behind it stays open, and nobody waits for its answer. */
async function write(page: string, paper: string, form: string, name: string): Promise<vscode.Uri> {
  await open(page);
  const to = at(name);
  let ended = false;
  void vscode.commands.executeCommand('platewright.writeCard', { paper, form, to }).then(() => { ended = true; });
  let before = 0;
  await until(async () => {
    const size = await sizeOf(to);
    const whole = size > 0 && size === before;
    before = size;
    return whole || (ended && size === 0);
  }, `${name} is written`);
  return to;
}

describe('the bench card', () => {
  afterEach(closeAll);

  for (const [paper, size] of [['a4', 'A4'], ['letter', 'letter']] as const) {
    it(`is HTML for ${size}`, async () => {
      const card = await read(await write(text, paper, 'html', `card-${paper}.html`));
      ok(card.startsWith('<!doctype html>') && card.trimEnd().endsWith('</html>'), 'it is no whole page');
      ok(card.includes(`size: ${size};`), 'it is for another paper');
    });
  }

  // 210 × 297 mm (ISO 216) and 8 1/2 × 11 inches (ANSI), in points of 1/72 inch: what a MediaBox is in (ISO 32000-1, 7.7.3.3).
  for (const [paper, w, h] of [['a4', 595.28, 841.89], ['letter', 612, 792]] as const) {
    it(`is a PDF for ${paper} where the server has a disk, else none`, async () => {
      const to = await write(placed, paper, 'pdf', `card-${paper}.pdf`);
      if (EXPECTED_HOST === 'worker') { ok((await sizeOf(to)) === 0, 'something was written that is no PDF'); return; }
      const card = await read(to);
      ok(/^%PDF-1\.\d/.test(card) && card.trimEnd().endsWith('%%EOF'), 'it is no whole PDF');
      const boxes = [...new Set(card.match(/\/MediaBox \[[^\]]*\]/g))];
      equal(boxes.length, 1, 'sizes of pages');
      const [, , width, height] = /\[(\S+) (\S+) (\S+) (\S+)\]/.exec(boxes[0]!)!.slice(1).map(Number);
      ok(Math.abs(width! - w) < 0.01 && Math.abs(height! - h) < 0.01, `its pages are ${width!} × ${height!}`);
      // The holes of the table are a pattern (ISO 32000-1, 8.7.3.1), and its letters go along (9.9).
      for (const part of ['/PatternType 1', '/FontFile2']) ok(card.includes(part), `there is no ${part} in ${card.length} bytes, ${String(/\/Title [^\n]*/.exec(card)?.[0])}`);
    });
  }
});
