/** The objects of a repository (commits, folders, files), from one git process that is held open: a history asks for hundreds. */
import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import { MAX_BYTES, Trouble } from '../files.ts';
import { endOf, failure, start, textOf } from './run.ts';

export interface GitObject {
  readonly id: string;
  readonly type: string;
  /** how long it is, in bytes */
  readonly size: number;
  /** undefined where it is longer than any page can be */
  readonly data: Buffer | undefined;
}

interface Asked {
  answer(found: GitObject | undefined): void;
  fail(e: Trouble): void;
}

const LINE_END = 10;

export class Objects {
  private readonly child: ChildProcessWithoutNullStreams;
  /** those who wait, in the order in which git answers */
  private readonly asked: Asked[] = [];
  private questions = '';
  private lost: Trouble | undefined;
  private parts: Buffer[] = [];
  private held = 0;
  /** what is being read, and how much of it is still to come, with the line end behind it */
  private reading: { readonly id: string; readonly type: string; readonly size: number; left: number } | undefined;

  constructor(folder: string) {
    // As they are stored, no filters: line ends mean nothing to a page; and a filter is a program of somebody's settings, after which a revision would not be the same in every clone.
    this.child = start(['cat-file', '--batch'], folder);
    this.child.stdout.on('data', (part: Buffer) => { this.take(part); });
    // A process that has gone is told of by its end.
    this.child.stdin.on('error', () => undefined);
    const said = textOf(this.child.stderr);
    void endOf(this.child).then(async () => failure(await said, folder), (e: unknown) => e as Trouble).then(e => {
      this.lost = e;
      for (const a of this.asked.splice(0)) a.fail(e);
    });
  }

  /** The object of a name, such as `HEAD^{commit}` or an id; undefined where there is none. A name is never an option here. */
  get(name: string): Promise<GitObject | undefined> {
    // No revision has such letters, and a line end would be the next question.
    if (/[\0-\x1f\x7f]/.test(name)) return Promise.resolve(undefined);
    return new Promise((answer, fail) => {
      if (this.lost !== undefined) { fail(this.lost); return; }
      this.asked.push({ answer, fail });
      this.ask(name);
    });
  }

  /** Questions that come at once are sent at once. */
  private ask(name: string): void {
    if (this.questions === '') process.nextTick(() => { this.child.stdin.write(this.questions); this.questions = ''; });
    this.questions += `${name}\n`;
  }

  /** An object that another one names. */
  async known(id: string): Promise<GitObject> {
    const found = await this.get(id);
    if (!found) throw new Trouble(`the repository is damaged or not complete: object ${id} is missing; git fsck says more`);
    return found;
  }

  close(): void {
    this.child.stdin.end();
  }

  private take(part: Buffer): void {
    this.parts.push(part);
    this.held += part.length;
    while (this.step());
  }

  /** Takes one header or one object off what has come; false where more has to come first. */
  private step(): boolean {
    if (!this.reading) {
      const all = this.all();
      const end = all.indexOf(LINE_END);
      if (end < 0) return false;
      this.keep(all.subarray(end + 1));
      const header = /^([0-9a-f]{40,64}) ([a-z]+) (\d+)$/.exec(all.toString('utf8', 0, end));
      if (header) this.reading = { id: header[1]!, type: header[2]!, size: Number(header[3]), left: Number(header[3]) + 1 };
      else this.asked.shift()!.answer(undefined);
      return true;
    }
    const { id, type, size } = this.reading;
    if (size > MAX_BYTES) {
      const dropped = Math.min(this.held, this.reading.left);
      this.keep(this.all().subarray(dropped));
      this.reading.left -= dropped;
      if (this.reading.left > 0) return false;
      this.reading = undefined;
      this.asked.shift()!.answer({ id, type, size, data: undefined });
      return true;
    }
    if (this.held < this.reading.left) return false;
    const all = this.all();
    this.keep(all.subarray(size + 1));
    this.reading = undefined;
    this.asked.shift()!.answer({ id, type, size, data: all.subarray(0, size) });
    return true;
  }

  private all(): Buffer {
    if (this.parts.length > 1) this.parts = [Buffer.concat(this.parts)];
    return this.parts[0] ?? Buffer.alloc(0);
  }

  private keep(rest: Buffer): void {
    this.parts = rest.length > 0 ? [rest] : [];
    this.held = rest.length;
  }
}
