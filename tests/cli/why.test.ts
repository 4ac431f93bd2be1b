// `platewright why`, as it is run.
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, it } from 'vitest';
import { folder, matched } from './folder.ts';
import { inside } from './inside.ts';

const schema = new Ajv2020({ allErrors: true, strict: false }).compile(JSON.parse(readFileSync('server/cli/report.schema.json', 'utf8')) as Record<string, unknown>);

it('ranks what this page speaks for, and says how to find out', async () => {
  const { code, out } = await inside(['why', 'whelk-too-long.plate', 'dull', 'at', 'the', 'back']);
  expect(code).toBe(0);
  await expect(out).toMatchFileSnapshot('./why-dull.txt');
});
it('takes the words in quotes as well', async () => {
  expect(await inside(['why', 'whelk-too-long.plate', 'dull at the back'])).toEqual(await inside(['why', 'whelk-too-long.plate', 'dull', 'at', 'the', 'back']));
});
it('without words tells the ladder', async () => {
  const { out } = await inside(['why', 'whelk-too-long.plate']);
  expect(out).toContain('What this page itself speaks for');
  expect(out).toContain('What holds back the brightness of whelk on P1');
});
it('is Markdown too', async () => { expect((await inside(['why', '--format', 'markdown', 'whelk-too-long.plate', 'dull'])).out).toMatch(/^# Whelk shell\n\n“dull”, understood as “dull everywhere”\.\n\n## Suspects by this page\n\n1\. \*\*/); });
it('is JSON too, after its schema', async () => {
  const answer = JSON.parse((await inside(['why', '--format', 'json', 'whelk-too-long.plate', 'dull at the back'])).out) as { document: string; setups: { outcomes: string[]; suspects: { name: string; stops: number }[] }[] };
  schema(answer);
  expect(schema.errors).toBeNull();
  expect(answer).toMatchObject({ document: 'why', setups: [{ outcomes: ['dark at the back'] }] });
  expect(answer.setups[0]!.suspects[0]).toMatchObject({ name: 'paths not matched' });
  // 16 % at the dark end of the band: 2.6 stops
  expect(answer.setups[0]!.suspects[0]!.stops).toBeGreaterThan(2);
});
it('the report tells the ladder in JSON as well', async () => {
  const { out } = await inside(['report', '--format', 'json', 'a.plate'], { cwd: folder({ 'a.plate': matched('  beam ratio: 4:1\n') }) });
  const report = JSON.parse(out) as { setups: { losses: { recorded: string; causes: { cause: string; stops: { low: number; high: number } | null }[] }[] }[] };
  schema(report);
  expect(schema.errors).toBeNull();
  const [ladder] = report.setups[0]!.losses;
  expect(ladder!.recorded).toBe('P1.object.recorded brightness');
  // 0.8² = 0.64; log2(1/0.64) = 0.64386 stops
  const ratio = ladder!.causes.find(c => c.cause === 'ratio')!.stops!;
  expect([ratio.low, ratio.high].map(s => s.toFixed(4))).toEqual(['0.6439', '0.6439']);
});
it('suggests outcomes for words that are none, and lists them where nothing is near', async () => {
  const near = await inside(['why', 'whelk.plate', 'wod', 'grian']);
  expect(near.code).toBe(2);
  expect(near.err).toMatch(/no outcome that is known. Did you mean “wood grain”/);
  expect((await inside(['why', 'whelk.plate', 'purple elephants'])).err).toContain('Say it like one of these: nothing at all, dull everywhere');
});
it('takes one setup of several, and one variant', async () => {
  const at = folder({ 'two.plate': matched('  variant "longer" {\n    reference S1 -> P1: 1600 mm\n  }\n', 'Cockle') + matched('', 'Whelk') });
  expect((await inside(['why', 'two.plate'], { cwd: at })).out).toMatch(/Cockle[^]*Whelk/);
  expect((await inside(['why', 'two.plate', '--setup', 'Whelk'], { cwd: at })).out).not.toContain('Cockle');
});
it('of a file without a setup says so', async () => { expect((await inside(['why', 'a.plate', 'dull'], { cwd: folder({ 'a.plate': '// nothing yet\n' }) })).out).toContain('There is no setup in this file.'); });
it('bad files end as with the other commands', async () => { expect((await inside(['why', 'none.plate'])).code).toBe(3); });
