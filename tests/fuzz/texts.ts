/** Pages of every shape: sentences of the grammar, soup, the vocabulary with any value, and the examples, cut and changed. */
import fc, { type Arbitrary } from 'fast-check';
import { KINDS, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS, factsOf } from '../../server/model/things/index.ts';
import type { Fact } from '../../server/model/things/kind.ts';
import { EXAMPLES } from '../examples/library.ts';
import { WHELK } from '../checks/library.ts';
import { PIECES } from '../features/pieces.ts';
import { page, sentence, soup } from '../grammar/sentences.ts';
import { mutate } from './mutate.ts';
import { randomBy } from './random.ts';

const VALUES = ['0 mm', '1 mm', '-3 mm', '350 mm ± 2 mm', '1e39 mm', '1e-39 m', '0.5', '3', '50%', '88% ± 2 points', '120%', '100%', '0%', '30°', '90°', '45° ± 90°', '632.8 nm', '12 mW', '12 mW ×÷ 1e9', '0 W', '1.6 µW/cm²', '40 µJ/cm² ×÷ 2', '4:1', '0:0', '1e39:1', '20 s', '0 s', '?', '? mm', '? from 20 mm to 80 mm by 5 mm', '(1, 2, 3) mm', '(0, 0) mm', '40 x 60 mm', '40 x 60 x 35 mm', '1 /mm', '1200 lines/mm', '0.5 fringes/min',
  '20 °C', '-300 °C', '2026-02-11', '2026-02-30', '"as it was"', 'P1', 'M1', 'whelk', 'gap', 'gap * 2', 'sqrt(-1)', '1 / 0', 'vertical', 'through', 'P1.raw.length', 'lab.flat-50', '1 nm/K', '5 MHz', '3 GHz ± 1 GHz', '1e308', '5 lines'];
const value = fc.constantFrom(...VALUES);
const factLine = (facts: readonly Fact[]): Arbitrary<string> => fc.tuple(fc.constantFrom(...facts), fc.nat(3), value, fc.nat()).map(([f, usual, v, n]) => `${f.phrase}${f.numbered ? ` ${n % 9}` : ''}: ${usual > 0 && f.usual ? f.usual[n % f.usual.length]! : v}`);
const block = (head: string, facts: readonly Fact[]): Arbitrary<string> => (facts.length === 0 ? fc.constant(head) : fc.array(factLine(facts), { maxLength: 4 }).map(all => (all.length === 0 ? head : `${head} {\n${all.map(l => `  ${l}\n`).join('')}}`)));

const PLACES = ['', '', ' at (350, 100) mm', ' at (0, 0) mm', ' at (1100 ± 1, 100, 150) mm', ' at ? from (300, 200) mm to (600, 500) mm by 25 mm', ' on S1 -> P1 by 60 mm', ' on M1 -> M1 by 60 mm', ' beyond M1 by 500 mm turning left', ' beyond S1 by 0 mm', ' heading 30°', ' at (9, 9) mm facing beam', ' at (500, 300) mm facing whelk tilted 5°', ' = lab.flat-50', ' = lab.red-12'];
const NAMES = ['M1', 'M2', 'S1', 'P1', 'P2', 'R1', 'H1', 'whelk', 'red', 'green', 'eye', 'bulb', 'card', 'm', 'w'];
const thing = fc.tuple(fc.constantFrom(...KINDS), fc.constantFrom(...NAMES), fc.constantFrom(...PLACES)).chain(([k, name, at]) => block(`${k.word} ${name}${at}`, factsOf(k)));
const leg = fc.tuple(fc.constantFrom(...NAMES, 'P1 through', 'S1 reflected'), fc.constantFrom('', '', ': 350 mm', ': 721 mm ± 2 mm', ': ? from 1 mm to 9 m', ': 0 mm', ': gap')).map(([to, far]) => `  -> ${to}${far}`);
const beam = fc.tuple(fc.constantFrom('beam raw from red', 'beam reference from S1 through', 'beam object from S1 reflected', 'beam second from whelk', 'beam new from H1 diffracted', 'beam raw from green'), fc.array(leg, { maxLength: 5 })).map(([head, legs]) => [head, ...legs].join('\n'));
const NAMED = ['mismatch', 'beam ratio', 'P1.mismatch', 'brightness', 'exposure', 'drift', 'image offset', 'raw.1.length', 'whelk.far.brightness', 'light at the plate', 'object angle', 'fringes', 'P1.replay.blur', 'gap'];
const goal = fc.tuple(fc.constantFrom('expect', 'aim'), fc.constantFrom(...NAMED), fc.constantFrom(' <', ' >=', ':', ' =', ' from 3:1 to'), value).map(all => all.join(' ').replace('  ', ' '));
const reading = fc.tuple(fc.constantFrom('object - raw', 'S1 -> M1', 'reference at P1', 'object at P1 upper left', 'dark', 'S1 wheel', 'drift at P1', 'raw at S1', 'real image at card', 'reference at P1 facing beam', 'object at P1 through polarizer'), value, fc.constantFrom('', ' by m', ' by string', ' by w on 2026-02-11', ' on 2026-02-18T21:40')).map(([what, v, by]) => `measured ${what}: ${v}${by}`);
const other = fc.oneof(
  fc.constantFrom('let gap = 300 mm', 'let gap = gap', 'let twice = gap * 2', 'use "saltmarsh-lab.plate"', 'moved M1, M2 on 2026-02-14: "the cat"', 'accept arms-mismatched "as ever"', 'accept ghost-fringes "as ever" for P1', '// wet sand', '/// a note', ''),
  fc.array(fc.constantFrom('P1 at (700, 650) mm', 'S1.reflects: 90%', 'M1 = lab.flat-150', 'S1 -> M1: 760 mm', 'object.2: 300 mm', 'let gap = 320 mm', 'mirror M4 at (300, 90) mm', 'beam height: 150 mm'), { maxLength: 3 }).map(all => `variant "closer" {\n${all.map(l => `  ${l}\n`).join('')}}`),
  block('shot 7 on 2026-02-11', SHOT_FACTS), block('process on 2026-02-11', PROCESS_FACTS), factLine(SETUP_FACTS), sentence, soup,
);
const statement = fc.oneof({ weight: 6, arbitrary: thing }, { weight: 4, arbitrary: beam }, { weight: 2, arbitrary: goal }, { weight: 2, arbitrary: reading }, { weight: 2, arbitrary: other });
/** The vocabulary with any value, in any order. */
const vocabulary = fc.tuple(fc.constantFrom('', '', 'use "saltmarsh-lab.plate"\n'), fc.array(statement, { minLength: 1, maxLength: 14 })).map(([use, all]) => `${use}setup "Whelk shell" {\n${all.join('\n')}\n}\n`);

const pieces = fc.tuple(fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }), fc.constantFrom('', '\n', ' ')).map(([all, by]) => all.join(by));
/** Whole examples take long; two of three are the short one. */
const example = fc.oneof({ weight: 2, arbitrary: fc.constant(WHELK) }, { weight: 1, arbitrary: fc.constantFrom(...EXAMPLES.map(e => e.text)) });
const cut = fc.tuple(example, fc.nat()).map(([text, n]) => text.slice(0, n % (text.length + 1)));
const changed = fc.tuple(example, example, fc.nat()).map(([text, with_, seed]) => mutate(text, with_, DICTIONARY, randomBy(seed)));

/** Words of the language, pieces of pages, and values. */
export const DICTIONARY: readonly string[] = [...new Set([...PIECES, ...VALUES, ...NAMES, ...NAMED, ...KINDS.map(k => k.word), ...[...KINDS.flatMap(factsOf), ...SETUP_FACTS, ...SHOT_FACTS].map(f => `${f.phrase}:`), 'expect', 'aim', 'measured', 'moved', 'shot 8', 'process', 'std', 'by', 'at', 'on', 'beyond', 'facing', 'heading', 'tilted', 'turning left'])];

/** Any text at all. */
export const anyText: Arbitrary<string> = fc.oneof({ weight: 3, arbitrary: page }, { weight: 2, arbitrary: fc.array(soup, { maxLength: 6 }).map(l => l.join('\n')) }, pieces, fc.string({ unit: 'binary', maxLength: 60 }), cut, changed);
/** Texts of which much is understood. */
export const likelyPage: Arbitrary<string> = fc.oneof({ weight: 6, arbitrary: vocabulary }, { weight: 2, arbitrary: changed }, cut, pieces, page);
/** What a page is told from in an input of two. */
export const BETWEEN = '\n=====\n';
