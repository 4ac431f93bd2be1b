// What `check --format sarif` prints: against the published schema, and as a reader of the format takes it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv } from 'ajv';
import type { Log, Region, Result, Run } from 'sarif';
import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../server/checks/registry.ts';
import { folder, matched } from './folder.ts';
import { inside, type Ended } from './inside.ts';

interface Schema { $schema?: string; id?: string; definitions: Record<string, Record<string, unknown>> }
const schema = JSON.parse(readFileSync('tests/cli/sarif/sarif-2.1.0-rtm.5.json', 'utf8')) as Schema;
// It is of draft 4, and uses nothing that draft 7 reads otherwise.
delete schema.$schema;
delete schema.id;
// By the errata, a region says where it starts.
schema.definitions['region']!['anyOf'] = [{ required: ['startLine'] }, { required: ['charOffset'] }, { required: ['byteOffset'] }];
const valid = new Ajv({
  allErrors: true, strict: false, unicodeRegExp: false,
  // RFC 3986, and no more of it than that the characters are allowed ones; times there are none.
  formats: { 'uri-reference': /^(?:[\w\-.~:/?#[\]@!$&'()*+,;=]|%[0-9A-F]{2})*$/, uri: (x: string) => URL.canParse(x), 'date-time': () => false },
}).compile(schema);

interface Checked extends Ended { log: Log; run: Run; results: Result[] }
/** Runs it, holds it against the schema, and gives what it says. */
async function sarif(args: readonly string[], cwd?: string): Promise<Checked> {
  const ended = await inside(['check', '--format', 'sarif', ...args], cwd === undefined ? {} : { cwd });
  const log = JSON.parse(ended.out) as Log;
  valid(log);
  expect(valid.errors).toBeNull();
  const run = log.runs[0]!;
  expect(run.invocations).toEqual([expect.objectContaining({ exitCode: ended.code, executionSuccessful: ended.code !== 3 })]);
  return { ...ended, log, run, results: run.results! };
}
const region = (r: Result): Region => r.locations![0]!.physicalLocation!.region!;
const codes = (results: readonly Result[]): string[] => results.map(r => r.ruleId!);
const marks = (results: readonly Result[]): string[] => results.map(r => r.partialFingerprints!['setupCodeSubject/v1']!);

/** A text after the first fix of a result, put in as the format has it: lines and columns from 1, in UTF-16 units, a byte order mark not counted. */
function fixed(text: string, r: Result): string {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const lines = text.slice(mark.length).split(/(?<=\r\n|\n|\r(?!\n))/);
  const at = (line: number, column: number): number => mark.length + lines.slice(0, line - 1).join('').length + column - 1;
  const parts = r.fixes![0]!.artifactChanges[0]!.replacements.map(p => ({ from: at(p.deletedRegion.startLine!, p.deletedRegion.startColumn!), to: at(p.deletedRegion.endLine!, p.deletedRegion.endColumn!), by: p.insertedContent!.text! }));
  return parts.sort((a, b) => b.from - a.from).reduce((t, p) => t.slice(0, p.from) + p.by + t.slice(p.to), text);
}

it('the schema bites', async () => {
  const { log } = await sarif(['whelk-too-long.plate']);
  const broken = (change: (run: Run) => void): boolean => {
    const copy = structuredClone(log);
    change(copy.runs[0]!);
    return valid(copy);
  };
  expect(broken(() => undefined)).toBe(true);
  expect(broken(run => { run.results![0]!.level = 'hint' as 'note'; })).toBe(false);
  expect(broken(run => { delete region(run.results![0]!).startLine; })).toBe(false);
  expect(broken(run => { region(run.results![0]!).startColumn = 0; })).toBe(false);
  expect(broken(run => { Object.assign(run.results![0]!, { colour: 'red' }); })).toBe(false);
  expect(broken(run => { run.artifacts![0]!.location!.uri = 'a b.plate'; })).toBe(false);
});

it('every finding there is can be written, with its rule', async () => {
  const there = folder(Object.fromEntries(CHECKS.flatMap((c): [string, string][] => [[`${c.code}/page.plate`, c.example], ...Object.entries(c.files ?? {}).map(([name, text]): [string, string] => [`${c.code}/${name}`, text])])));
  const pages = CHECKS.map(c => `${c.code}/page.plate`);
  const { run, results } = await sarif(pages, there);
  const rules = run.tool.driver.rules!;
  expect(rules.map(r => r.id)).toEqual(CHECKS.map(c => c.code));
  for (const r of results) expect(rules[r.ruleIndex!]!.id).toBe(r.ruleId);
  // A file that a page uses is one of the pages only where it was named.
  expect(run.artifacts!.filter(a => a.roles?.includes('analysisTarget')).map(a => a.location!.uri)).toEqual(pages);
  for (const r of results) expect(run.artifacts![r.locations![0]!.physicalLocation!.artifactLocation!.index!]!.location!.uri).toBe(r.locations![0]!.physicalLocation!.artifactLocation!.uri);
  // The code of some is the folder of the page: it occurs there.
  const found = new Set(results.map(r => `${r.ruleId!}/page.plate ${r.locations![0]!.physicalLocation!.artifactLocation!.uri!}`));
  expect(CHECKS.filter(c => !found.has(`${c.code}/page.plate ${c.code}/page.plate`)).map(c => c.code)).toEqual([]);
  // No code host shows more than 1,024 characters of these.
  for (const r of rules) for (const t of [r.shortDescription!.text, r.fullDescription!.text]) expect(t.length).toBeLessThanOrEqual(1024);
  const of = (code: string): typeof rules[number] => rules.find(r => r.id === code)!;
  expect(of('arms-mismatched')).toMatchObject({ defaultConfiguration: { level: 'warning' }, properties: { tags: ['Paths and light'] } });
  expect(of('brace-not-closed').defaultConfiguration!.level).toBe('error');
  expect(of('arms-mismatched').help!.text).toContain('What to do.');
  expect(of('arms-mismatched').help!.text).not.toContain('**');
}, 120_000);

describe('the whelk that is 84 mm too long', async () => {
  const { run, results, code } = await sarif(['whelk-too-long.plate', 'whelk.plate']);
  it('has its finding where the text has it', () => {
    expect(code).toBe(0);
    expect(codes(results)).toEqual(['arms-mismatched']);
    expect(run.columnKind).toBe('utf16CodeUnits');
    // line 22 is `  beam object from S1 reflected`
    expect(results[0]).toMatchObject({
      level: 'warning', locations: [{
        physicalLocation: { artifactLocation: { uri: 'whelk-too-long.plate', uriBaseId: '%SRCROOT%', index: 0 }, region: { startLine: 22, startColumn: 8, endLine: 22, endColumn: 14 } },
        logicalLocations: [{ name: 'P1.object', fullyQualifiedName: 'Whelk shell / P1.object' }],
      }],
    });
    expect(results[0]!.message.text).toContain('84 mm longer');
    expect(run.originalUriBaseIds!['%SRCROOT%']).not.toHaveProperty('uri');
  });
  it('has its fixes, each of which takes it away', async () => {
    const text = readFileSync('tests/cli/fixtures/whelk-too-long.plate', 'utf8');
    expect(results[0]!.fixes!.length).toBeGreaterThan(1);
    expect(results[0]!.fixes![0]!.description!.text).toMatch(/^Shorten the leg .* from 468 to 384 mm/);
    expect((await inside(['check', '--strict', 'a.plate'], { cwd: folder({ 'a.plate': fixed(text, results[0]!) }) })).code).toBe(0);
  });
});

it('fixes fit texts with a byte order mark, carriage returns and letters beyond the first plane', async () => {
  const text = `\ufeff${matched('  // 𝛌\n')}`.replace('laser red', 'lasr red').replace('reference from S1 through', 'reference from S1 thrugh').replaceAll('\n', '\r\n');
  const { results } = await sarif(['a.plate'], folder({ 'a.plate': text }));
  const one = results.find(r => r.fixes !== undefined)!;
  // The mark is no column: `  lasr red {` starts at the third.
  expect(region(one)).toMatchObject({ startLine: 2, startColumn: 3 });
  const after = fixed(text, one);
  expect(after).toBe(text.replace('lasr', 'laser'));
  expect(codes((await sarif(['a.plate'], folder({ 'a.plate': after }))).results)).not.toContain(one.ruleId);
});

describe('a finding is followed by what it is about', () => {
  const pages = async (text: string): Promise<Result[]> => (await sarif(['a.plate'], folder({ 'a.plate': text }))).results;
  const long = matched('  mirror M1\n').replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n');
  it('wherever it stands, and whatever its figures', async () => {
    const before = await pages(long);
    expect(codes(before).sort()).toEqual(['arms-mismatched', 'unused-thing']);
    expect(marks(await pages(`// more\n\n${long.replace('1571 mm', '1581 mm')}`))).toEqual(marks(before));
  });
  it('not by its page, so that a page may be renamed; by setup, code and subject', async () => {
    const before = await pages(long);
    expect(new Set(marks(before)).size).toBe(2);
    expect(marks(await pages(long.replace('mirror M1', 'mirror M2')))).not.toEqual(marks(before));
    expect(marks(await pages(long.replace('Cockle', 'Limpet')))).not.toEqual(marks(before));
  });
  it('and by its number where there are several of one subject', async () => {
    const twice = await pages(matched().replace('  splitter S1\n', '  splitter S1 {\n    shar: 50%\n    shar2: 50%\n  }\n'));
    expect(new Set(marks(twice)).size).toBe(twice.length);
    expect(twice.length).toBeGreaterThan(1);
  });
  it('also for a host that reads one name only', async () => { for (const r of await pages(long)) expect(r.partialFingerprints!['primaryLocationLineHash']).toBe(r.partialFingerprints!['setupCodeSubject/v1']); });
});

describe('messages', () => {
  const one = async (text: string, code: string): Promise<Result> => (await sarif(['a.plate'], folder({ 'a.plate': text }))).results.find(r => r.ruleId === code)!;
  it('lead to the other line', async () => {
    const { message, relatedLocations } = await one(matched().replace('wavelength: 632.8 nm\n', 'wavelength: 632.8 nm\n    wavelength: 633 nm\n'), 'written-twice');
    expect(message.text).toContain('stands in [line 3](1) already');
    expect(relatedLocations).toEqual([{ id: 1, physicalLocation: { artifactLocation: { uri: 'a.plate', uriBaseId: '%SRCROOT%', index: 0 }, region: { startLine: 3 } } }]);
  });
  it('have braces doubled, which stand for a value else', async () => {
    expect((await one(matched().replace(/\}\n$/, ''), 'brace-not-closed')).message.text).toMatch(/\{\{|\}\}/);
  });
  it('make no link of what a page happens to say', async () => {
    // A link is `[` up to `](`; behind a backslash it is none.
    expect((await one(`use "[here](lab).plate"\n${matched()}`, 'import-unreadable')).message.text).toContain('\\[here](lab)');
  });
});

describe('which file', () => {
  it('names with blanks, letters of other tongues and per cent are written as addresses', async () => {
    const there = folder({ 'der Strand/Käfer 100%.plate': matched('  mirror M1\n') });
    const { results } = await sarif(['.'], there);
    expect(results[0]!.locations![0]!.physicalLocation!.artifactLocation!.uri).toBe('der%20Strand/K%C3%A4fer%20100%25.plate');
  });
  it('a file elsewhere has its whole address', async () => {
    const there = folder({ 'a.plate': matched('  mirror M1\n'), 'sub/x.txt': '' });
    expect((await sarif(['../a.plate'], join(there, 'sub'))).results[0]!.locations![0]!.physicalLocation!.artifactLocation).toEqual({ uri: pathToFileURL(join(there, 'a.plate')).href, index: 0 });
  });
  it('a file that is used is listed', async () => {
    const there = folder({ 'lab.plate': 'inventory lab {\n}\n', 'a.plate': `use "lab.plate"\n${matched()}` });
    expect((await sarif(['a.plate'], there)).run.artifacts!.map(a => [a.location!.uri, a.roles])).toEqual([['a.plate', ['analysisTarget']], ['lab.plate', undefined]]);
  });
});

describe('how it ended', () => {
  const there = folder({ 'fine.plate': matched(), 'unmet.plate': matched('  expect mismatch > 20 mm\n'), 'accepted.plate': matched('  expect mismatch > 20 mm\n  accept expectation-failed "the limit is for the next plate"\n'), 'warned.plate': matched().replace('1171 mm', '1571 mm').replace('5 m\n', '300 mm\n') });
  it.each([[['fine.plate'], 0], [['unmet.plate'], 1], [['warned.plate'], 0], [['--strict', 'warned.plate'], 1]] as [string[], number][])('%j', async (args, code) => { expect((await sarif(args, there)).code).toBe(code); });
  it('what could not be read is told', async () => {
    const { code, err, run, results } = await sarif(['none.plate', 'unmet.plate'], there);
    expect(code).toBe(3);
    expect(err).toContain('none.plate');
    expect(run.invocations![0]!.toolExecutionNotifications).toEqual([{ level: 'error', message: { text: 'none.plate cannot be read: there is no such file or folder' } }]);
    expect(codes(results)).toEqual(['expectation-failed']);
  });
  it('what a page accepts is left out', async () => { expect((await sarif(['accepted.plate'], there)).results).toEqual([]); });
});

it('the same pages give the same document, byte for byte, in any folder', async () => {
  const files = { 'a.plate': matched('  mirror M1\n'), 'b/c.plate': matched('  mirror M2\n') };
  const [one, two] = [folder(files), folder(files)];
  const { out } = await sarif(['.'], one);
  expect((await sarif(['.'], two)).out).toBe(out);
  expect(out).not.toContain(one);
});
