/** Where the holograms of transfers were recorded: the setup and the plate that `from`, `recorded as` and `recorded on` name, on this page or on another. */
import type { BoundFact, Master, Setup, Thing, Use } from '../model.ts';
import type { Found } from './bind.ts';
import type { Sink } from '../scope.ts';

/** Masters of masters of masters: more of them nobody has, and each is planned for the next. */
const MAX_DEEP = 12;

/** What is kept of a setup with its masters: the same as long as both are. */
const known = new WeakMap<Setup, { readonly masters: ReadonlyMap<string, Master>; readonly made: Setup }>();

export function withMasters(setups: readonly Setup[], find: (path: string) => Found, uses: Use[], sink: Sink): readonly Setup[] {
  const holograms = setups.map(mastered);
  if (holograms.every(h => h.length === 0)) return setups;
  const files = new Map<string, Found>();
  const done = new Map<Setup, Setup>();
  const rings = new Set<Setup>();

  const made = (setup: Setup, chain: readonly Setup[]): Setup => {
    const before = done.get(setup);
    if (before) return before;
    const masters = new Map<string, Master>();
    for (const h of holograms[setups.indexOf(setup)]!) {
      const master = masterOf(setup, h, [...chain, setup]);
      h.recordedOn = master?.plate;
      if (master) masters.set(h.id, master);
    }
    const kept = known.get(setup);
    const own = masters.size === 0 ? setup : kept && same(kept.masters, masters) ? kept.made : { ...setup, masters };
    known.set(setup, { masters, made: own });
    done.set(setup, own);
    return own;
  };

  const masterOf = (setup: Setup, h: Thing, chain: readonly Setup[]): Master | undefined => {
    const [from, as, on] = ['from', 'recorded as', 'recorded on'].map(phrase => h.facts.get(phrase)) as [BoundFact | undefined, BoundFact | undefined, BoundFact | undefined];
    const missing = (fact: BoundFact, why: string): undefined => { sink.report('master-missing', fact.at, h.id, { hologram: h.id, why }, setup.name); };
    const ring = (fact: BoundFact, names: readonly string[]): undefined => { sink.report('master-ring', fact.at, h.id, { hologram: h.id, ring: names.join(' → ') }, setup.name); };
    const [file, name, plate] = [from, as, on].map(words) as [string | undefined, string | undefined, string | undefined];
    let among = setups;
    if (from && file !== undefined) {
      const known = files.get(file);
      const found = known ?? find(file);
      files.set(file, found);
      uses.push({ path: file, uri: found.uri, at: from.at });
      // The same file is read once, and what is wrong with it is told once.
      if ('code' in found) return known ? undefined : found.code === 'import-ring' ? ring(from, (found.data['ring'] ?? '').split(' → ')) : missing(from, WHY[found.code]?.(file) ?? `“${file}” cannot be read`);
      if (found.masterRing !== undefined) return known ? undefined : ring(from, found.masterRing.split(' → '));
      among = found.setups;
    }
    const fact = as ?? from!;
    const target = name === undefined ? (among.length === 1 ? among[0] : undefined) : among.find(s => s.name === name);
    if (!target) {
      const names = among.slice(0, 5).map(s => `“${s.name}”`).join(', ');
      return missing(fact, among.length === 0 ? `“${file ?? ''}” has no setup` : name === undefined ? `“${file ?? ''}” has several setups, ${names}: say which by “recorded as”` : `there is no setup “${name}”${file === undefined ? ' on this page' : ` in “${file}”`}, only ${names}`);
    }
    const at = file === undefined ? chain.indexOf(target) : -1;
    if (at >= 0) {
      // Said where the ring is entered, not by each of its setups.
      const told = chain.slice(at).some(s => rings.has(s));
      for (const s of chain.slice(at)) rings.add(s);
      return told ? undefined : ring(fact, [...chain.slice(at), target].map(s => s.name));
    }
    const whole = file === undefined ? made(target, chain) : target;
    const deep = 1 + Math.max(0, ...[...(whole.masters ?? new Map<string, Master>()).values()].map(m => m.deep));
    if (deep > MAX_DEEP) return missing(fact, `more than ${MAX_DEEP} setups stand behind one another as masters`);
    const plates = [...whole.things.values()].filter(t => t.kind.word === 'plate');
    const own = plate === undefined ? (plates.length === 1 ? plates[0] : undefined) : plates.find(p => p.id === plate);
    if (!own) return missing(on ?? fact, plates.length === 0 ? `“${target.name}” has no plate` : plate === undefined ? `“${target.name}” has several plates, ${plates.map(p => p.id).join(', ')}: say which by “recorded on”` : `“${target.name}” has no plate ${plate}`);
    return { setup: whole, plate: own, at: fact.at, deep };
  };

  return setups.map(s => made(s, []));
}

const WHY: Readonly<Record<string, (path: string) => string>> = {
  'import-unreadable': path => (path === '' ? 'the name of its file is empty' : `“${path}” is missing or cannot be read`),
  'import-outside': path => `“${path}” lies outside of the open folder`,
  'too-many-files': () => 'the page uses too many files already',
};

const words = (fact: BoundFact | undefined): string | undefined => (fact?.value.kind === 'words' ? fact.value.text : undefined);
const mastered = ({ things }: Setup): Thing[] => [...things.values()].filter(t => t.kind.word === 'hologram' && (words(t.facts.get('from')) ?? words(t.facts.get('recorded as'))) !== undefined);
const same = (a: ReadonlyMap<string, Master>, b: ReadonlyMap<string, Master>): boolean =>
  a.size === b.size && [...a].every(([id, m]) => { const n = b.get(id); return n?.setup === m.setup && n.plate === m.plate; });
