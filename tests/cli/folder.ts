// What tests of the command line work on: folders with pages in them.
import { chmodSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { inject } from 'vitest';

export const FIXTURES = resolve('tests/cli/fixtures');

/** A folder that is gone after all tests, with these files in it. */
export function folder(files: Readonly<Record<string, string | Buffer>> = {}): string {
  const path = mkdtempSync(join(inject('folders'), 'platewright-'));
  // Some tests start the command as another user.
  chmodSync(path, 0o755);
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), content);
  }
  return path;
}

/** A setup of a laser with a known coherence and two arms that match, with more lines in it. */
export function matched(more = '', name = 'Cockle'): string {
  return `setup "${name}" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    coherence contrast: 50%
  }
  splitter S1
  object cockle
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> cockle: 1171 mm
    -> P1: 300 mm
${more}}
`;
}
