/** The words that open a line of a file, a setup, an inventory or a variant, each with what mostly follows it. */
import { FILE_STATEMENTS, STATEMENTS } from '../../model/bind/bind.ts';
import { NOT_HERE } from '../../model/bind/variants.ts';
import { kindNamed, SETUP_FACTS } from '../../model/things/index.ts';
import type { Cursor } from './cursor.ts';
import { startNames, wholeBeams } from './beams.ts';
import { factOffers } from './facts.ts';
import { GO_ON, shown, template, type Offer, type Piece } from './item.ts';
import { takenNames } from './names.ts';
import { kindOffers } from './things.ts';
import { valuePieces } from './values.ts';

interface Opening { readonly detail: string; readonly words: string; readonly pieces?: (c: Cursor) => readonly Piece[] }
const BLOCK: readonly Piece[] = [' {\n  ', GO_ON, '\n}'];

/** What is said of a word that opens a line, and what is written behind it. A word that is not among them is offered as it is. */
const OPENINGS: Readonly<Record<string, Opening>> = {
  setup: { detail: 'one recording', words: '`setup "Whelk shell" { … }` is one recording. A file may hold several.', pieces: () => ['setup "', { stop: 'name' }, '"', ...BLOCK] },
  inventory: { detail: 'what the workshop owns', words: '`inventory lab { … }` holds things that the workshop owns; setups refer to them as `lab.red-12`.', pieces: c => ['inventory ', { stop: free('lab', new Set(c.snapshot.model.visible.keys())) }, ...BLOCK] },
  use: { detail: 'inventories of another file', words: '`use "saltmarsh-lab.plate"` makes the inventories of another file known.', pieces: () => ['use "', { stop: '' }, '"'] },
  beam: { detail: 'a way of the light', words: '`beam reference from S1 through`, and below it a line for each leg: `-> M1: 750 mm ± 2 mm`.', pieces: c => ['beam ', { stop: 'name' }, ' from ', { pick: startNames(c) }] },
  measured: { detail: 'a reading, which beats the plan', words: '`measured S1 -> M1: 752 mm ± 2 mm by string on 2026-02-11`' },
  moved: { detail: 'what stands elsewhere now', words: '`moved M1 on 2026-02-14: "the cat"`: what was read of it before that day no longer holds.' },
  expect: { detail: 'what is checked', words: '`expect mismatch < 10 mm`: met, not met, or undecided when the limit lies inside the uncertainty.' },
  aim: { detail: 'what to solve for', words: '`aim beam ratio: 4:1`' },
  accept: { detail: 'silences one finding and keeps the reason', words: '`accept ghost-fringes "every plate of mine has them"`' },
  let: { detail: 'a name for a value', words: '`let gap = 300 mm`', pieces: c => ['let ', { stop: c.block.in === 'variant' ? c.r?.setup.lets.keys().next().value ?? 'gap' : free('gap', takenNames(c)) }, ' = ', { stop: '300 mm' }] },
  variant: { detail: 'the same with some changes', words: 'A variant holds changes: `P1 at (700, 650) mm`, `S1.reflects: 90%`.', pieces: () => ['variant "', { stop: 'name' }, '"', ...BLOCK] },
  shot: { detail: 'a plate that was shot', words: '`shot 7 on 2026-02-11 { … }`, with its outcome, exposure, settle time and notes.', pieces: c => ['shot ', { stop: nextShot(c) }, ' on ', { stop: '' }, ' {\n  outcome: "', { stop: '' }, '"\n}'] },
  process: { detail: 'how plates were developed', words: '`process on 2026-02-11 { … }` keeps developer, times and temperatures.', pieces: () => ['process on ', { stop: '' }, ...BLOCK] },
};

function statement(w: string, c: Cursor): Offer {
  const o = OPENINGS[w];
  const head = { label: w, kind: 'statement', text: c.rest === '' ? `${w} ` : w, detail: o?.detail ?? '', ...(o ? { words: o.words } : {}) } as const;
  return o?.pieces && c.rest === '' ? { ...head, snippet: template(o.pieces(c)).snippet } : head;
}

export const fileOffers = (c: Cursor): Offer[] => [...FILE_STATEMENTS.map(w => statement(w, c)), ...(c.rest === '' ? [wholeSetup()] : [])];

/** Kinds and statements of a setup, the facts that it does not state yet, and beams from where none starts. What comes next in the order in which one works comes first. */
export function setupOffers(c: Cursor): Offer[] {
  const beams = c.rest === '' ? wholeBeams(c) : [];
  const facts = factOffers(c, SETUP_FACTS, 'setup', c.block.node);
  // What is made comes before the kind of thing that is called the same.
  const made = facts.filter(f => f.label === SETUP_FACTS[0]!.phrase);
  const kinds = [...made, ...kindOffers(c), ...facts.filter(f => !made.includes(f))];
  const statements = STATEMENTS.map(w => statement(w, c));
  if (c.things.length === 0) return [...kinds, ...statements];
  return (c.r?.arms.arms.length ?? 0) > 1 && beams.length === 0 ? [...statements, ...kinds] : [...statements.slice(0, 1), ...beams, ...kinds, ...statements.slice(1)];
}

/** Statements that a variant takes as well. */
export const variantStatements = (c: Cursor): Offer[] => STATEMENTS.filter(w => !NOT_HERE.includes(w) && !(w === 'let' && c.r?.setup.lets.size === 0)).map(w => statement(w, c));

const free = (name: string, taken: ReadonlySet<string>): string => [name, ...[...Array(99).keys()].map(n => `${name}-${n + 2}`)].find(n => !taken.has(n)) ?? name;

/** One more than the last that was shot. */
const nextShot = (c: Cursor): string => String(1 + Math.max(0, ...(c.r?.setup.shots ?? []).filter(s => s.at.line !== c.line).map(s => Number(/^\s*shot\s+(\d+)/.exec(s.node.line.text)?.[1] ?? 0))));

/** A small setup that is complete: both paths are 1.2 m long. */
function wholeSetup(): Offer {
  const thing = (kind: string, name: string, ...facts: string[]): Piece[] => {
    const known = kindNamed(kind)!.facts;
    const lines = facts.flatMap((p): Piece[] => { const f = known.find(k => k.phrase === p); return f ? [`    ${p}: `, ...valuePieces(f), '\n'] : []; });
    return [`  ${kind} ${name}`, ...(lines.length > 0 ? [' {\n', ...lines, '  }\n'] : ['\n'])];
  };
  const leg = (to: string, length: string): Piece[] => [`    -> ${to}: `, { stop: length }, '\n'];
  const { text, snippet } = template([
    'setup "', { stop: 'name' }, '" {\n  hologram: ', { pick: ['transmission', 'reflection'] }, '\n', ...thing('laser', 'red', 'wavelength', 'tube length'), ...thing('splitter', 'S1'), ...thing('mirror', 'M1'), ...thing('mirror', 'M2'),
    ...thing('object', 'shell', 'depth'), ...thing('plate', 'P1'), '\n  beam raw from red\n', ...leg('S1', '300 mm'), '  beam reference from S1 through\n', ...leg('M1', '700 mm'), ...leg('P1', '500 mm'),
    '  beam object from S1 reflected\n', ...leg('M2', '400 mm'), ...leg('shell', '500 mm'), ...leg('P1', '300 mm'), '}',
  ]);
  return { label: 'setup { … }', kind: 'block', detail: 'a small setup: laser, splitter, two mirrors, object, plate', text, snippet, words: shown(text) };
}
