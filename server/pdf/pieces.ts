/** The blocks of a card as pieces of paper: how high each is at a width, and how it is drawn. A sheet is filled with them from the top. */
import type { Blank, Block, Card, Entry, Row, Section, Step, Table } from '../features/blocks/blocks.ts';
import { MM, Pen, type Doc, type Look } from './pen.ts';

export interface Piece {
  readonly height: number;
  /** it stays with the piece behind it */
  readonly heads?: true;
  readonly draw: (x: number, y: number) => void;
}

export interface Picture {
  readonly aspect: number;
  readonly wide: boolean;
  readonly draw: (x: number, y: number, w: number, h: number) => void;
}

/** The plan, where it can be drawn, and the finished hologram as it hangs, by the name of its lamp. */
export interface Pictures { readonly plan?: Picture; readonly hung: ReadonlyMap<string, Picture> }

const BODY: Look = { size: 10 };
const SMALL: Look = { size: 8.6 };
const TINY: Look = { size: 8 };
const KEY: Look = { size: 11, face: 'bold' };
const CAUTION: Look = { size: 9 };
/** Above and below what stands in a row. */
export const GAP = 0.6 * MM;
/** A box to tick, and where the text beside it begins. */
const [BOX, BESIDE] = [3.2 * MM, 5.4 * MM];
/** A line to write on: how far below the one above it, and how short it may be. */
const [WRITE, SHORTEST] = [5.9 * MM, 9 * MM];
const [STRIP_WIDTH, STRIP_HEIGHT, LINE] = [11 * MM, 10 * MM, 7.4 * MM];
const TALLEST = 86 * MM;
/** The hologram as it hangs stands in a column. */
const TALLEST_HUNG = 122 * MM;

export class Pieces {
  private readonly pen: Pen;

  constructor(doc: Doc, private readonly width: number, private readonly pictures: Pictures) { this.pen = new Pen(doc); }

  /** Name, note, and in which light the card is read. */
  head(card: Card): Piece {
    const { pen, width } = this;
    const kinds = [...card.kinds, 'bench card'].join('\n').split('\n');
    const aside = Math.max(...kinds.map(k => pen.wide(k, { size: 9.5 }))) + 4 * MM;
    const title: Look = { size: 19, face: 'bold' };
    const [name, note] = [pen.height(card.title, width - aside, title), pen.height(card.doc ?? '', width - aside, BODY)];
    const top = Math.max(name + note, kinds.length * pen.line({ size: 9.5 })) + 1.2 * MM;
    const light = pen.height(card.light, width - 4 * MM, CAUTION) + 1.8 * MM;
    return { height: top + light + GAP, draw: (x, y) => {
      pen.text(card.title, x, y, width - aside, title);
      pen.text(card.doc ?? '', x, y + name, width - aside, BODY);
      kinds.forEach((k, i) => { pen.text(k, x + width - aside, y + i * pen.line({ size: 9.5 }), aside, { size: 9.5 }, 'right'); });
      pen.frame(x, y + top, width, light);
      pen.text(card.light, x + 2 * MM, y + top + 0.9 * MM, width - 4 * MM, CAUTION);
    } };
  }

  section(s: Section): Piece[] {
    return [this.heading(s.title), ...s.blocks.flatMap(b => this.block(b))];
  }

  small(text: string, x: number, y: number, width: number): void {
    this.pen.text(text, x, y, width, TINY);
  }

  private heading(title: string): Piece {
    const { pen, width } = this;
    const look: Look = { size: 12.5, face: 'bold' };
    const above = 2.6 * MM;
    return { heads: true, height: above + 1.2 * MM + pen.height(title, width, look) + GAP, draw: (x, y) => {
      pen.rule(x, y + above, width, 2);
      pen.text(title, x, y + above + 1.2 * MM, width, look);
    } };
  }

  private block(b: Block): Piece[] {
    switch (b.kind) {
      case 'words': return [this.words(b.text, b.key ? KEY : BODY)];
      case 'caution': return [this.caution(b.text)];
      case 'picture': return this.pictured(b.steps);
      case 'hung': return this.hung(b.lamp);
      case 'table': return this.table(b);
      case 'steps': return b.steps.map(s => this.step(s, this.width));
      case 'blanks': return [this.blanks(b.blanks)];
      case 'large': return b.rows.map(r => this.large(r.label, r.entry));
      case 'strip': return [this.strip(b.times)];
      case 'lines': return Array.from({ length: b.count }, (): Piece => ({ height: LINE, draw: (x, y) => { this.pen.rule(x, y + LINE, this.width, 0.7); } }));
    }
  }

  private words(text: string, look: Look): Piece {
    const above = look === KEY ? 1 * MM : 0;
    return { height: above + this.pen.height(text, this.width, look) + 1.2 * MM, draw: (x, y) => { this.pen.text(text, x, y + above, this.width, look); } };
  }

  private caution(text: string): Piece {
    const { pen, width } = this;
    const high = pen.height(text, width - 3.6 * MM, CAUTION);
    return { height: high + 1.4 * MM, draw: (x, y) => { pen.bar(x, y, high, 1.6 * MM); pen.text(text, x + 3.6 * MM, y, width - 3.6 * MM, CAUTION); } };
  }

  /** A plan with what is done first beside it; a picture that is wide has that below. */
  private pictured(steps: readonly Step[]): Piece[] {
    const { pictures: { plan: picture }, width } = this;
    if (!picture) return steps.map(s => this.step(s, width));
    if (picture.wide) {
      const high = Math.min(TALLEST, width / picture.aspect);
      return [{ height: high + GAP, draw: (x, y) => { picture.draw(x, y, width, high); } }, ...steps.map(s => this.step(s, width))];
    }
    const aside = 0.29 * width;
    const room = width - aside - 4 * MM;
    const high = Math.min(TALLEST, room / picture.aspect);
    const beside = steps.map(s => this.step(s, aside));
    return [{ height: Math.max(high, beside.reduce((sum, p) => sum + p.height, 0)) + GAP, draw: (x, y) => {
      const wide = Math.min(room, high * picture.aspect);
      picture.draw(x + (room - wide) / 2, y, wide, high);
      let at = y;
      for (const p of beside) { p.draw(x + width - aside, at); at += p.height; }
    } }];
  }

  private hung(lamp: string): Piece[] {
    const picture = this.pictures.hung.get(lamp);
    if (!picture) return [];
    const high = Math.min(TALLEST_HUNG, this.width / picture.aspect);
    return [{ height: high + 2 * GAP, draw: (x, y) => { picture.draw(x, y, Math.min(this.width, high * picture.aspect), high); } }];
  }

  private step(s: Step, width: number): Piece {
    const { pen } = this;
    const room = width - BESIDE;
    const one = s.write !== undefined && pen.wide(s.text, BODY) + SHORTEST + pen.wide(s.write, TINY) + 3 * MM <= room;
    const text = pen.height(s.text, room, BODY);
    const line = s.write === undefined || one ? 0 : WRITE;
    const small = pen.height(s.small ?? '', room, SMALL);
    return { height: text + line + small + 2 * GAP, draw: (x, y) => {
      this.tick(x, y + GAP);
      pen.text(s.text, x + BESIDE, y + GAP, room, BODY);
      const from = one ? pen.wide(s.text, BODY) + 1.5 * MM : 0;
      if (s.write !== undefined) this.write(s.write, x + BESIDE + from, y + GAP + text + line, Math.min(room - from, 46 * MM));
      pen.text(s.small ?? '', x + BESIDE, y + GAP + text + line, room, SMALL);
    } };
  }

  private tick(x: number, y: number): void {
    this.pen.frame(x, y + 0.5 * MM, BOX, BOX);
  }

  /** A line whose ink stands just above `bottom`, with what stands behind it. */
  private write(behind: string, x: number, bottom: number, width: number): void {
    const { pen } = this;
    const after = behind === '' ? 0 : pen.wide(behind, TINY) + 1 * MM;
    pen.rule(x, bottom - 0.6 * MM, width - after, 0.7);
    if (behind !== '') pen.text(behind, x + width - after + 1 * MM, bottom - 0.4 * MM - pen.line(TINY), after, TINY);
  }

  private blanks(all: readonly Blank[]): Piece {
    const between = 4 * MM;
    const shares = all.reduce((sum, b) => sum + (b.width ?? 1), 0);
    const room = this.width - between * (all.length - 1);
    const high = WRITE + 0.9 * MM;
    return { height: high, draw: (x, y) => {
      let at = x;
      for (const b of all) {
        const wide = (room * (b.width ?? 1)) / shares;
        const label = Math.min(this.pen.wide(b.label, BODY) + 1.2 * MM, wide - SHORTEST);
        this.pen.label(b.label, at, y + high - 0.6 * MM - this.pen.line(BODY), label + 2, BODY);
        this.write(b.write, at + label, y + high, wide - label);
        at += wide + between;
      }
    } };
  }

  private large(label: string, entry: Entry): Piece {
    const { pen, width } = this;
    const look: Look = { size: 13.5, face: 'bold' };
    const aside = 15 * MM;
    const high = 'write' in entry ? 7 * MM : pen.height(entry.text, width - aside, look);
    return { height: high + 1 * MM, draw: (x, y) => {
      pen.label(label, x, y + ('write' in entry ? 2.4 : 1) * MM, aside - 1 * MM, BODY);
      if ('write' in entry) this.write(entry.write, x + aside, y + high, width - aside);
      else pen.text(entry.text, x + aside, y, width - aside, look);
    } };
  }

  private strip(times: readonly string[]): Piece {
    const look: Look = { size: 9.4, face: 'bold' };
    const between = 1.3 * MM;
    const wide = Math.max(STRIP_WIDTH, ...times.map(t => this.pen.wide(`${t} s`, look) + 1.6 * MM));
    const across = Math.max(1, Math.floor((this.width + between) / (wide + between)));
    return { height: Math.ceil(times.length / across) * (STRIP_HEIGHT + between) + GAP, draw: (x, y) => {
      times.forEach((time, i) => {
        const [left, top] = [x + (i % across) * (wide + between), y + Math.floor(i / across) * (STRIP_HEIGHT + between)];
        this.pen.frame(left, top, wide, STRIP_HEIGHT);
        this.pen.text(`${time} s`, left + 0.8 * MM, top + 0.4 * MM, wide, look);
      });
    } };
  }

  private table({ heads, widths, groups }: Table): Piece[] {
    const { pen } = this;
    const all = widths.reduce((a, b) => a + b, 0);
    const columns = widths.map(w => ((this.width - BESIDE) * w) / all);
    const lefts = columns.map((_, i) => BESIDE + columns.slice(0, i).reduce((a, b) => a + b, 0));
    const head: Piece = { heads: true, height: pen.line(SMALL), draw: (x, y) => { heads.forEach((h, i) => { pen.text(h, x + lefts[i]!, y, columns[i]!, SMALL); }); } };
    return [head, ...groups.flatMap(g => [...(g.title === undefined ? [] : [this.group(g.title)]), ...g.rows.map((r, i) => ({ ...this.row(r, columns, lefts), ...(r.sum && i < g.rows.length - 1 ? { heads: true as const } : {}) }))]), { height: 1.2 * MM, draw: () => undefined }];
  }

  private group(title: string): Piece {
    const { pen, width } = this;
    const look: Look = { size: 9, face: 'slanted' };
    const high = pen.height(title, width, look) + 1.3 * MM;
    return { heads: true, height: high, draw: (x, y) => { pen.text(title, x, y + 1 * MM, width, look); pen.rule(x, y + high, width, 0.9); } };
  }

  private row(r: Row, columns: readonly number[], lefts: readonly number[]): Piece {
    const { pen, width } = this;
    const look: Look = r.sum ? { size: 9.4, face: 'bold' } : BODY;
    const room = columns.map(w => w - 1.6 * MM);
    const heights = r.entries.map((e, i) => ('write' in e ? 5 * MM : pen.height(e.text, room[i]!, look) + pen.height(e.small ?? '', room[i]!, SMALL)));
    const high = Math.max(5 * MM, ...heights) + 2 * GAP;
    return { height: high, draw: (x, y) => {
      if (r.tick) this.tick(x, y + GAP);
      r.entries.forEach((e, i) => {
        const left = x + lefts[i]!;
        if ('write' in e) { this.write(e.write, left, y + GAP + 5 * MM, i === r.entries.length - 1 ? columns[i]! : room[i]!); return; }
        pen.text(e.text, left, y + GAP, room[i]!, look);
        pen.text(e.small ?? '', left, y + GAP + (e.text === '' ? 0.3 * MM : pen.height(e.text, room[i]!, look)), room[i]!, SMALL);
      });
      pen.rule(x, y + high, width, 0.4, '#777');
    } };
  }
}
