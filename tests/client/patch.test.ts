/** A picture is changed into the next one in place. Drawn on plain objects that count what is done to them. */
import { describe, expect, test } from 'vitest';
import { patch, type Canvas, type Drawn } from '../../client/plan/view/patch.ts';
import { allows, TAGS } from '../../client/plan/view/allowed.ts';
import { analyse } from '../../server/analysis.ts';
import { pictureOf } from '../../server/drawing/picture.ts';
import { VIEWS } from '../../server/drawing/views.ts';
import type { PictureMark } from '../../server/lsp/protocol.ts';
import { all } from '../drawing/all-marks.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

interface Plain { tag: string; attributes: Record<string, string>; text: string; children: Plain[]; parent: Plain | undefined }
const plain = (tag: string): Plain => ({ tag, attributes: {}, text: '', children: [], parent: undefined });

/** A sheet, and what was done to it since `done` was emptied. */
function sheet(): { show(marks: readonly PictureMark[]): void; readonly root: Plain; done: string[] } {
  const take = (n: Plain): void => { if (n.parent) n.parent.children = n.parent.children.filter(c => c !== n); };
  let old: readonly Drawn<Plain>[] = [];
  const own = { root: plain('svg'), done: [] as string[], show(marks: readonly PictureMark[]) { old = patch(canvas, own.root, old, marks); } };
  const canvas: Canvas<Plain> = {
    make(tag) { if (tag === 'img') return undefined; own.done.push(`make ${tag}`); return plain(tag); },
    set(n, name, value) { own.done.push(`${name}=${value ?? ''}`); if (value === undefined) n.attributes = Object.fromEntries(Object.entries(n.attributes).filter(([k]) => k !== name)); else n.attributes[name] = value; },
    write(n, text) { own.done.push(`write ${text}`); n.text = text; },
    put(parent, n, before) { own.done.push(`put ${n.tag}`); take(n); const at = before ? parent.children.indexOf(before) : parent.children.length; parent.children.splice(at, 0, n); n.parent = parent; },
    drop(n) { own.done.push(`drop ${n.tag}`); take(n); },
  };
  return own;
}
const mark = (tag: string, attributes: Record<string, string> = {}, children: PictureMark[] = [], text?: string): PictureMark => ({ tag, attributes, children, ...(text === undefined ? {} : { text }) });
const item = (id: string, x = '0'): PictureMark => mark('g', { 'data-item': id }, [mark('title', {}, [], id), mark('rect', { x })]);
/** The marks that plain objects came from. */
const read = (n: Plain): unknown => ({ tag: n.tag, attributes: n.attributes, text: n.text, children: n.children.map(read) });
const wanted = (m: PictureMark): unknown => ({ tag: m.tag, attributes: m.attributes, text: m.text ?? '', children: m.children.map(wanted) });

describe('a picture', () => {
  test('that is the same again is not touched', () => {
    const s = sheet();
    s.show([item('M1'), item('M2')]);
    s.done = [];
    s.show([item('M1'), item('M2')]);
    expect(s.done).toEqual([]);
  });
  test('in which one thing moved has one attribute changed', () => {
    const s = sheet();
    s.show([item('M1'), item('M2', '10'), item('M3')]);
    const before = s.root.children[1];
    s.done = [];
    s.show([item('M1'), item('M2', '20'), item('M3')]);
    expect(s.done).toEqual(['x=20']);
    expect(s.root.children[1]).toBe(before);
  });
  test('keeps what an item was drawn as when another comes or goes before it', () => {
    const s = sheet();
    s.show([item('M1'), item('M2')]);
    const [one, two] = s.root.children;
    s.show([item('B1'), item('M1'), item('M2')]);
    expect(s.root.children.slice(1)).toEqual([one, two]);
    expect(s.root.children[1]).toBe(one);
    s.done = [];
    s.show([item('M2')]);
    expect(s.root.children[0]).toBe(two);
    expect(s.done).toEqual(['drop g', 'drop g']);
  });
  test('has text exchanged for other text, for marks, and back', () => {
    const s = sheet();
    const steps = [mark('g', {}, [], 'one'), mark('g', {}, [], 'two'), mark('g', {}, [mark('path', { d: 'M0 0' })]), mark('g', {}, [], 'three')];
    for (const m of steps) {
      s.show([m]);
      expect(s.root.children.map(read)).toEqual([wanted(m)]);
    }
  });
  test('leaves out what is not drawn here, with all that is in it', () => {
    const s = sheet();
    s.show([item('M1'), mark('img', { src: 'x' }, [mark('path')]), item('M2')]);
    expect(s.root.children.map(c => c.attributes['data-item'])).toEqual(['M1', 'M2']);
  });
  test('comes to the same marks from any other one', () => {
    // All orders and selections of four items, from each to each: 65 × 65.
    const some = (rest: readonly string[]): string[][] => [[], ...rest.flatMap(id => some(rest.filter(r => r !== id)).map(more => [id, ...more]))];
    const all = some(['M1', 'M2', 'S1', 'P1']);
    expect(all).toHaveLength(65);
    for (const a of all) for (const b of all) {
      const s = sheet();
      s.show([mark('rect'), ...a.map(id => item(id))]);
      s.show([...b.map(id => item(id, '5')), mark('rect')]);
      if (JSON.stringify(s.root.children.map(read)) !== JSON.stringify([...b.map(id => item(id, '5')), mark('rect')].map(wanted))) expect.fail(`${a.join()} → ${b.join()}: ${s.root.children.map(c => c.attributes['data-item'] ?? c.tag).join()}`);
    }
  });
});

describe('what a picture may be made of', () => {
  test.each(EXAMPLES.map(e => [e.name, e] as const))('holds all that the server draws: %s', (_, page) => {
    const snapshot = analyse(page.uri, page.text, disk);
    const drawn = snapshot.results.flatMap(r => VIEWS.flatMap(v => all(pictureOf(snapshot, { setup: r.setup.name, view: v.name })?.sheet?.marks ?? [])));
    expect(drawn.filter(m => !TAGS.has(m.tag)).map(m => m.tag)).toEqual([]);
    expect(drawn.flatMap(m => Object.entries(m.attributes).filter(([k, v]) => !allows(k, v)).map(a => a.join('=')))).toEqual([]);
  });
  test.each(['script', 'img', 'image', 'foreignObject', 'style', 'a', 'use', 'iframe', 'animate', 'set'])('no <%s>', tag => { expect(TAGS.has(tag)).toBe(false); });
  test.each([['onclick', 'alert(1)'], ['onload', 'alert(1)'], ['href', '#x'], ['xlink:href', 'x'], ['style', 'fill: red'], ['src', 'x'], ['fill', 'url(https://saltmarsh.example/x)'], ['clip-path', 'URL (x)'], ['fill', 'url(#a) url(//x)']])('no %s="%s"', (name, value) => { expect(allows(name, value)).toBe(false); });
});
