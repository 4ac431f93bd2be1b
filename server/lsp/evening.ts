/** Answers what an evening at the table asks: what to read and what a reading makes of the page, how a plate is shot, the entry of a shot, and its outcome. */
import type { CancellationToken } from 'vscode-languageserver';
import { noSuchDate } from '../model/calendar.ts';
import type { Edit } from '../model/edits.ts';
import type { Results } from '../results/plan.ts';
import type { Asks } from './asks.ts';
import { rangeOf } from './convert.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import {
  ENTER, LOSSES, OUTCOME, READINGS, SHOOT, SHOT, type Additions, type EnterAnswer, type EnterParams, type EveningParams, type LossesAnswer, type OutcomeAnswer, type OutcomeParams, type ReadingsAnswer, type ReadingsParams,
  type ShootAnswer, type ShootParams, type ShotAnswer, type ShotParams,
} from './protocol.ts';

const NO_SETUP = { refused: 'There is no setup on the page.' };
const NO_DAY = { refused: 'The clock of this computer gives no day of the calendar.' };

export function serveEvening({ connection, documents, answer }: Asks): void {
  connection.onRequest(READINGS, ({ textDocument: t, day, ...of }: ReadingsParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<ReadingsAnswer | null> => {
    const { chosen, wantedOf, instrumentFor, readingNow, unitOf } = await later();
    const r = chosen(s.results, wanted(of));
    if (!r) return null;
    return {
      setup: r.setup.name, readings: wantedOf(r).flatMap(w => {
        const { subject, group, what, how, expected } = w;
        if (subject === undefined) return [];
        const [by, old] = [instrumentFor(w, r), readingNow(subject, r)];
        const text = old?.valueAt && old.node.line.text.slice(old.valueAt.start, old.valueAt.end);
        return [{
          subject, group, what, how, expected: expected.text, known: expected.known, unit: unitOf(w), ...(by === undefined ? {} : { by }), today: old?.on?.split('T')[0] === day,
          ...(text === undefined ? {} : { read: `${text}${old!.on === undefined ? '' : `, on ${old!.on.replace('T', ' at ')}`}` }),
        }];
      }),
    };
  }));
  connection.onRequest(ENTER, ({ textDocument: t, subject, value, on, ...of }: EnterParams, token: CancellationToken) => answer(t.uri, token, async (s, d): Promise<EnterAnswer> => {
    const { chosen, wantedOf, enter } = await later();
    const r = chosen(s.results, wanted(of));
    if (!r) return NO_SETUP;
    if (!isDay(on)) return NO_DAY;
    const one = wantedOf(r).find(w => w.subject === subject);
    if (!one || typeof value !== 'string') return { refused: 'The page has changed: that is not among what there is to read any more.' };
    const made = enter(s, r, { ...one, subject }, value, on, documents.textsFor(d));
    return 'refused' in made ? made : { ...made, ...additions(d, made.edits) };
  }));
  connection.onRequest(LOSSES, ({ textDocument: t, ...of }: EveningParams, token: CancellationToken) => answer(t.uri, token, async (s, d): Promise<LossesAnswer | null> => {
    const { chosen, lossesOf } = await later();
    const r = chosen(s.results, wanted(of));
    if (!r) return null;
    const { losses, open } = lossesOf(s, r, documents.textsFor(d));
    return { setup: r.setup.name, version: d.version, losses: losses.map(l => ({ words: l.words, detail: l.detail, edits: additions(d, l.edits).edits })), open };
  }));
  connection.onRequest(SHOOT, ({ textDocument: t, day, ...of }: ShootParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<ShootAnswer> => {
    const { chosen, dimOf, eveningOf, nextName, oddDays, shotsIn } = await later();
    const r = chosen(s.results, wanted(of));
    if (!r) return NO_SETUP;
    const shots = shotsIn(r.setup);
    const made = eveningOf(r, nextName(shots), isDay(day) ? oddDays(shots, day) : []);
    if (!made) return { refused: `“${r.setup.name}” has no plate, so that there is nothing to shoot.` };
    const { settle, openings, ...rest } = made;
    return { ...rest, ...(settle.seconds === undefined ? {} : { settle: settle.seconds }), openings: openings.map(({ name, change, close, seconds, byPage, strips }) => ({ ...(name === undefined ? {} : { name }), change, close: close.text, ...(seconds === undefined ? {} : { seconds }), byPage, strips })), dim: dimOf(r, s.results.filter(x => x !== r)) };
  }));
  connection.onRequest(SHOT, ({ textDocument: t, on, exposures, settle, plate, note, ...of }: ShotParams, token: CancellationToken) => answer(t.uri, token, async (s, d): Promise<ShotAnswer> => {
    const { shotEntry } = await later();
    const r = named(s.results, of);
    if (!r) return { refused: 'The setup that was shot is not on the page any more. Write its name as it was, and the entry can be written.' };
    if (!isDay(on)) return NO_DAY;
    if (!areTimes(exposures)) return { refused: 'How long the shutter was open is not known.' };
    const made = shotEntry(s, r, { on, exposures, ...(isTime(settle) ? { settle } : {}), ...(typeof plate === 'string' ? { plate } : {}), ...(typeof note === 'string' ? { note } : {}) }, documents.textsFor(d));
    return 'refused' in made ? made : { ...additions(d, made.edits), shot: made.name, text: made.text, notes: made.notes };
  }));
  connection.onRequest(OUTCOME, ({ textDocument: t, shot, words, ...of }: OutcomeParams, token: CancellationToken) => answer(t.uri, token, async (s, d): Promise<OutcomeAnswer> => {
    const { chosen, noteOutcome, openShot } = await later();
    const r = chosen(s.results, wanted(of));
    if (!r) return NO_SETUP;
    if (typeof words !== 'string' || typeof shot !== 'string') {
      const open = openShot(r);
      return typeof open === 'string' ? { refused: open } : { setup: r.setup.name, shot: open.shot, ...(open.on === undefined ? {} : { on: open.on }), more: open.more, known: open.words };
    }
    const made = noteOutcome(s, r, shot, words, documents.textsFor(d));
    return 'refused' in made ? made : { ...made, ...additions(d, made.edits) };
  }));
}

const wanted = ({ line, setup }: Omit<EveningParams, 'textDocument'>): { line?: number; setup?: string } => ({ ...(typeof line === 'number' ? { line } : {}), ...(typeof setup === 'string' ? { setup } : {}) });

/** A plate that was shot in one setup is not written into another. */
function named(results: readonly Results[], { setup }: Omit<EveningParams, 'textDocument'>): Results | undefined {
  return typeof setup === 'string' ? results.find(r => r.setup.name === setup) : results[0];
}

const additions = (d: Document, edits: readonly Edit[]): Additions => ({ version: d.version, edits: edits.map(e => ({ range: rangeOf(d, e.at), newText: e.newText })) });

const isDay = (v: unknown): v is string => typeof v === 'string' && /^\d{4}-\d{2}-\d{2}(?:T\d{2}:\d{2})?$/.test(v) && noSuchDate(v) === undefined;
const isTime = (v: unknown): v is number => typeof v === 'number' && Number.isFinite(v) && v > 0;
const areTimes = (v: unknown): v is ShotParams['exposures'] => Array.isArray(v) && v.length > 0 && v.every((e: unknown) => typeof e === 'object' && e !== null && 'seconds' in e && isTime(e.seconds) && (!('name' in e) || typeof e.name === 'string'));
