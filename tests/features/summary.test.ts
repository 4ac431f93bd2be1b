import { describe, expect, it } from 'vitest';
import { summaryAt } from '../../server/features/summary.ts';
import { but, marked, whelk } from './source.ts';

const at = (source: string) => {
  const { snapshot, line } = marked(source);
  return summaryAt(snapshot, line);
};

describe('the summary', () => {
  it('of the notebook gives the mismatch, the darkest part and the finding', () => {
    const summary = at(but('mirror M2', 'mirror M|2'));
    expect(summary).toMatchObject({ setup: 'Whelk shell', mismatch: '84 ± 7 mm', part: 'darkest part of whelk', worst: { code: 'arms-mismatched', severity: 'warning' } });
    expect(summary!.brightness).toMatch(/^\d+ to \d+ %$/);
  });

  it('of matched arms has no finding worse than a hint', () => expect(at(but('468 mm', '384| mm'))?.worst).toBeUndefined());

  it('leaves out what the text accepts', () => expect(at(but('  plate P1', '  accept arms-mismatched "on purpose"|\n  plate P1'))?.worst).toBeUndefined());

  it('is that of the setup in which the cursor is', () => {
    const second = but('"Whelk shell"', '"Cockle"', but('468 mm', '384 mm'));
    expect(at(`${whelk}\n${but('mirror M3', 'mirror M3|', second)}`)).toMatchObject({ setup: 'Cockle', mismatch: expect.stringMatching(/^0 ±/) as string });
    expect(at(`|${whelk}\n${second}`)?.setup).toBe('Whelk shell');
  });

  it('names the plate where there are several, and tells of the one that records worst', () => {
    const text = but('  plate P1', '  plate P1\n  splitter S2\n  splitter S3\n  plate P2', but('    -> S1: 350 mm', '    -> S2: 350 mm\n  beam first from S2 through\n    -> S1: 350 mm\n  beam second from S2 reflected\n    -> S3: 350 mm'));
    const more = '  object cockle\n  beam reference-2 from S3 through\n    -> P2: 900 mm\n  beam object-2 from S3 reflected\n    -> cockle: 600 mm\n    -> P2: 300 mm\n}\n';
    expect(at(`|${text.replace(/}\n$/, more)}`)).toMatchObject({ plate: 'P1', mismatch: '84 ± 7 mm' });
  });

  it('of an unknown coherence has the mismatch only', () => {
    const summary = at(but('    tube length: 350 mm\n', '|'));
    expect(summary?.mismatch).toBe('84 ± 7 mm');
    expect(summary?.brightness).toBeUndefined();
  });

  it('of a file without a setup is nothing', () => expect(at('|inventory lab {\n}\n')).toBeUndefined());
});
