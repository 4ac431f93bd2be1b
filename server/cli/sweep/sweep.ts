/** `platewright sweep`: what becomes of results while one number of a page takes other values. */
import { analyse, type Snapshot } from '../../analysis.ts';
import { sweepCsv } from '../../features/sweep/csv.ts';
import { sweepMarkdown } from '../../features/sweep/markdown.ts';
import { sweepPage } from '../../features/sweep/page.ts';
import { sweepTable, type Over, type Swung } from '../../features/sweep/sweep.ts';
import { sweepText } from '../../features/sweep/text.ts';
import { nearest } from '../../model/scope.ts';
import { LATER } from '../../results/goals.ts';
import type { Results } from '../../results/plan.ts';
import { askedOf } from '../../results/sweep.ts';
import { variantsOf } from '../../results/variants.ts';
import { inVariant, setupsNamed } from '../chosen.ts';
import { onScreen, type Done } from '../done.ts';
import { Misuse, openFile, Trouble, type Reach } from '../files.ts';
import { formatOf, handedOver, type Target } from '../tabled.ts';
import { askedIn, inputNamed, MOST, SPELLING, valuesIn } from './over.ts';

export interface SweepOptions extends Reach, Target {
  /** one, or two: the second as a curve for each of its values */
  readonly over?: readonly string[];
  readonly show?: readonly string[];
  /** all variants beside the setup as written */
  readonly variants: boolean;
  readonly setup?: string;
  readonly variant?: string;
}

/** Longer than this, ms, nobody is kept waiting. */
const LONGEST = 60_000;

export async function sweep(named: string, o: SweepOptions): Promise<Done> {
  const [first, second, ...more] = (o.over ?? []).map(askedIn);
  if (!first) throw new Misuse(`Say which number takes which values: ${SPELLING}.`);
  if (more.length > 0) throw new Misuse('Two numbers can be tried at a time: the second --over is a curve for each of its values.');
  if (second?.name === first.name) throw new Misuse(`Both --over are of ${first.name}.`);
  if (o.variants && o.variant !== undefined) throw new Misuse('Choose one: --variant for one variant, --variants for all of them beside the setup as written.');
  const kind = formatOf('A sweep', o);
  const file = openFile(named, o);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, o.setup, o.variant);
  const base = onlyOne(snapshot, file.name, o.setup);
  const names = shownNames(o.show, base, file.name);
  const inputs = [first, ...(second ? [second] : [])].map(a => inputNamed(a.name, base, file.name));
  const over = [first, ...(second ? [second] : [])].map((a, i) => valuesIn(a, inputs[i]!, base)) as [Over, Over?];
  const swung = o.variants ? allVariants(base, file.name, [first.name, ...(second ? [second.name] : [])], inputs) : [{ results: base, label: undefined, inputs }];
  const count = over.reduce((n, v) => n * v!.values.length, swung.length);
  if (count > MOST) throw new Misuse(`That is ${count} sets of values in all; ${MOST} are tried at most. Take larger steps.`);
  const end = Date.now() + LONGEST;
  const table = sweepTable(snapshot, swung, over, names, () => Date.now() < end);
  return handedOver(await written(), o.output, table.ended ? 3 : 0);

  async function written(): Promise<string | Uint8Array> {
    switch (kind) {
      case 'csv': return sweepCsv(table);
      case 'json': return (await import('./json.ts')).sweepJson(file, table);
      case 'markdown': return onScreen(sweepMarkdown(sweepPage(table), file.name));
      case 'text': return onScreen(sweepText(sweepPage(table)));
      case 'svg': return (await import('../pictures.ts')).makerFor(o.output)((await import('./plot.ts')).sweepPlot(table), o.dark ? 'dark' : 'light');
    }
  }
}

function onlyOne({ results }: Snapshot, file: string, setup: string | undefined): Results {
  const found = setupsNamed(results, file, setup);
  const [one] = found;
  if (!one) throw new Trouble(`There is no setup in ${file}.`);
  if (found.length > 1) throw new Misuse(`${file} has several setups; choose one with --setup: ${found.map(x => `“${x.setup.name}”`).join(', ')}.`);
  return one;
}

/** What is asked for, parted by commas; else what the goals are about, else what every setup has. */
function shownNames(show: readonly string[] | undefined, r: Results, file: string): string[] {
  const asked = [...new Set((show ?? []).flatMap(s => s.split(',')).map(s => s.trim().replace(/\s+/g, ' ')).filter(s => s !== ''))];
  if (show !== undefined && asked.length === 0) throw new Misuse('Say which results to show: --show "mismatch, beam ratio".');
  if (asked.length === 0) {
    const goals = [...new Set(r.goals.map(g => g.goal.result))];
    const usual = goals.length > 0 ? goals : ['mismatch', 'brightness', 'beam ratio', 'exposure'].filter(n => r.aliases.get(n)?.length === 1);
    if (usual.length === 0) throw new Misuse('Say which results to show: --show "mismatch, beam ratio".');
    return usual;
  }
  for (const name of asked) {
    if (askedOf(r, name)) continue;
    const among = r.aliases.get(name);
    if (among) throw new Misuse(`“${name}” means several results: ${among.map(c => c.name).join(', ')}. Write the full name of one.`);
    if (LATER.includes(name)) throw new Trouble(`“${name}” is not computed yet.`);
    const names = [...r.aliases.keys(), ...r.graph.cells.map(c => c.name)];
    const near = nearest(name, names);
    const known = [...new Set(r.published.map(c => c.name))];
    throw new Misuse(`${file} has no result “${name}”. ${near !== undefined ? `Did you mean “${near}”?` : known.length === 0 ? 'It has no results yet.' : `Its results: ${known.slice(0, 20).join(', ')}${known.length > 20 ? ', …' : ''}.`}`);
  }
  return asked;
}

/** The setup as written and each of its variants. A variant may lack a number that the setup has. */
function allVariants(base: Results, file: string, names: readonly string[], inputs: Swung['inputs']): Swung[] {
  const variants = variantsOf(base);
  if (variants.length === 0) throw new Misuse(`There is no variant in “${base.setup.name}”.`);
  const within = (results: Results): Swung['inputs'] => names.map(name => {
    try {
      return inputNamed(name, results, file);
    } catch (e) {
      if (!(e instanceof Misuse)) throw e;
      return undefined;
    }
  });
  return [{ results: base, label: 'as written', inputs }, ...variants.map(v => ({ results: v.results, label: v.variant.name, inputs: within(v.results) }))];
}
