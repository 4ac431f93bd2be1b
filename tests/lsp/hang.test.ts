// On the lines of a lamp: an action that writes into its plate from where the reference is to come.
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver/node';
import { analyse } from '../../server/analysis.ts';
import { hangActions } from '../../server/features/hang/in-text.ts';
import { applyEdits } from '../../server/model/edits.ts';
import { startEditor, type Editor, type Page } from './editor.ts';

let editor: Editor;
const open = async (text: string): Promise<Page> => (editor = await startEditor()).open(text);
const page = (plate: string, lamp = 'angle: 45°'): string => `setup "Limpet" {\n  hologram: reflection\n  laser red\n  plate P1${plate}\n  lamp spot {\n    distance: 1.5 m\n    ${lamp}\n  }\n}\n`;
const actions = (p: Page, of: string): Promise<CodeAction[]> => p.ask('textDocument/codeAction', { range: p.range(of), context: { diagnostics: [] } });
const none = { resolve: () => null, text: () => undefined };
const written = (text: string): string[] => {
  const snapshot = analyse('a.plate', text, none);
  return hangActions(snapshot, [4, 7], none).map(a => applyEdits(text, a.edits));
};

describe('in an editor', () => {
  afterEach(() => editor.close());
  it('the angle is written behind the facts of the plate', async () => {
    const p = await open(page(' {\n    image behind: 80 mm\n  }'));
    const [action, ...others] = (await actions(p, 'distance')).filter(a => a.title.startsWith('Write into'));
    expect(others).toEqual([]);
    expect(action).toMatchObject({ title: 'Write into P1, as spot will stand: reference angle: 45°', kind: 'quickfix' });
    expect(await actions(p, 'hologram: reflection')).toEqual([]);
  });
});

describe('the text', () => {
  it.each([
    ['a new line in the plate', ' {\n    image behind: 80 mm // glass\n  }', ' {\n    image behind: 80 mm // glass\n    reference angle: 45°\n  }'],
    ['another value of the same fact', ' {\n    reference angle: 30° ± 2° // as last year\n    image behind: 80 mm\n  }', ' {\n    reference angle: 45° // as last year\n    image behind: 80 mm\n  }'],
    ['a block where the plate has none', ' // glass', ' { // glass\n    reference angle: 45°\n  }'],
  ])('%s', (_, before, after) => { expect(written(page(before))).toEqual([page(after)]); });
  it('with the line ends of the page', () => {
    const of = (plate: string): string => page(plate).replaceAll('\n', '\r\n');
    expect(written(of(' {\n    image behind: 80 mm\n  }'))).toEqual([of(' {\n    image behind: 80 mm\n    reference angle: 45°\n  }')]);
  });
  it.each([['it is said already', ' {\n    reference angle: 45°\n    image behind: 80 mm\n  }', 'angle: 45°'], ['the lamp lights nothing', ' {\n    image behind: 80 mm\n  }', 'angle: 135°']])('nothing where %s', (_, plate, lamp) => { expect(written(page(plate, lamp))).toEqual([]); });
});
