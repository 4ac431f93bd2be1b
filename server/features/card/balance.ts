/** Setting the split by meter: what the object light has to read beside the reference, in units, in the bare numbers of a meter, or as a ratio of whatever it shows. */
import type { Thing } from '../../model/model.ts';
import { plain } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import type { PlateLight } from '../../results/light/plate-light.ts';
import { byLaser, type PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { bandOf } from '../../results/shown.ts';
import { showCell } from '../chain.ts';
import { blank, key, words, type Block, type Section } from '../blocks/blocks.ts';
import { goalsOf } from '../blocks/goals.ts';

export function balance(r: Results): Section | undefined {
  const blocks = r.plates.flatMap(byLaser).filter(p => p.results.pairs.length > 0).flatMap((p, i) => ofPlate(p.results, p.laser, r, i === 0));
  return blocks.length === 0 ? undefined : { name: 'balance', title: 'Balance', blocks };
}

/** @param first how it is done is said once */
function ofPlate(p: PlateResults, laser: Thing | undefined, r: Results, first: boolean): Block[] {
  const { id } = p.plate;
  r.ask(`${id}.beam ratio`);
  const light = r.light.plates.find(l => l.plate === p.plate && l.laser === laser);
  const now = light && !light.ratio.missing ? showCell(r.graph, light.ratio).text : undefined;
  if (p.pairs.every(x => x.arm.beam === x.reference.beam)) return [words(`One beam brings both the reference and the object light to ${id}: their ratio follows from the tone of the object and from how near it stands${now === undefined ? '' : `, by the page ${now}`}.`)];
  const splitter = splitterOf(p);
  const aim = aimOf(p, laser, r);
  const band = expectedOf(p, laser, r);
  const at = laser ? `At ${id}, ${laser.id} alone: ` : r.plates.length > 1 ? `At ${id}: ` : '';
  const turn = `${at}${splitter ? `${at === '' ? 'Turn' : 'turn'} ${splitter.id} until` : `${at === '' ? 'Set' : 'set'} the split so that`}`;
  const blocks: Block[] = [];
  if (aim) blocks.push(key(sentences(`${turn} ${pair(light, aim, r)}: ${aim.text}, as ${aim.aimed ? 'aimed at' : 'written'}`)));
  if (band) blocks.push((aim ? words : key)(sentences(light ? between(light, band, aim === undefined ? turn : undefined, r) : `Expected is a ratio from ${band[0]}:1 to ${band[1]}:1`)));
  if (!aim && !band) blocks.push(words(sentences(`Which ratio of reference to object light is wanted at ${id} is not written`, now === undefined ? '' : `By the page it is ${now} now`)));
  else if (now !== undefined) blocks.push(words(sentences(`By the page the ratio is ${now} now`, setting(splitter, aim, r))));
  if (first) blocks.push(words(`One meter for both, flat where the plate will be, lenses in, less its dark reading. ${splitter ? `Turning ${splitter.id}` : 'The split'} changes the reference as well: read it again each time.`));
  blocks.push(
    ...(aim || band ? [] : [{ kind: 'blanks', blanks: [blank('ratio that is wanted', ':1')] } as const]),
    { kind: 'blanks', blanks: [blank('reference'), aim ? blank(`÷ ${aim.times} =`) : blank('÷ ratio =')] },
    { kind: 'blanks', blanks: [blank('object light'), blank('ratio', ':1')] },
    ...(splitter ? [{ kind: 'blanks', blanks: [blank(splitter.facts.has('wheel') || splitter.facts.has('graduations') ? `wheel of ${splitter.id} at mark` : `${splitter.id} stands at`)] } as const] : []),
  );
  return blocks;
}

const sentences = (...parts: readonly string[]): string => parts.filter(p => p !== '').map(p => `${p}.`).join(' ');

/** Where the reference and the object beams part. */
function splitterOf(p: PlateResults): Thing | undefined {
  const at = p.arms[0]?.partsAt;
  return at?.kind.light === 'shares' ? at : undefined;
}

interface Aim { readonly text: string; readonly parts: readonly [string, string]; readonly times: string; readonly aimed: boolean }

/** `aim beam ratio: 4:1`, else the ratio that is written. */
function aimOf(p: PlateResults, laser: Thing | undefined, { setup, ...r }: Results): Aim | undefined {
  const expr = goalsOf({ setup, ...r }, 'aim', 'beam ratio', p.plate.id, laser?.id)[0]?.limits[0]?.expr;
  if (expr?.kind === 'ratio' && expr.left > 0 && expr.right > 0) return { text: `${expr.left}:${expr.right}`, parts: [String(expr.left), String(expr.right)], times: plain(expr.left / expr.right), aimed: true };
  const written = setup.facts.get('beam ratio')?.value;
  return written?.kind === 'ratio' && written.value > 0 ? { text: `${plain(written.value)}:1`, parts: [plain(written.value), '1'], times: plain(written.value), aimed: false } : undefined;
}

/** `expect beam ratio from 3:1 to 6:1` */
function expectedOf(p: PlateResults, laser: Thing | undefined, r: Results): readonly [string, string] | undefined {
  const goals = goalsOf(r, 'expect', 'beam ratio', p.plate.id, laser?.id);
  const found = r.goals.find(g => goals.includes(g.goal) && g.goal.op === 'between' && g.limits.length === 2);
  return found && ([...found.limits].sort((a, b) => a - b).map(v => plain(v)) as [string, string]);
}

/** `the object light reads 0.33 µW/cm² while the reference reads 1.32 µW/cm²`; on any scale where nothing is known of either */
function pair(light: PlateLight | undefined, aim: Aim, r: Results): string {
  const both = light && readings(light, aim.text, r);
  return both ? `the object light reads ${both.object} while the reference reads ${both.reference}` : `the object light reads ${aim.parts[1]} while the reference reads ${aim.parts[0]}, on any scale`;
}

interface Both { readonly cell: Cell; readonly value: number; readonly object: string; readonly reference: string }

function readings(light: PlateLight, ratio: string, r: Results): Both | undefined {
  const reference: Cell = light.referenceLight.missing && light.reference ? light.reference.cell : light.referenceLight;
  const object = r.ask(`${light.name}.object.light for ${ratio}`);
  const value = object && r.graph.value(object);
  return object && value !== undefined && r.graph.value(reference) !== undefined ? { cell: object, value, object: showCell(r.graph, object).text, reference: showCell(r.graph, reference).text } : undefined;
}

function between(light: PlateLight, [least, greatest]: readonly [string, string], turn: string | undefined, r: Results): string {
  const [most, few] = [readings(light, `${least}:1`, r), readings(light, `${greatest}:1`, r)];
  const range = `${least}:1 to ${greatest}:1`;
  if (!most || !few) return `${turn === undefined ? `Expected is a ratio from ${range}: ` : `${turn} `}the object light reads 1 while the reference reads ${least} to ${greatest}, on any scale`;
  return turn === undefined ? `Expected is a ratio from ${range}: object light from ${bandOf(few.cell, few.value, most.value)}` : `${turn} the object light reads ${bandOf(few.cell, few.value, most.value)} while the reference reads ${most.reference}: from ${range}, as expected`;
}

/** What the splitter then reflects, by the plan. */
function setting(splitter: Thing | undefined, aim: Aim | undefined, r: Results): string {
  if (!splitter || !aim) return '';
  const share = r.ask(`${splitter.id}.split for ratio`);
  return share && !share.missing ? `For ${aim.text} ${splitter.id} reflects ${showCell(r.graph, share).text}, by the plan` : '';
}
