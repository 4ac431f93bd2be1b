// Exit codes as the design fixes them: 0 fine, 1 errors or expectations that are not met, 2 wrong usage, 3 could not read or compute.
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const unmet = '  expect mismatch > 20 mm\n';
const here = folder({
  'fine.plate': matched(),
  'warned.plate': matched('  mirror M1\n').replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n'),
  'broken.plate': matched('  what is this ((\n'),
  'unmet.plate': matched(unmet),
  'accepted.plate': matched(`${unmet}  accept expectation-failed "the limit is for the next plate"\n`),
  'sub/fine.plate': matched(),
  'empty/notes.txt': 'none',
  'binary.plate': Buffer.from([0x73, 0, 1, 2]),
  'latin.plate': Buffer.from('setup "Caf\xe9" {\n}\n', 'latin1'),
  'wide.plate': Buffer.from('\ufeffsetup "x" {\n}\n', 'utf16le'),
});
const run = (...args: string[]): ReturnType<typeof inside> => inside(args, { cwd: here });

describe('0: fine, up to warnings', () => {
  it.each([
    ['check', 'fine.plate'], ['check', 'warned.plate'], ['report', 'fine.plate'], ['report', 'warned.plate'], ['explain', 'fine.plate', 'mismatch'], ['explain', 'arms-mismatched'],
    ['check', 'sub'], ['check', '--strict', 'fine.plate'], ['check', 'accepted.plate'], ['report', 'accepted.plate'], ['format', '--check', 'fine.plate'], ['--help'], ['check', '--help'], ['--version'],
  ])('%s %s %s', async (...args) => {
    const { code, err } = await run(...args.filter(a => a !== ''));
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });
  it('says the version of the package', async () => {
    const { version } = (await import('../../package.json', { with: { type: 'json' } })).default;
    expect((await run('--version')).out).toBe(`${version}\n`);
  });
});

describe('1: errors, and expectations that are not met', () => {
  it.each([['check', 'broken.plate'], ['report', 'broken.plate'], ['check', 'unmet.plate'], ['report', 'unmet.plate'], ['check', '--strict', 'warned.plate'], ['check', 'fine.plate', 'unmet.plate'], ['format', 'broken.plate']])('%s %s %s', async (...args) => {
    expect((await run(...args.filter(Boolean))).code).toBe(1);
  });
  it('a warning that is accepted counts no longer, --strict or not', async () => {
    expect((await run('check', '--strict', 'accepted.plate')).code).toBe(0);
    expect((await run('check', 'accepted.plate')).out).toContain('1 finding accepted');
  });
});

describe('2: wrong usage', () => {
  it.each([
    [[], 'Usage: platewright'], [['chek', 'fine.plate'], 'Did you mean check?'], [['check'], 'FILE'], [['report', '--format', 'sarif', 'fine.plate'], 'Only check writes it; choose text, json or markdown'], [['check', '--format', 'yaml', 'fine.plate'], 'Choose text, json, markdown or sarif'],
    [['report', '--format', 'yaml', 'fine.plate'], 'Choose text, json or markdown'], [['check', '--formt', 'json', 'fine.plate'], 'Did you mean --format?'], [['report', 'fine.plate', 'warned.plate'], 'too many arguments'],
    [['report', 'fine.plate', '--setup', 'Cokle'], 'Did you mean “Cockle”?'], [['explain', 'fine.plate', 'mismach'], 'Did you mean “mismatch”?'], [['explain', 'fine.plate'], 'P1.object.mismatch'],
    [['explain', 'arms-mismached'], 'Did you mean “arms-mismatched”?'], [['explain'], 'WORDS'], [['lsp'], 'platewright lsp --stdio'], [['format', '-', 'fine.plate'], 'named alone'],
    [['draw', 'fine.plate', 'warned.plate'], 'too many arguments'], [['check', '--folder', 'empty', 'fine.plate'], 'does not lie in empty'],
  ] as [string[], string][])('%j', async (args, words) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
  });
});

describe('3: could not read or compute', () => {
  it.each([
    [['check', 'none.plate'], 'none.plate cannot be read: there is no such file'], [['report', 'none.plate'], 'there is no such file'], [['explain', 'none.plate', 'mismatch'], 'there is no such file'], [['format', 'none.plate'], 'there is no such file'],
    [['check', 'empty'], 'no .plate file in this folder'], [['report', 'sub'], 'is a folder'], [['check', 'binary.plate'], 'binary.plate is not text'], [['check', 'latin.plate'], 'not UTF-8 text'], [['check', 'wide.plate'], 'UTF-16'],
    [['check', 'fine.plate/x'], 'no such file'], [['check', '--folder', 'none', 'fine.plate'], 'none cannot be read'], [['explain', 'fine.plate', 'coverage'], 'not computed yet'], [['check', `${'x'.repeat(300)}.plate`], 'name is too long'],
  ] as [string[], string][])('%j', async (args, words) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toContain(words);
    expect(err.split('\n').length).toBe(2);
  });
  it('reads the other files all the same', async () => {
    const { code, out, err } = await run('check', 'none.plate', 'unmet.plate');
    expect(code).toBe(3);
    expect(out).toContain('unmet.plate:17:10: warning: Not met: mismatch is 0 mm, expected above 20 mm');
    expect(err).toContain('none.plate');
  });
});
