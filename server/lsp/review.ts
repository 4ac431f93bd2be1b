/** Answers what has become of a page since an earlier text: all of it for a panel, and a line above each setup. */
import type { CancellationToken, CodeLens } from 'vscode-languageserver';
import { parse } from '../../grammar/parse.ts';
import type { Snapshot } from '../analysis.ts';
import type { Asks } from './asks.ts';
import { rangeOf, type Source } from './convert.ts';
import type { Document } from './documents.ts';
import { Earlier, earlierOf } from './earlier.ts';
import { later } from './later.ts';
import {
  AGAINST, AS_SHOT, BASE, HAS_SHOT, REVIEW, REVIEW_COMMAND, USED,
  type AgainstAnswer, type AgainstParams, type AsShotAnswer, type AsShotParams, type BaseParams, type HasShotParams, type ReviewAnswer, type ReviewParams, type UsedParams,
} from './protocol.ts';
import { canonical, nameOf } from './uris.ts';

interface Base {
  readonly since: string;
  readonly earlier: Earlier;
  /** what was made of it last */
  last?: { readonly before: Snapshot; readonly after: Snapshot; readonly lenses: readonly CodeLens[] };
}

/** What a document was held against last. */
interface Compared {
  readonly earlier: Earlier;
  last?: { readonly before: Snapshot; readonly after: Snapshot; readonly setup: unknown; readonly answer: ReviewAnswer };
}

export function serveReview({ connection, documents, answer }: Asks, offers: () => boolean, moved: () => void): { readonly lenses: (d: Document) => Promise<readonly CodeLens[]>; closed(uri: string): void } {
  const compared = new WeakMap<Document, Compared>();
  const bases = new Map<string, Base>();

  /** Kept as long as a document is held against the same text. */
  const comparedWith = (d: Document, given: unknown): Compared | undefined => {
    const said = earlierOf(given);
    if (!said) return undefined;
    const known = compared.get(d);
    if (known?.earlier.is(said)) return known;
    const made = { earlier: new Earlier(documents, d, said) };
    compared.set(d, made);
    return made;
  };
  const sourceOf = (d: Document, earlier?: Earlier) => (side: 'before' | 'after', uri: string): Source => {
    if (side === 'before' && uri === earlier?.id) return { uri: documents.spelling(uri), version: 0, marks: earlier.marks };
    return uri === d.id ? d : documents.get(uri) ?? { uri, version: 0, marks: 0 };
  };

  connection.onRequest(USED, ({ textDocument: t, before }: UsedParams, token: CancellationToken) => answer(t.uri, token, async (_, d): Promise<readonly string[]> => {
    const with_ = comparedWith(d, before);
    return with_ ? (await with_.earlier.read()).asked.map(a => documents.spelling(a.uri)) : [];
  }, 'later'));

  connection.onRequest(AGAINST, ({ textDocument: t }: AgainstParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<AgainstAnswer> => {
    const { shotsOf, variantsOf } = await later();
    const shots = shotsOf(s);
    return s.results.map(r => ({
      setup: r.setup.name, variants: variantsOf(r).map(v => v.variant.name),
      shots: shots.filter(x => x.setup.name === r.setup.name).map(({ name, on }) => ({ name, ...(on === undefined ? {} : { on }) })),
    }));
  }));

  connection.onRequest(AS_SHOT, ({ textDocument: t, setup, shot }: AsShotParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<AsShotAnswer | null> => {
    const { asShot, shotsOf } = await later();
    const found = shotsOf(s).find(x => x.setup.name === setup && x.name === shot);
    const cut = found && asShot(s, found);
    return found ? { ...(found.on === undefined ? {} : { on: found.on }), ...(typeof cut === 'object' ? { text: cut.text } : cut === 'unclosed' ? { unclosed: true } : {}) } : null;
  }));
  connection.onRequest(HAS_SHOT, async ({ text, shot }: HasShotParams): Promise<boolean> => typeof text === 'string' && (await later()).hasShot(parse(text), shot));

  connection.onRequest(REVIEW, ({ textDocument: t, before, setup }: ReviewParams, token: CancellationToken) => answer(t.uri, token, async (_, d): Promise<ReviewAnswer | null> => {
    const { besideVariant, onlySetup, reviewed, reviewOf } = await later();
    const variant = variantOf(before);
    if (variant) {
      const both = besideVariant(await documents.snapshot(d), variant.setup, variant.variant);
      return both ? { version: d.version, ...reviewed(reviewOf(both.before, both.after), sourceOf(d)), borrowed: [] } : null;
    }
    const with_ = comparedWith(d, before);
    if (!with_) return null;
    const { snapshot: old, asked } = await with_.earlier.read();
    const now = await documents.snapshot(d);
    const { last } = with_;
    if (last?.before === old && last.after === now && last.setup === setup) return last.answer;
    const review = reviewOf(old, now);
    const made = { version: d.version, ...reviewed(typeof setup === 'string' ? onlySetup(review, setup) : review, sourceOf(d, with_.earlier)), borrowed: asked.filter(a => a.found).map(a => nameOf(a.uri)) };
    with_.last = { before: old, after: now, setup, answer: made };
    return made;
  }));

  connection.onNotification(BASE, ({ textDocument: t, base }: BaseParams) => {
    if (typeof (t as { uri?: unknown } | undefined)?.uri !== 'string') return;
    const id = canonical(t.uri);
    const said = earlierOf(base);
    if (said && typeof base?.since === 'string') bases.set(id, { since: base.since, earlier: new Earlier(documents, { id }, said) });
    else if (!bases.delete(id)) return;
    moved();
  });
  /** Above each setup what has become of it. */
  const lenses = async (d: Document): Promise<readonly CodeLens[]> => {
    const base = bases.get(d.id);
    if (!base || !offers()) return [];
    const { headlineOf, isUnchanged, reviewOf } = await later();
    const { snapshot: before } = await base.earlier.read();
    const after = await documents.snapshot(d);
    if (base.last?.before !== before || base.last.after !== after) {
      const made = reviewOf(before, after).setups.flatMap((s): CodeLens[] => {
        if (!s.after || isUnchanged(s)) return [];
        const { at } = s.after.setup.node;
        return [{ range: rangeOf(d, { uri: d.id, line: at, start: 0, end: 0 }), command: { title: `since ${base.since}: ${headlineOf(s)}`, command: REVIEW_COMMAND, arguments: [d.uri] } }];
      });
      base.last = { before, after, lenses: made };
    }
    return base.last.lenses;
  };
  return { lenses, closed: uri => { bases.delete(canonical(uri)); } };
}

function variantOf(given: unknown): { readonly setup: string; readonly variant: string } | undefined {
  const { setup, variant } = (typeof given === 'object' ? given ?? {} : {}) as Readonly<Record<string, unknown>>;
  return typeof setup === 'string' && typeof variant === 'string' ? { setup, variant } : undefined;
}
