/** The reference of all things and facts as one page, written from the vocabulary, so that the two cannot drift apart. */
import { oneOf } from '../literal.ts';
import { footprintWords } from './footprint.ts';
import { COMMON, type Fact, type Kind, type Light } from './kind.ts';
import { KINDS, kindNamed, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from './index.ts';
import { assumedByWords, factHead, typeWords } from './words.ts';

/** `THINGS.md` */
export function thingsPage(): string {
  return `${[
    '# Things and their facts',
    'Everything that a setup may hold, and what may be written about it. A thing is declared with `KIND NAME`, its facts stand in its block, one a line, as `phrase: value`. ' +
    'What stands under “when not written” is a guess that the program makes where a result needs the fact and the text does not say it; the result then says that it rests on a guess. Where nothing stands there, nothing is guessed: what needs it is unknown.',
    'What stands “on the table” tells what a beam runs into, and what the drawing shows. Mounts and posts are never written; their sizes are assumed as common practice has them.',
    'How values are written, what `±` and `×÷` mean, and how things are placed stands in the [language reference](../../../grammar/language.md). This page is written from the vocabulary: `UPDATE=1 npx vitest run tests/model` writes it anew.',
    KINDS.map(k => `[${k.word}](#${anchor(k.word)})`).join(' · '),
    ...KINDS.flatMap(kindPage),
    '## Every thing', 'All things take these as well.', table(COMMON),
    '## The setup', 'Facts of the setup itself stand directly in its block.', fenced(setupExample()), table(SETUP_FACTS),
    '## A shot', 'A plate that was shot: `shot 7 on 2026-02-11 { … }`.', table(SHOT_FACTS),
    '## Processing', 'Of one or more shots: `process on 2026-02-11 { … }`.', table(PROCESS_FACTS),
  ].join('\n\n')}\n`;
}

const anchor = (word: string): string => word.replaceAll(' ', '-');
const fenced = (text: string): string => `\`\`\`plate\n${text}\`\`\``;

function kindPage(kind: Kind): string[] {
  const ports = kind.ports.map(p => `\`${p}\``);
  return [
    `## ${kind.word}`, kind.doc,
    `${LIGHT[kind.light]}${ports.length > 0 ? ` A beam may start at ${ports.length > 1 ? 'its ports ' : 'its port '}${oneOf(ports)}.` : ''}`,
    fenced(exampleOf(kind)), table(kind.facts), ...(kind.footprint ? [footprintWords(kind.footprint)] : []),
  ];
}

const LIGHT: Readonly<Record<Light, string>> = {
  source: 'Light starts here.', passes: 'Light goes on through it.', turns: 'Light is turned by it, and goes on.', shares: 'Light is shared by it.', scatters: 'Light is scattered by it: what comes from it is object light.',
  recorded: 'Light is recorded by it, and ends here unless the leg says `through`.', diffracts: 'Light is diffracted by it: what leaves its port `diffracted` is object light.', ends: 'Light ends here.', none: 'No light meets it.',
};

/** How one is called in examples; a room needs no name. */
export const nameOf = ({ word, called }: Kind): string => (word === 'room' ? '' : called ?? `${word.split(' ').map(w => w.charAt(0).toUpperCase()).join('')}1`);

/** A setup with one such thing, written with its usual facts, and with a beam to it where light meets it. */
export function exampleOf(kind: Kind): string {
  const name = nameOf(kind);
  const facts = (kind.usual ?? []).map(phrase => kind.facts.find(f => f.phrase === phrase)!);
  const own = `${kind.word}${name ? ` ${name}` : ''} {\n${facts.map(f => `    ${lineOf(f)}\n`).join('')}  }`;
  if (kind.word === 'exposure') return `setup "Whelk shell" {\n${SINGLE_BEAM[0]}  plate P1\n\n${SINGLE_BEAM[1]}  variant "green" {\n    red.wavelength: 532.1 nm\n    red.coherence length: 5 m\n  }\n  exposure second\n  ${own}\n}\n`;
  if (kind.light === 'none' || !kind.expectsLight) return `setup "Whelk shell" {\n  ${own}\n}\n`;
  if (kind.light === 'source') return `setup "Whelk shell" {\n  ${own}\n  beam stop BS1\n\n  beam raw from ${name}\n    -> BS1: 400 mm\n}\n`;
  if (kind.light === 'recorded') return `setup "Whelk shell" {\n${SINGLE_BEAM[0]}  ${own}\n\n${SINGLE_BEAM[1]}}\n`;
  const beams = kind.ports.map((p, i) => `  beam ${p} from ${name} ${p}\n    -> BS${i + 1}: 300 mm\n`).join('');
  return `setup "Whelk shell" {\n  laser red\n  ${own}\n  beam stop BS1\n${kind.ports.length > 1 ? '  beam stop BS2\n' : ''}\n  beam raw from red\n    -> ${name}: 400 mm\n${beams || '    -> BS1: 300 mm\n'}}\n`;
}

/** A plate wants a reference and an object: one beam brings both. */
const SINGLE_BEAM = [`  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  object whelk {
    depth: 20 mm
  }
`, `  beam all from red
    -> P1 through: 900 mm
    -> whelk: 12 mm
    -> P1: 12 mm
`] as const;

const setupExample = (): string => `setup "Whelk shell" {\n${SETUP_FACTS.filter(f => f.usual ?? f.type.type === 'choice').map(f => `  ${lineOf(f)}\n`).join('')}}\n`;

/** A fact as it is written, with its commonest value. */
export const lineOf = (fact: Fact): string => `${factHead(fact)}: ${valueOf(fact)}`;
function valueOf({ type, usual, assumed }: Fact): string {
  if (usual) return usual[0]!;
  if (assumed) return assumed.text;
  return type.type === 'choice' ? type.words[0]! : type.type === 'date' ? '2026-02-11' : type.type === 'name' ? nameOf(kindNamed(type.of)!) : '"…"';
}

const HEAD = '| fact | takes | for example | meaning | when not written | computed with |\n|---|---|---|---|---|---|';
const table = (facts: readonly Fact[]): string => [HEAD, ...facts.map(row)].join('\n');

function row(f: Fact): string {
  const examples = f.type.type === 'choice' ? [] : f.usual ?? [valueOf(f)];
  const cells = [`\`${factHead(f)}\``, typeWords(f.type), examples.map(e => `\`${e}\``).join(', '), f.doc, guess(f), f.type.type === 'text' || f.type.type === 'date' ? 'kept' : f.used ? 'yes' : 'no'];
  return `| ${cells.map(c => c.replaceAll('|', '\\|')).join(' | ')} |`;
}

function guess(f: Fact): string {
  const by = assumedByWords(f).map(([where, a]) => `\`${where}\`: **${a.text}**, ${a.why}`);
  return [...by, ...(f.assumed ? [`${by.length > 0 ? 'else ' : ''}**${f.assumed.text}**, ${f.assumed.why}`] : [])].join('<br>');
}
