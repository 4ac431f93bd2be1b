/** What is wanted next where a form is fixed: in the brackets of a function, in a placement, in a reading. */
import { tokensIn } from '../../grammar/parse-line.ts';
import type { Span } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import { STATEMENTS } from '../model/bind/bind.ts';
import { FUNCTIONS } from '../results/expression.ts';
import { openAt } from './completion/cursor.ts';

export interface Signature {
  /** the form as it is written: `on A -> B by distance` */
  readonly label: string;
  readonly words: string;
  /** where in the label its parts stand, and what they mean */
  readonly parts: readonly (Span & { readonly words: string })[];
  /** which part the cursor is in, from 0 */
  readonly active: number;
}

/** A form, and its parts in their order: as they stand in the label, and what they mean. */
interface Form {
  readonly label: string;
  readonly words: string;
  readonly parts: readonly (readonly [label: string, words: string])[];
}

const VALUE = ['value', 'with its unit'] as const;
const ANGLE = ['angle', '`30°`, or a number of radians'] as const;
const FUNCTION: Readonly<Record<string, Form>> = {
  sqrt: { label: 'sqrt(value)', words: 'Square root: of an area a length.', parts: [VALUE] },
  abs: { label: 'abs(value)', words: 'The same above zero.', parts: [VALUE] },
  min: { label: 'min(one, other)', words: 'The smaller of two values of one sort.', parts: [['one', VALUE[1]], ['other', 'of the same sort']] },
  max: { label: 'max(one, other)', words: 'The larger of two values of one sort.', parts: [['one', VALUE[1]], ['other', 'of the same sort']] },
  sin: { label: 'sin(angle)', words: 'Sine of an angle.', parts: [ANGLE] },
  cos: { label: 'cos(angle)', words: 'Cosine of an angle.', parts: [ANGLE] },
  tan: { label: 'tan(angle)', words: 'Tangent of an angle.', parts: [ANGLE] },
  asin: { label: 'asin(number)', words: 'The angle that has this sine.', parts: [['number', 'from −1 to 1']] },
  acos: { label: 'acos(number)', words: 'The angle that has this cosine.', parts: [['number', 'from −1 to 1']] },
  atan: { label: 'atan(number)', words: 'The angle that has this tangent.', parts: [['number', 'any']] },
};
const AT: Form = {
  label: 'at (x, y, height) mm', words: 'Where it stands on the table. Without a height it stands at `beam height`.',
  parts: [['x', 'to the right in the plan'], ['y', 'away in the plan'], ['height', 'above the table; may be left out'], ['mm', 'unit of all of them']],
};
const ON: Form = {
  label: 'on A -> B by distance', words: 'On the straight way from A to B.',
  parts: [['A', 'the thing that the light comes from'], ['B', 'the thing that it goes to'], ['distance', 'how far behind A']],
};
const BEYOND: Form = {
  label: 'beyond A by distance turning way', words: 'On from A as light comes there; or turned there, as one looks along the light.',
  parts: [['A', 'the thing that the light goes on from'], ['distance', 'how far from A'], ['way', '`left`, `right`, `up`, `down`, `back`, or an angle; without it straight on']],
};
const MEASURED: Form = {
  label: 'measured what at place: value by instrument on date', words: 'A reading. It corrects the plan.',
  parts: [
    ['what', 'a leg `S1 -> M1`, an arm by its beam, `object - reference`, `dark`, `drift`'], ['place', 'of light and drift: the thing, and which corner of a plate'],
    ['value', 'with its unit and its ±'], ['instrument', 'a string or meter of the setup or of an inventory; or `string`, `tape`, `ruler`'], ['date', '`2026-02-11`, with a time `2026-02-11T21:40`'],
  ],
};
const MOVED: Form = { label: 'moved things on date: reason', words: 'What stands elsewhere since that day. Readings by way of it from before are stale.', parts: [['things', 'parted by commas'], ['date', '`2026-02-14`'], ['reason', 'in quotes']] };

/** The form that a cursor is in; undefined where none is fixed, in a text and in a comment. */
export function signatureAt({ tree }: Snapshot, line: number, character: number): Signature | undefined {
  const before = tree.lines[line]?.text.slice(0, Math.max(0, character));
  if (before === undefined || openAt(before) !== undefined) return undefined;
  const tokens = tokensIn(before).map((t): Said => ({ type: t.type, text: before.slice(t.start, t.end), end: t.end }));
  const [head] = tokens;
  if (!head || head.type === 'comment' || head.type === 'doc' || before.length < head.end + 1) return undefined;
  const call = openCall(tokens);
  if (call) return shown(call.form, call.n);
  if (head.text === 'measured') return shown(MEASURED, lastOf(tokens, { at: 1, ':': 2, by: 3, on: 4 }));
  if (head.text === 'moved') return shown(MOVED, lastOf(tokens, { on: 1, ':': 2 }));
  return STATEMENTS.includes(head.text) || head.type !== 'word' || tokens.some(t => t.type === 'colon') ? undefined : placement(tokens);
}

interface Said { readonly type: string; readonly text: string; readonly end: number }

/** The innermost bracket that is still open, where it is one of a function, and behind how many commas of it one is. */
function openCall(tokens: readonly Said[]): { form: Form; n: number } | undefined {
  let [closed, n] = [0, 0];
  for (let i = tokens.length - 1; i > 0; i--) {
    const { type } = tokens[i]!;
    if (type === 'rparen') closed++;
    else if (type === 'comma' && closed === 0) n++;
    else if (type === 'lparen' && closed-- === 0) {
      const { text } = tokens[i - 1]!;
      if (FUNCTIONS.has(text)) return { form: FUNCTION[text]!, n };
      // `min((3 + 4) mm` stands in a bracket of its own first.
      [closed, n] = [0, 0];
    }
  }
  return undefined;
}

/** The clause that stands last, with the one that it completes. */
function placement(tokens: readonly Said[]): Signature | undefined {
  const at = tokens.findLastIndex(t => t.type === 'clause' && /^(?:at|on|beyond)$/.test(t.text));
  // What is behind a block, or behind a direction, is none of them.
  const behind = tokens.slice(at + 1);
  if (at < 0 || behind.some(t => t.type === 'open' || /^(?:heading|facing|tilted)$/.test(t.text))) return undefined;
  switch (tokens[at]!.text) {
    case 'at': {
      if (behind[0] && behind[0].type !== 'lparen') return undefined;
      return shown(AT, behind.some(t => t.type === 'rparen') ? 3 : behind.filter(t => t.type === 'comma').length);
    }
    case 'on': return shown(ON, behind.some(t => t.text === 'by') ? 2 : behind.some(t => t.type === 'arrow') ? 1 : 0);
    default: return shown(BEYOND, lastOf(behind, { by: 1, turning: 2 }));
  }
}

/** Which part the last of some words leads to; the first where there is none. */
function lastOf(tokens: readonly Said[], parts: Readonly<Record<string, number>>): number {
  const last = tokens.findLast(t => (t.type === 'clause' || t.type === 'colon') && Object.hasOwn(parts, t.text));
  return last ? parts[last.text]! : 0;
}

/** Behind its last part nothing of it is wanted. */
function shown({ label, words, parts }: Form, active: number): Signature | undefined {
  if (active >= parts.length) return undefined;
  let from = 0;
  // A label begins with the word of its form, which is no part of it.
  const start = /^\w+[ (]*/.exec(label)![0].length;
  const places = parts.map(([part, meaning]) => {
    const at = label.indexOf(part, Math.max(from, start));
    from = at + part.length;
    return { start: at, end: from, words: meaning };
  });
  return { label, words, parts: places, active };
}
