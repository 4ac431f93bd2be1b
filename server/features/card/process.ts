/** The baths, as the page has them for the plates that were processed last, with cautions. Nothing is invented: what is not written is a line to fill in. */
import type { Node } from '../../../grammar/tree.ts';
import type { Results } from '../../results/plan.ts';
import { blank, words, type Block, type Section, type Step } from '../blocks/blocks.ts';
import { cautionsFor } from './chemicals.ts';

export function processing(r: Results): Section | undefined {
  if (r.plates.length === 0 && ![...r.setup.things.values()].some(t => t.kind.word === 'plate')) return undefined;
  const node = latest(r);
  const said = node ? new Map(node.children.flatMap(c => { const v = valueOf(c); return v === undefined ? [] : [v]; })) : new Map<string, string>();
  const cautions: Block[] = [{ kind: 'caution', text: 'Gloves and glasses on, the room aired, a labelled tray for each bath; not tired, not in a hurry. The data sheet of each bath goes before what stands here. Local rules and the person responsible for chemicals decide, also on where used baths go.' },
    ...cautionsFor([node?.doc ?? '', ...said.values()].join(' ')).map((text): Block => ({ kind: 'caution', text }))];
  const steps = stepsOf(said);
  const head = node && (steps.length > 0 || node.doc !== undefined) ? [words(`${titleOf(node, said)}.${node.doc === undefined ? '' : ` ${node.doc.replace(/\n+/g, ' ')}`}`)] : [words('The page has no process. Write down each bath:')];
  return { name: 'process', title: 'Process', blocks: [...cautions, ...head, ...(steps.length > 0 ? [{ kind: 'steps', steps } as const] : baths())] };
}

const heads = (r: Results, word: string): Node[] => r.setup.node.children.filter(n => n.line.head?.text === word);

/** The newest of those with a day, else the last one on the page. */
function latest(r: Results): Node | undefined {
  return heads(r, 'process').reduce<Node | undefined>((a, b) => (a && dayOf(a) > dayOf(b) ? a : b), undefined);
}
const dayOf = ({ line }: Node): string => /\bon (\d{4}-\d{2}-\d{2}\S*)/.exec(line.text.slice(0, line.comment?.start))?.[1] ?? '';

function titleOf(node: Node, said: ReadonlyMap<string, string>): string {
  const shots = said.get('shots');
  const day = dayOf(node);
  return `As ${day === '' ? 'written on the page' : `on ${day}`}${shots === undefined ? '' : `, for ${/[,–-]|and/.test(shots) ? 'shots' : 'shot'} ${shots}`}`;
}

/** `develop` and what is written behind it; undefined of a line that is none of a fact. */
function valueOf({ line }: Node): readonly [string, string] | undefined {
  if (line.issue !== undefined || !line.value) return undefined;
  const text = line.text.slice(line.value.start, line.comment?.start).trim();
  const key = line.text.slice(0, line.value.start).replace(/:\s*$/, '').trim();
  return key === '' || text === '' ? undefined : [key, text.replace(/^"(.*)"$/, '$1')];
}

/** In the order in which it is done. */
function stepsOf(said: ReadonlyMap<string, string>): Step[] {
  const v = (phrase: string): string | undefined => said.get(phrase);
  const at = v('temperature') === undefined ? '' : `, at ${v('temperature')!}`;
  const timed = (text: string, time: string | undefined): Step => ({ text, write: time?.replace(/^[^a-zµ°]*/i, '').split(' ')[0] === 's' ? 's' : 'min' });
  const steps: Step[] = [];
  if (v('pre-swell') !== undefined) steps.push({ text: `Before the exposure: ${v('pre-swell')!}` });
  if (v('develop') !== undefined || v('developer') !== undefined) steps.push(timed(`Develop${part(' ', v('develop'))}${part(' in ', v('developer'))}${at}`, v('develop')));
  if (v('rinse') !== undefined) steps.push(timed(`Rinse ${v('rinse')!}`, v('rinse')));
  if (v('bleaching') !== undefined || v('bleach') !== undefined) steps.push(timed(`Bleach${part(' ', v('bleaching'))}${part(' in ', v('bleach'))}`, v('bleaching')));
  if (v('wash') !== undefined) steps.push({ text: `Wash: ${v('wash')!}` });
  if (v('drying') !== undefined) steps.push({ text: `Dry: ${v('drying')!}` });
  if (v('density') !== undefined) steps.push({ text: `Density that was reached: ${v('density')!}. This time:`, write: '' });
  if (v('note') !== undefined) steps.push({ text: `Noted then: ${v('note')!}` });
  return steps;
}
const part = (before: string, text: string | undefined): string => (text === undefined ? '' : `${before}${text}`);

function baths(): Block[] {
  return Array.from({ length: 4 }, (_, i) => ({ kind: 'blanks', blanks: [blank(`${i + 1}.`, '', 3), blank('for', 'min', 2), blank('at', '°C', 2)] }) as const);
}
