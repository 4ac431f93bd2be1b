import { describe, expect, it } from 'vitest';
import type { Library } from '../../server/analysis.ts';
import { definitionAt } from '../../server/features/definition.ts';
import { but, FILE, marked } from './source.ts';

/** The cursor is `|`; where it leads stands between `«` and `»`, or nowhere. */
function check(source: string): void {
  const start = source.indexOf('«');
  const { snapshot, line, character } = marked(source.replace(/[«»]/g, ''));
  const found = definitionAt(snapshot, line, character);
  if (start < 0) { expect(found).toBeUndefined(); return; }
  const [before, inside] = source.replace('|', '').split(/[«»]/) as [string, string];
  const lines = before.split('\n');
  const at = lines[lines.length - 1]!.length;
  expect(found?.to).toEqual({ uri: FILE, line: lines.length - 1, start: at, end: at + inside.length });
}

describe('the declaration of a name', () => {
  it('in a leg', () => check(but('mirror M1', 'mirror «M1»', but('-> M1: 750', '-> M|1: 750'))));
  it('behind from', () => check(but('splitter S1', 'splitter «S1»', but('from S1 through', 'from S1| through'))));
  it('in a placement', () => check('setup "a" {\n  mirror «M1» at (0, 0) mm\n  plate P1 facing M|1\n}'));
  it('of an inventory of the same file', () => check('inventory lab {\n  laser «red-12»\n}\nsetup "a" {\n  laser red = lab.r|ed-12\n}'));
  it('of a let', () => check('setup "a" {\n  let «gap» = 300 mm\n  laser red\n  mirror M1\n  beam raw from red\n    -> M1: 2 * g|ap\n}'));
  it('of a beam, in a reading and in the name of a result', () => {
    check(but('beam reference', 'beam «reference»', but('    -> P1: 300 mm ± 3 mm', '    -> P1: 300 mm ± 3 mm\n  measured ref|erence: 1479 mm')));
    check(but('beam object', 'beam «object»', but('    -> P1: 300 mm ± 3 mm', '    -> P1: 300 mm ± 3 mm\n  expect P1.obj|ect.length < 2 m')));
    check(but('beam raw', 'beam «raw»', but('-> P1: 721 mm ± 2 mm', '-> P1: r|aw.1.length')));
  });
  it('of a thing in the name of a result', () => {
    check(but('plate P1', 'plate «P1»', but('    -> P1: 300 mm ± 3 mm', '    -> P1: 300 mm ± 3 mm\n  expect P|1.object.length < 2 m')));
    check(but('object whelk', 'object «whelk»', but('    -> P1: 300 mm ± 3 mm', '    -> P1: 300 mm ± 3 mm\n  expect P1.wh|elk.far.brightness > 40%')));
  });
  it('of an inventory', () => check('inventory «lab» {\n  laser red-12\n}\nsetup "a" {\n  laser red = la|b.red-12\n}'));
  it('of what a variant changes', () => check('setup "a" {\n  splitter «S1»\n  variant "b" {\n    S|1.reflects: 90%\n  }\n}'));
  it('is where it stands', () => check('setup "a" {\n  splitter «S|1»\n}'));
  it('of a result that nothing is called by is nowhere', () => check(but('    -> P1: 300 mm ± 3 mm', '    -> P1: 300 mm ± 3 mm\n  expect mis|match < 10 mm')));
  it('of a name that means nothing is nowhere', () => check(but('-> M1: 750', '-> M|9: 750')));
  it('of a word of the language is nowhere', () => check(but('mirror M1', 'mir|ror M1')));
});

describe('the file of a use', () => {
  const library: Library = { resolve: path => `file:///saltmarsh/${path}`, text: () => 'inventory lab {\n  laser red-12\n}\n' };
  it('is opened', () => {
    const { snapshot, line, character } = marked('use "la|b.plate"\nsetup "a" {\n  laser red = lab.red-12\n}', library);
    expect(definitionAt(snapshot, line, character)?.to).toMatchObject({ uri: 'file:///saltmarsh/lab.plate', line: 0 });
  });
  it('holds the items that are named', () => {
    const { snapshot, line, character } = marked('use "lab.plate"\nsetup "a" {\n  laser red = lab.red|-12\n}', library);
    expect(definitionAt(snapshot, line, character)?.to).toEqual({ uri: 'file:///saltmarsh/lab.plate', line: 1, start: 8, end: 14 });
  });
  it('declares the inventory that is named', () => {
    const { snapshot, line, character } = marked('use "lab.plate"\nsetup "a" {\n  laser red = l|ab.red-12\n}', library);
    expect(definitionAt(snapshot, line, character)).toMatchObject({ from: { line: 2, start: 14, end: 17 }, to: { uri: 'file:///saltmarsh/lab.plate', line: 0, start: 10, end: 13 } });
  });
});
