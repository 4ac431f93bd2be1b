/** Changes a picture into the next one in place: what is the same stays as it is, so that nothing flickers and what has the keyboard keeps it. Knows nothing of a browser. */
import type { PictureMark } from '../../../server/lsp/protocol.ts';

/** What marks are drawn on. */
export interface Canvas<N> {
  /** undefined for what is not drawn here */
  make(tag: string): N | undefined;
  /** @param value undefined takes it away */
  set(node: N, attribute: string, value: string | undefined): void;
  write(node: N, text: string): void;
  /** at the end, or before another node of the parent */
  put(parent: N, node: N, before: N | undefined): void;
  drop(node: N): void;
}

/** A mark that is drawn. */
export interface Drawn<N> {
  readonly mark: PictureMark;
  readonly node: N;
  readonly children: readonly Drawn<N>[];
}

/**
 * @param old what this gave for the last picture; undefined where there was none
 * @returns the same array where nothing has changed
 */
export function patch<N>(canvas: Canvas<N>, parent: N, old: readonly Drawn<N>[], marks: readonly PictureMark[]): readonly Drawn<N>[] {
  return patchInPlace(canvas, old, marks) ?? patchByItem(canvas, parent, old, marks);
}

/** The marks of most parents are the same ones as before, in the same order. */
function patchInPlace<N>(canvas: Canvas<N>, old: readonly Drawn<N>[], marks: readonly PictureMark[]): readonly Drawn<N>[] | undefined {
  if (old.length !== marks.length) return undefined;
  for (let i = 0; i < marks.length; i++) if (!isSame(old[i]!.mark, marks[i]!)) return undefined;
  let next: Drawn<N>[] | undefined;
  for (let i = 0; i < marks.length; i++) {
    const drawn = changed(canvas, old[i], marks[i]!)!;
    if (drawn !== old[i] && !next) next = old.slice(0, i);
    next?.push(drawn);
  }
  return next ?? old;
}

function patchByItem<N>(canvas: Canvas<N>, parent: N, old: readonly Drawn<N>[], marks: readonly PictureMark[]): readonly Drawn<N>[] {
  // An item is changed into the same item, wherever it stands now; other marks into marks of their tag, in their order.
  const waiting = new Map<string, Drawn<N>[]>();
  for (const d of old) {
    const key = keyOf(d.mark);
    const same = waiting.get(key);
    if (same) same.push(d);
    else waiting.set(key, [d]);
  }
  const next = marks.flatMap(mark => {
    const before = waiting.get(keyOf(mark))?.shift();
    const drawn = changed(canvas, before, mark);
    return drawn ? [drawn] : [];
  });
  for (const d of [...waiting.values()].flat()) canvas.drop(d.node);
  order(canvas, parent, old, next);
  return next;
}

const keyOf = ({ tag, attributes }: PictureMark): string => `${tag} ${attributes['data-item'] ?? ''}`;
const isSame = (a: PictureMark, b: PictureMark): boolean => a.tag === b.tag && a.attributes['data-item'] === b.attributes['data-item'];

function changed<N>(canvas: Canvas<N>, before: Drawn<N> | undefined, mark: PictureMark): Drawn<N> | undefined {
  const node = before?.node ?? canvas.make(mark.tag);
  if (node === undefined) return undefined;
  const was = before?.mark.attributes ?? {};
  let isNew = before?.mark.text !== mark.text;
  for (const name of Object.keys(mark.attributes)) if (was[name] !== mark.attributes[name]) { canvas.set(node, name, mark.attributes[name]); isNew = true; }
  for (const name of Object.keys(was)) if (!(name in mark.attributes)) { canvas.set(node, name, undefined); isNew = true; }
  // A mark has text or marks in it, not both.
  if (mark.text !== undefined) {
    for (const c of before?.children ?? []) canvas.drop(c.node);
    if (before?.mark.text !== mark.text) canvas.write(node, mark.text);
    return before && !isNew ? before : { mark, node, children: [] };
  }
  if (before?.mark.text !== undefined) canvas.write(node, '');
  const children = patch(canvas, node, before?.children ?? [], mark.children);
  return before && !isNew && children === before.children ? before : { mark, node, children };
}

/** Moves only what does not follow on its neighbour already. */
function order<N>(canvas: Canvas<N>, parent: N, old: readonly Drawn<N>[], next: readonly Drawn<N>[]): void {
  const kept = new Set(next.map(d => d.node));
  const standing = new Set(old.map(d => d.node).filter(n => kept.has(n)));
  for (const { node } of next) {
    const [first] = standing;
    if (first === node) standing.delete(node);
    else {
      standing.delete(node);
      canvas.put(parent, node, first);
    }
  }
}
