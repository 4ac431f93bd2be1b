// `platewright new`: pages to begin with, listed, printed, and written where nothing is yet.
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { STARTS, startOf } from '../../server/features/starts/starts.ts';
import { folder } from './folder.ts';
import { inside } from './inside.ts';

const { text } = startOf('transmission')!;

describe('new', () => {
  it('lists what there is to begin with', async () => {
    const { code, out, err } = await inside(['new']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const s of STARTS) expect(out).toMatch(new RegExp(`^${s.name} +${s.title}\n +${s.words}$`, 'm'));
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
  it('prints a page, which can be checked at once', async () => {
    expect(await inside(['new', 'transmission'])).toEqual({ code: 0, out: text, err: '' });
  });
  it('writes a page that is not there yet', async () => {
    const here = folder();
    expect(await inside(['new', 'transmission', '-o', 'whelk.plate'], { cwd: here })).toEqual({ code: 0, out: 'whelk.plate: written\n', err: '' });
    expect(readFileSync(join(here, 'whelk.plate'), 'utf8')).toBe(text);
    expect(await inside(['check', 'whelk.plate'], { cwd: here })).toEqual({ code: 0, out: '1 file: nothing found.\n', err: '' });
  });
  it('writes over nothing, also where a link leads nowhere yet', async () => {
    const here = folder({ 'whelk.plate': 'mine' });
    symlinkSync('gone.plate', join(here, 'link.plate'));
    for (const name of ['whelk.plate', 'link.plate']) {
      expect(await inside(['new', 'transmission', '-o', name], { cwd: here })).toEqual({ code: 3, out: '', err: `platewright: ${name} is there already, and nothing was written over it: choose another name\n` });
    }
    expect(readFileSync(join(here, 'whelk.plate'), 'utf8')).toBe('mine');
    expect(existsSync(join(here, 'gone.plate'))).toBe(false);
  });
  it.each([
    [['new', 'transmision'], 'Did you mean “transmission”?'], [['new', 'nonsense'], 'platewright new lists them'], [['new', '-o', 'whelk.plate'], 'Say which layout'],
    [['new', 'transmission', '-o', 'whelk.txt'], 'does not end in .plate'], [['new', 'transmission', 'whelk.plate'], 'too many arguments'],
  ] as [string[], string][])('%j is wrong usage', async (args, words) => {
    const here = folder();
    const { code, out, err } = await inside(args, { cwd: here });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(words);
    expect(existsSync(join(here, 'whelk.plate'))).toBe(false);
  });
  it('says so where a folder is missing', async () => {
    expect(await inside(['new', 'transmission', '-o', 'none/whelk.plate'], { cwd: folder() })).toEqual({ code: 3, out: '', err: 'platewright: none/whelk.plate cannot be written: there is no such file or folder\n' });
  });
});
