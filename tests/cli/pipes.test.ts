// Output to pipes: complete, quiet when nobody reads on, and honest when it could not be written.
import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { openSync, closeSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { command, platewright, start } from './command.ts';
import { FIXTURES, folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const full = matched(Array.from({ length: 4000 }, (_, i) => `  mirror M${i}\n`).join(''));
const many = folder(Object.fromEntries(['many.plate', 'b.plate', 'c.plate', 'd.plate'].map(name => [name, full])));

describe('pipes', () => {
  it('gets all of a large output, also when it is read slowly', async () => {
    const child = start(['check', '--format', 'json', '.'], many);
    let out = '';
    child.stdout!.setEncoding('utf8');
    await new Promise(r => setTimeout(r, 500));
    child.stdout!.on('data', (part: string) => { out += part; });
    const [code] = (await once(child, 'close')) as [number];
    expect(code).toBe(0);
    // Four files, each with 1000 of its mirrors that no beam meets, and one note that says how many more there are.
    expect((JSON.parse(out) as { summary: { notes: number } }).summary.notes).toBe(4004);
    expect(out.length).toBeGreaterThan(1e6);
  });
  it('a reader that stops early is no failure', async () => {
    const child = start(['check', 'many.plate'], many);
    let err = '';
    child.stderr!.setEncoding('utf8').on('data', (part: string) => { err += part; });
    await once(child.stdout!, 'readable');
    child.stdout!.destroy();
    const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
    expect({ code, signal, err }).toEqual({ code: 0, signal: null, err: '' });
  });
  it('nor is one that never reads', async () => {
    const child = start(['report', 'whelk.plate']);
    let err = '';
    child.stderr!.setEncoding('utf8').on('data', (part: string) => { err += part; });
    child.stdout!.destroy();
    const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
    expect({ code, signal, err }).toEqual({ code: 0, signal: null, err: '' });
  });
  it.runIf(process.platform === 'linux')('says when the disk is full', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [command(), 'report', 'whelk.plate'], { cwd: FIXTURES, stdio: ['ignore', full, 'pipe'], encoding: 'utf8' });
    closeSync(full);
    expect(status).toBe(3);
    expect(stderr).toMatch(/^platewright: the output could not be written: .*\n$/);
  });
  it('has neither colour nor other marks of a terminal, whatever the environment says', () => {
    for (const env of [{ NO_COLOR: '1' }, { FORCE_COLOR: '3', TERM: 'xterm-256color' }]) {
      for (const args of [['report', 'whelk.plate'], ['check', 'whelk.plate'], ['--help'], ['chek']]) {
        const { out, err } = platewright(args, { env });
        expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
      }
    }
  });
  it('what a text quotes does not act on the terminal', async () => {
    const at = folder({ 'sly.plate': 'setup "Sly \u001b[2J\u202e shell" {\n  miror \u001b[31mM1\n}\n' });
    for (const args of [['check', 'sly.plate'], ['report', 'sly.plate'], ['report', 'sly.plate', '--format', 'markdown'], ['report', 'sly.plate', '--setup', '\u001b[2J'], ['format', '--check', 'sly.plate']]) {
      const { out, err } = await inside(args, { cwd: at });
      expect(out + err).not.toMatch(/[\u001b\u202e]/);
    }
  });
});
