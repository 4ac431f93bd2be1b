/** Where the holograms of transfers were recorded: the setup and the plate that `from`, `recorded as` and `recorded on` name, on this page or on another. */
import type { BoundFact, Master, Setup, Thing, Use } from '../model.ts';
import type { Sink } from '../scope.ts';
import type { Found } from './found.ts';

/** Masters of masters of masters: more of them nobody has, and each is planned for the next. */
const MAX_DEEP = 12;

/** A setup with its masters: the same as long as both are, so that what was computed of it is kept. */
const known = new WeakMap<Setup, { readonly masters: ReadonlyMap<string, Master>; readonly made: Setup }>();

export function withMasters(setups: readonly Setup[], find: (path: string) => Found, uses: Use[], sink: Sink): readonly Setup[] {
  if (!setups.some(s => mastered(s).length > 0)) return setups;
  const page = new Page(setups, find, uses, sink);
  return setups.map(s => page.made(s, []));
}

class Page {
  private readonly files = new Map<string, readonly Setup[] | undefined>();
  private readonly done = new Map<Setup, Setup>();
  private readonly inRings = new Set<Setup>();

  constructor(private readonly setups: readonly Setup[], private readonly find: (path: string) => Found, private readonly uses: Use[], private readonly sink: Sink) {}

  /** `chain`: the setups that this one is a master for. */
  made(setup: Setup, chain: readonly Setup[]): Setup {
    const before = this.done.get(setup);
    if (before) return before;
    const masters = new Map<string, Master>();
    for (const h of mastered(setup)) {
      const master = this.masterOf(h, [...chain, setup]);
      h.recordedOn = master?.plate;
      if (master) masters.set(h.id, master);
    }
    const kept = known.get(setup);
    const made = masters.size === 0 ? setup : kept && same(kept.masters, masters) ? kept.made : { ...setup, masters };
    known.set(setup, { masters, made });
    this.done.set(setup, made);
    return made;
  }

  private masterOf(h: Thing, chain: readonly Setup[]): Master | undefined {
    const [from, as, on] = ['from', 'recorded as', 'recorded on'].map(phrase => h.facts.get(phrase)) as [BoundFact | undefined, BoundFact | undefined, BoundFact | undefined];
    const [file, name] = [words(from), words(as)];
    const setup = chain.at(-1)!;
    const among = from && file !== undefined ? this.inFile(h, setup, from, file) : this.setups;
    const fact = as ?? from!;
    if (!among) return undefined;
    const target = name === undefined ? (among.length === 1 ? among[0] : undefined) : among.find(s => s.name === name);
    if (!target) {
      const names = among.slice(0, 5).map(s => said(s.name)).join(', ');
      const none = `there is no setup ${said(name)}${file === undefined ? ' on this page' : ` in ${said(file)}`}, only ${names}`;
      return this.missing(h, setup, fact, among.length === 0 ? `${said(file)} has no setup` : name === undefined ? `${said(file)} has several setups, ${names}: say which by “recorded as”` : none);
    }
    if (file === undefined && chain.includes(target)) return this.ring(h, setup, fact, chain.slice(chain.indexOf(target)), target);
    const whole = file === undefined ? this.made(target, chain) : target;
    const deep = 1 + Math.max(0, ...[...(whole.masters?.values() ?? [])].map(m => m.deep));
    if (deep > MAX_DEEP) return this.missing(h, setup, fact, `more than ${MAX_DEEP} setups stand behind one another as masters`);
    const plate = this.plateOf(whole, words(on));
    return typeof plate === 'string' ? this.missing(h, setup, on ?? fact, plate) : { setup: whole, plate, at: fact.at, deep };
  }

  /** The setups of another file. It is asked for once, and what is wrong with it is told once. */
  private inFile(h: Thing, setup: Setup, from: BoundFact, path: string): readonly Setup[] | undefined {
    if (path === '') { this.missing(h, setup, from, 'the name of its file is empty'); return undefined; }
    if (!this.files.has(path)) {
      const found = this.find(path);
      const ring = 'code' in found ? (found.code === 'import-ring' ? found.data['ring'] : undefined) : found.masterRing;
      this.files.set(path, 'code' in found || ring !== undefined ? undefined : found.setups);
      this.uses.push({ path, uri: found.uri, at: from.at });
      if (ring !== undefined) this.report('master-ring', h, setup, from, { ring });
      else if ('code' in found) this.missing(h, setup, from, WHY[found.code]?.(path) ?? `${said(path)} cannot be read`);
    }
    return this.files.get(path);
  }

  /** Said where the ring is entered, not by each of its setups. */
  private ring(h: Thing, setup: Setup, fact: BoundFact, ring: readonly Setup[], first: Setup): Master | undefined {
    if (!ring.some(s => this.inRings.has(s))) this.report('master-ring', h, setup, fact, { ring: [...ring, first].map(s => s.name).join(' → ') });
    for (const s of ring) this.inRings.add(s);
    return undefined;
  }

  private plateOf({ name, things }: Setup, wanted: string | undefined): Thing | string {
    const plates = [...things.values()].filter(t => t.kind.word === 'plate');
    const plate = wanted === undefined ? (plates.length === 1 ? plates[0] : undefined) : plates.find(p => p.id === wanted);
    return plate ?? (plates.length === 0 ? `${said(name)} has no plate` : wanted === undefined ? `${said(name)} has several plates, ${plates.slice(0, 5).map(p => p.id).join(', ')}: say which by “recorded on”` : `${said(name)} has no plate ${said(wanted)}`);
  }

  private missing(h: Thing, setup: Setup, fact: BoundFact, why: string): Master | undefined {
    this.report('master-missing', h, setup, fact, { why });
    return undefined;
  }
  private report(code: string, { id }: Thing, setup: Setup, fact: BoundFact, data: Readonly<Record<string, string>>): void {
    this.sink.report(code, fact.at, id, { hologram: id, ...data }, setup.name);
  }
}

/** A name in quotes, not longer than anybody reads. */
const said = (name = ''): string => `“${name.length <= 60 ? name : `${name.slice(0, 50)} …`}”`;

const WHY: Readonly<Record<string, (path: string) => string>> = {
  'import-unreadable': path => `${said(path)} is missing or cannot be read`,
  'import-outside': path => `${said(path)} lies outside of the open folder`,
  'too-many-files': () => 'the page uses too many files already',
};

/** Quotes with nothing in them yet name nothing. */
const words = (fact: BoundFact | undefined): string | undefined => (fact?.value.kind === 'words' && fact.value.text !== '' ? fact.value.text : undefined);
const mastered = ({ things }: Setup): Thing[] => [...things.values()].filter(t => t.kind.word === 'hologram' && (words(t.facts.get('from')) ?? words(t.facts.get('recorded as'))) !== undefined);
const same = (a: ReadonlyMap<string, Master>, b: ReadonlyMap<string, Master>): boolean =>
  a.size === b.size && [...a].every(([id, m]) => { const n = b.get(id); return n?.setup === m.setup && n.plate === m.plate; });
