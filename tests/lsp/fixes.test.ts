// What the editor is offered for a finding that rests on readings: the server's clock dates the line that goes with it.
import { afterEach, expect, it } from 'vitest';
import { startEditor, type Editor } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());

const PAGE = `setup "Whelk shell" {
  laser red {
    coherence length: 100 mm
  }
  splitter S1
  mirror M1
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> M1: 455 mm
    -> whelk: 800 mm
    -> P1: 300 mm
  measured object: 1556 mm ± 3 mm on 2026-02-11
}
`;

it('a measured path is matched by moving its mirror, on the day of the server', async () => {
  editor = await startEditor();
  const p = await editor.open(PAGE);
  const before = new Date();
  // Planned 1555 − 1471 mm, read 1556: 85 mm too long, which 800 mm can spare best.
  const [action] = (await p.actions(p.range('beam object'))).filter(a => a.title.includes('M1 then counts as moved'));
  const days = [before, new Date()].map(d => `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`);
  expect(action).toMatchObject({ title: 'Shorten the leg M1 → whelk from 800 to 715 mm: the object path then matches. M1 then counts as moved: measure “object” anew', kind: 'quickfix' });
  const edits = action!.edit!.changes?.[p.uri] ?? action!.edit!.documentChanges!.flatMap(c => ('edits' in c ? c.edits : []));
  expect(edits.map(e => ('newText' in e ? e.newText : ''))).toEqual(['715', expect.stringMatching(new RegExp(`^\\n  moved M1 on (?:${days.join('|')})$`)) as string]);
});
