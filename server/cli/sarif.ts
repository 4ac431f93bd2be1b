/**
 * The document that `check --format sarif` prints: SARIF 2.1.0, which code hosts and editors take in.
 *
 * The same pages give the same document: no time, no folder of this machine, everything in the order of arguments and text. What a page accepts is left out as
 * it is in text and Markdown: SARIF can call a result suppressed, but the code hosts pass over that and would raise it again.
 */
import { createHash } from 'node:crypto';
import type { ArtifactLocation, Fix as SarifFix, Invocation, Location, Log, Region, ReportingDescriptor, Result } from 'sarif';
import { version } from '../../package.json';
import type { Snapshot } from '../analysis.ts';
import type { Check, Finding, Severity } from '../checks/check.ts';
import { pageParts } from '../checks/pages.ts';
import { CHECK_GROUPS, CHECKS } from '../checks/registry.ts';
import { fixesFor, type Fix } from '../features/fixes/fixes.ts';
import type { Place } from '../model/model.ts';
import type { ExitCode } from './done.ts';
import { pathFrom, type Opened, type Trouble } from './files.ts';

interface Page {
  readonly file: Opened;
  readonly snapshot: Snapshot;
}

/** A hint is a note here: there is no lower level. */
const LEVEL: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = { error: 'error', warning: 'warning', note: 'note', hint: 'note' };
const BASE = '%SRCROOT%';
/** Of so many findings of a page the fixes are tried, each on a copy of the page; a page with more is put right in an editor, or by hand. */
const MOST_FIXED = 40;

/** `code` is what the command ends with. */
export function checkSarif(pages: readonly Page[], troubles: readonly Trouble[], code: ExitCode): string {
  const uris = [...new Set([...pages.map(p => p.file.uri), ...pages.flatMap(({ file, snapshot }) => snapshot.files.filter(uri => file.texts.text(uri) !== undefined))])];
  const log: Log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json', version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'Platewright', version, semanticVersion: version, rules: CHECKS.map(rule) } },
      invocations: [invocation(troubles, code)],
      columnKind: 'utf16CodeUnits', newlineSequences: ['\r\n', '\n', '\r'], defaultEncoding: 'utf-8',
      originalUriBaseIds: { [BASE]: { description: { text: 'The folder in which the command ran.' } } },
      artifacts: uris.map((uri, i) => ({ location: locationOf(uri), ...(i < pages.length ? { roles: ['analysisTarget' as const] } : {}) })),
      results: pages.flatMap(page => resultsOf(page, uri => ({ ...locationOf(uri), ...(uris.includes(uri) ? { index: uris.indexOf(uri) } : {}) }))),
    }],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

const GROUP_OF = new Map(CHECK_GROUPS.flatMap(g => g.checks.map(c => [c.code, g.title] as const)));
const INDEX_OF = new Map(CHECKS.map((c, i) => [c.code, i]));

/** Without its example: what shows the page may not turn doubled braces back. */
function rule(check: Check): ReportingDescriptor {
  const words = pageParts(check.page).filter(p => p.kind === 'text').map(p => p.text);
  const bare = (text: string): string => plain(text.replaceAll('**', ''));
  return {
    id: check.code, shortDescription: { text: plain(`${check.title}.`) }, fullDescription: { text: bare(words[0] ?? check.title) },
    help: { text: bare(words.join('\n\n')), markdown: plain(words.join('\n\n')) }, defaultConfiguration: { level: LEVEL[check.severity] }, properties: { tags: [GROUP_OF.get(check.code)!] },
  };
}

function invocation(troubles: readonly Trouble[], code: ExitCode): Invocation {
  const told = troubles.map(t => ({ level: 'error' as const, message: { text: plain(t.message) } }));
  return { executionSuccessful: code !== 3, exitCode: code, ...(told.length > 0 ? { toolExecutionNotifications: told } : {}) };
}

function resultsOf({ file, snapshot }: Page, artifact: (uri: string) => ArtifactLocation): Result[] {
  const told = new Map<string, number>();
  let tried = 0;
  return snapshot.findings.filter(f => f.accepted === undefined).map(f => {
    const of = identityOf(f);
    const again = (told.get(of) ?? 0) + 1;
    told.set(of, again);
    const other = typeof f.data['line'] === 'number' ? f.data['line'] : undefined;
    const fixes = f.at.uri === file.uri && tried++ < MOST_FIXED ? fixesFor(snapshot, f, file.texts) : [];
    return {
      ruleId: f.code, ruleIndex: INDEX_OF.get(f.code)!, level: LEVEL[f.severity],
      // A reader comes to the other line by a link in the message.
      message: { text: other === undefined ? plain(f.message) : plain(f.message).replace(new RegExp(`\\bline ${other}\\b`), '[$&](1)') },
      locations: [place(f, artifact)],
      ...(other === undefined ? {} : { relatedLocations: [{ id: 1, physicalLocation: { artifactLocation: artifact(f.at.uri), region: { startLine: other } } }] }),
      // The second name is the only one that one of the code hosts reads; it would else number the lines.
      partialFingerprints: { 'setupCodeSubject/v1': `${of}:${again}`, primaryLocationLineHash: `${of}:${again}` },
      ...(fixes.length > 0 ? { fixes: fixes.map(x => fix(x, artifact)) } : {}),
    };
  });
}

function place(f: Finding, artifact: (uri: string) => ArtifactLocation): Location {
  const within = [f.setup, f.variant, f.subject].filter(n => n !== undefined && n !== '');
  return {
    physicalLocation: { artifactLocation: artifact(f.at.uri), region: regionOf(f.at) },
    ...(f.subject === '' ? {} : { logicalLocations: [{ name: f.subject, fullyQualifiedName: within.join(' / ') }] }),
  };
}

const fix = ({ title, edits }: Fix, artifact: (uri: string) => ArtifactLocation): SarifFix => ({
  description: { text: plain(title) },
  artifactChanges: [{ artifactLocation: artifact(edits[0]!.at.uri), replacements: edits.map(e => ({ deletedRegion: regionOf(e.at), insertedContent: { text: e.newText } })) }],
});

/** Lines and columns count from 1, and a byte order mark counts as nothing, here as in the trees. */
const regionOf = (at: Place): Region => ({ startLine: at.line + 1, startColumn: at.start + 1, endLine: at.line + 1, endColumn: at.end + 1 });

/** What a finding is about, wherever it stands by now: whoever follows a finding through the history of a page follows this. */
const identityOf = (f: Finding): string => createHash('sha256').update(JSON.stringify([f.setup ?? null, f.variant ?? null, f.code, f.subject])).digest('hex').slice(0, 16);

/** Files of the working folder are named from there, so that the document fits another copy of the folder; others by their whole address, for `..` may lead elsewhere. */
function locationOf(uri: string): ArtifactLocation {
  const way = pathFrom(process.cwd(), uri);
  return way === uri || /^(?:\.\.\/|[A-Za-z]:)/.test(way) ? { uri } : { uri: way.split('/').map(encodeURIComponent).join('/'), uriBaseId: BASE };
}

/** A message holds no placeholder, and no link that a name in the page happens to spell. */
function plain(text: string): string {
  const doubled = text.replace(/[{}]/g, '$&$&');
  const last = doubled.lastIndexOf('](');
  return last < 0 ? doubled : doubled.slice(0, last).replaceAll('[', '\\[') + doubled.slice(last);
}
