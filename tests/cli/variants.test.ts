// A setup as one of its variants makes it, and files that are looked for in other folders.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const variant = '  variant "longer" {\n    reference.1: 790 mm\n  }\n  variant "broken" {\n    S1.thickness: gapp + 1 mm\n  }\n';
const at = folder({ 'whelk.plate': matched(`  expect mismatch < 10 mm\n${variant}`), 'fine.plate': matched(`  expect mismatch < 10 mm\n${variant.slice(0, variant.indexOf('  variant "broken"'))}`) });
const run = (...args: string[]): ReturnType<typeof inside> => inside(args, { cwd: at });

describe('--variant', () => {
  it('shows the setup as the variant makes it, its expectations held against that', async () => {
    const { out, code } = await run('report', 'fine.plate', '--variant', 'longer');
    expect(out).toContain(', variant “longer”');
    expect(out).toContain('mismatch < 10 mm   not met');
    expect(code).toBe(1);
    expect((await run('report', 'fine.plate')).code).toBe(0);
  });
  it('explains a result of the variant, from its own lines', async () => {
    const { out } = await run('explain', 'fine.plate', 'mismatch', '--variant', 'longer');
    expect(out).toMatch(/790 mm/);
    expect((await run('explain', 'fine.plate', 'mismatch')).out).not.toMatch(/790 mm/);
  });
  it('is wrong usage where there is none of that name, with the nearest', async () => {
    const { err, code } = await run('report', 'fine.plate', '--variant', 'longre');
    expect([code, err]).toEqual([2, 'platewright: fine.plate has no variant “longre”. Did you mean “longer”?\n']);
    expect((await run('report', 'fine.plate', '--variant', 'quite another')).err).toContain('Its variants: “longer”.');
  });
  it('is named in JSON, with what each variant changes', async () => {
    const report = JSON.parse((await run('report', 'fine.plate', '--format', 'json')).out) as { setups: { variant: string | null; variants: { name: string; results: { name: string; written: { value: number }; variant: { value: number } }[] }[] }[] };
    const { variant: own, variants: [longer] } = report.setups[0]!;
    expect([own, longer!.name]).toEqual([null, 'longer']);
    const mismatch = longer!.results.find(r => r.name.endsWith('object.mismatch'))!;
    // The one leg of the reference is 1471 mm as written, 681 mm more than in the variant.
    expect(mismatch.variant.value - mismatch.written.value).toBeCloseTo(0.681, 9);
    expect((JSON.parse((await run('report', 'fine.plate', '--variant', 'longer', '--format', 'json')).out) as typeof report).setups[0]!.variant).toBe('longer');
  });
});

it('check names the variant in what is only wrong there', async () => {
  const { out, code } = await run('check', 'whelk.plate');
  expect(code).toBe(1);
  expect(out).toMatch(/whelk\.plate:\d+:\d+: error: In the variant “broken”: .*“gapp”.*\[unknown-name\]/);
  expect(out).not.toContain('“longer”');
});

describe('--inventory', () => {
  const lab = 'inventory lab {\n  laser red-12 {\n    wavelength: 632.8 nm\n    coherence length: 5 m\n    coherence contrast: 50%\n    power: 12 mW\n  }\n}\n';
  const uses = (more = ''): string => `use "lab.plate"\n${matched().replace(/laser red \{[^}]*\}/, `laser red = lab.red-12${more}`)}`;
  const shop = folder({ 'notebook/2026/whelk.plate': uses(' {\n    coherence length: 3 m\n  }'), 'shelf/lab.plate': lab, 'other/x.plate': '' });
  const codes = async (...args: string[]): Promise<string[]> => (JSON.parse((await inside(['check', '--format', 'json', ...args], { cwd: join(shop, 'notebook') })).out) as { files: { findings: { code: string; severity: string }[] }[] }).files.flatMap(f => f.findings).filter(f => f.severity === 'error').map(f => f.code);
  it('names folders in which files are looked for besides', async () => {
    expect(await codes('2026/whelk.plate')).toEqual(['import-unreadable']);
    expect(await codes('2026/whelk.plate', '--inventory', '../other')).toEqual(['import-unreadable']);
    expect(await codes('2026/whelk.plate', '--inventory', '../other', '--inventory', '../shelf')).toEqual([]);
  });
  it('is told where it was looked', async () => {
    expect((await inside(['check', '2026/whelk.plate', '--inventory', '../other'], { cwd: join(shop, 'notebook') })).out).toContain('Looked in the folder of this file, the working folder, the folder “../other”.');
  });
  it('shows what the inventory has where the setup has something else, with its file and line', async () => {
    const { out } = await inside(['explain', '2026/whelk.plate', 'brightness', '--inventory', '../shelf'], { cwd: join(shop, 'notebook') });
    expect(out.replace(/\s+/g, ' ')).toContain('3 m, instead of lab.red-12’s 5 m (../shelf/lab.plate, line 4)');
    expect(out.replace(/\s+/g, ' ')).toContain('written, ../shelf/lab.plate, line 5');
    expect((await inside(['report', '2026/whelk.plate', '--inventory', '../shelf'], { cwd: join(shop, 'notebook') })).out).toContain('coherence length of red: 3 m, instead of lab.red-12’s 5 m');
  });
});
