// Cuts a TrueType font down to the letters that a card needs, so that what lays out PDF can go along with the extension: outlines without hints, which paper
// has no use for; how each is shifted beside its neighbour, from the table `kern`; nothing else. Glyphs keep their numbers.
// Source: the OpenType specification 1.9 (tables cmap, glyf, head, hmtx, kern, loca, post), from memory; tests/client/letters.test.ts reads the result by a library.

/** The tables that are kept as they are. */
const KEPT = ['OS/2', 'hhea', 'maxp', 'name'];

/** @param ranges first and last code points of what is kept */
export function cutDown(font, ranges) {
  const tables = new Map();
  for (let i = 0, n = font.readUInt16BE(4); i < n; i++) {
    const at = 12 + 16 * i;
    tables.set(font.toString('latin1', at, at + 4), font.subarray(font.readUInt32BE(at + 8), font.readUInt32BE(at + 8) + font.readUInt32BE(at + 12)));
  }
  const table = (tag) => tables.get(tag);
  const codes = codesOf(table('cmap')).filter(([code]) => ranges.some(([from, to]) => code >= from && code <= to));
  const long = table('head').readInt16BE(50) === 1;
  const start = (glyph) => (long ? table('loca').readUInt32BE(4 * glyph) : 2 * table('loca').readUInt16BE(2 * glyph));
  const outline = (glyph) => table('glyf').subarray(start(glyph), start(glyph + 1));
  const keep = new Set([0]);
  const add = (glyph) => { if (keep.has(glyph)) return; keep.add(glyph); for (const part of partsOf(outline(glyph))) add(part.glyph); };
  for (const [, glyph] of codes) add(glyph);
  const count = table('maxp').readUInt16BE(4);
  const [glyf, loca] = [[], Buffer.alloc(4 * (count + 1))];
  let end = 0;
  for (let glyph = 0; glyph < count; glyph++) {
    const of = keep.has(glyph) ? unhinted(outline(glyph)) : Buffer.alloc(0);
    glyf.push(of);
    loca.writeUInt32BE(end += of.length, 4 * (glyph + 1));
  }
  const head = Buffer.from(table('head'));
  head.writeInt16BE(1, 50);
  const post = Buffer.from(table('post').subarray(0, 32));
  post.writeUInt32BE(0x30000, 0); // no names
  const hmtx = Buffer.from(table('hmtx'));
  for (let glyph = 0; glyph < table('hhea').readUInt16BE(34); glyph++) if (!keep.has(glyph)) hmtx.fill(0, 4 * glyph, 4 * glyph + 4);
  return assembled(new Map([...KEPT.map((tag) => [tag, table(tag)]), ['cmap', cmapOf(codes)], ['glyf', Buffer.concat(glyf)], ['head', head], ['hmtx', hmtx], ['kern', kernOf(table('kern'), keep)], ['loca', loca], ['post', post]].filter(([, of]) => of)));
}

/** Letters and the glyphs that they are drawn with. */
function codesOf(cmap) {
  const found = new Map();
  for (let i = 0, n = cmap.readUInt16BE(2); i < n; i++) {
    const sub = cmap.subarray(cmap.readUInt32BE(4 + 8 * i + 4));
    if (sub.readUInt16BE(0) !== 4) continue;
    const segments = sub.readUInt16BE(6) / 2;
    for (let s = 0; s < segments; s++) {
      const [to, from, delta, at] = [14, 16 + 2 * segments, 16 + 4 * segments, 16 + 6 * segments].map((offset) => offset + 2 * s);
      for (let code = sub.readUInt16BE(from); code <= sub.readUInt16BE(to) && code < 0xffff; code++) {
        const range = sub.readUInt16BE(at);
        const raw = range === 0 ? code : sub.readUInt16BE(at + range + 2 * (code - sub.readUInt16BE(from)));
        const glyph = raw === 0 && range !== 0 ? 0 : (raw + sub.readUInt16BE(delta)) & 0xffff;
        if (glyph !== 0) found.set(code, glyph);
      }
    }
  }
  return [...found].sort(([a], [b]) => a - b);
}

/** The glyphs that another is put together from, and where what tells of each ends. */
function partsOf(outline) {
  const parts = [];
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return parts;
  for (let at = 10, more = true; more;) {
    const flags = outline.readUInt16BE(at);
    const end = at + 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
    parts.push({ at, end, glyph: outline.readUInt16BE(at + 2) });
    more = (flags & 0x20) !== 0;
    at = end;
  }
  return parts;
}

function unhinted(outline) {
  if (outline.length === 0) return outline;
  const contours = outline.readInt16BE(0);
  const parts = partsOf(outline);
  if (contours < 0) {
    const whole = Buffer.from(outline.subarray(0, parts.at(-1).end));
    for (const { at } of parts) whole.writeUInt16BE(whole.readUInt16BE(at) & ~0x100, at);
    return even(whole);
  }
  const at = 10 + 2 * contours;
  return even(Buffer.concat([outline.subarray(0, at), Buffer.alloc(2), outline.subarray(at + 2 + outline.readUInt16BE(at))]));
}
const even = (bytes) => (bytes.length % 2 === 0 ? bytes : Buffer.concat([bytes, Buffer.alloc(1)]));

/** One table of groups, of format 12. */
function cmapOf(codes) {
  const groups = [];
  for (const [code, glyph] of codes) {
    const last = groups.at(-1);
    if (last && code === last.to + 1 && glyph === last.glyph + code - last.from) last.to = code;
    else groups.push({ from: code, to: code, glyph });
  }
  const cmap = Buffer.alloc(12 + 16 + 12 * groups.length);
  [[2, 1], [4, 3], [6, 10]].forEach(([at, value]) => cmap.writeUInt16BE(value, at));
  cmap.writeUInt32BE(12, 8);
  cmap.writeUInt16BE(12, 12);
  cmap.writeUInt32BE(cmap.length - 12, 16);
  cmap.writeUInt32BE(groups.length, 24);
  groups.forEach(({ from, to, glyph }, i) => [from, to, glyph].forEach((value, k) => cmap.writeUInt32BE(value, 28 + 12 * i + 4 * k)));
  return cmap;
}

/** The pairs of which both are kept. */
function kernOf(kern, keep) {
  if (!kern || kern.readUInt16BE(2) === 0) return undefined;
  const sub = kern.subarray(4);
  const pairs = [];
  for (let i = 0, n = sub.readUInt16BE(6); i < n; i++) {
    const pair = sub.subarray(14 + 6 * i, 20 + 6 * i);
    if (keep.has(pair.readUInt16BE(0)) && keep.has(pair.readUInt16BE(2))) pairs.push(pair);
  }
  const power = 2 ** Math.floor(Math.log2(Math.max(1, pairs.length)));
  const head = Buffer.alloc(18);
  [0, 1, 0, 14 + 6 * pairs.length, sub.readUInt16BE(4), pairs.length, 6 * power, Math.log2(power), 6 * (pairs.length - power)].forEach((value, i) => head.writeUInt16BE(Math.max(0, value), 2 * i));
  return Buffer.concat([head, ...pairs]);
}

function assembled(tables) {
  const tags = [...tables.keys()].sort();
  const power = 2 ** Math.floor(Math.log2(tags.length));
  const head = Buffer.alloc(12 + 16 * tags.length);
  head.writeUInt32BE(0x10000, 0);
  [tags.length, 16 * power, Math.log2(power), 16 * (tags.length - power)].forEach((value, i) => head.writeUInt16BE(value, 4 + 2 * i));
  let at = head.length;
  const bodies = tags.map((tag, i) => {
    const body = tables.get(tag);
    const padded = Buffer.concat([body, Buffer.alloc((4 - (body.length % 4)) % 4)]);
    let sum = 0;
    for (let k = 0; k < padded.length; k += 4) sum = (sum + padded.readUInt32BE(k)) >>> 0;
    head.write(tag, 12 + 16 * i, 'latin1');
    [sum, at, body.length].forEach((value, k) => head.writeUInt32BE(value, 12 + 16 * i + 4 + 4 * k));
    at += padded.length;
    return padded;
  });
  return Buffer.concat([head, ...bodies]);
}
