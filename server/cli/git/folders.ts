/** Files and folders of a revision, found by walking from folder to folder: no name of a file is ever put on a command line or in a question, so that any name works. */
import type { Objects } from './objects.ts';

export interface Entry {
  readonly name: string;
  readonly kind: 'file' | 'folder' | 'link' | 'repository';
  readonly id: string;
}

const KINDS: Readonly<Record<string, Entry['kind']>> = { '40000': 'folder', '120000': 'link', '160000': 'repository' };
/** As many links one behind the other as a system follows. */
const MAX_LINKS = 40;

export class Folders {
  /** what a folder holds never changes, and most folders are the same in the next revision */
  private readonly seen = new Map<string, Promise<readonly Entry[]>>();

  constructor(private readonly objects: Objects) {}

  /** What a folder holds, in git's order, which is by bytes. */
  list(id: string): Promise<readonly Entry[]> {
    let entries = this.seen.get(id);
    if (!entries) this.seen.set(id, entries = this.objects.known(id).then(o => entriesOf(o.data ?? Buffer.alloc(0), id.length / 2)));
    return entries;
  }

  /** A file or folder below the folder with that id, links followed; undefined where there is none in the repository. `path` has `/`, and may be empty. */
  async find(root: string, path: string): Promise<Entry | undefined> {
    const top: Entry = { name: '', kind: 'folder', id: root };
    const way: Entry[] = [top];
    const left = path.split('/');
    for (let links = 0; left.length > 0;) {
      const name = left.shift()!;
      if (name === '' || name === '.') continue;
      if (name === '..') {
        if (way.length === 1) return undefined;
        way.pop();
        continue;
      }
      const at = way.at(-1)!;
      const next = at.kind === 'folder' ? (await this.list(at.id)).find(e => e.name === name) : undefined;
      if (!next) return undefined;
      if (next.kind !== 'link') { way.push(next); continue; }
      const to = (await this.objects.known(next.id)).data?.toString('utf8') ?? '';
      if (++links > MAX_LINKS || to.startsWith('/')) return undefined;
      left.unshift(...to.split('/'));
    }
    return way.at(-1);
  }
}

/** `mode name`, a zero byte, and the id in bytes, one behind the other. */
function entriesOf(data: Buffer, idBytes: number): Entry[] {
  const entries: Entry[] = [];
  for (let at = 0; at < data.length;) {
    const blank = data.indexOf(32, at);
    const zero = data.indexOf(0, blank);
    const end = zero + 1 + idBytes;
    entries.push({ name: data.toString('utf8', blank + 1, zero), kind: KINDS[data.toString('latin1', at, blank)] ?? 'file', id: data.toString('hex', zero + 1, end) });
    at = end;
  }
  return entries;
}
