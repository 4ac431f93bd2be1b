/** What somebody does with an editor and a disk. Each operation is made of one number, so that it means something in any state: a list of them can be shortened. */
import { CancellationTokenSource, type CodeAction, type TextEdit, type WorkspaceEdit } from 'vscode-languageserver/node';
import { Dice } from './dice.ts';
import { FOLDER, LABS, LINES, NAMES, NOTEBOOK, PIECES, RING, SHED, uri } from './pages.ts';
import { placeIn, questionsOf } from './questions.ts';
import { TWO_FOLDERS, type World } from './world.ts';

interface At { readonly world: World; readonly dice: Dice; readonly name: string; readonly text: string }
type Operation = (at: At) => Promise<string>;

const NOTHING = Promise.resolve('nothing');
const start = { line: 0, character: 0 };
const endOf = (text: string): { line: number; character: number } => ({ line: text.split(/\r\n|\n|\r/).length, character: 0 });
const lineOf = (text: string, dice: Dice): number => dice.below(text.split(/\r\n|\n|\r/).length);

const types: Operation = async ({ world, dice, name, text }) => {
  const position = placeIn(text, dice);
  const piece = dice.of(PIECES);
  await world.edit(name, [{ range: { start: position, end: position }, newText: piece }]);
  return `${name}: types ${JSON.stringify(piece)} at ${position.line}:${position.character}`;
};
const addsLine: Operation = async ({ world, dice, name, text }) => {
  const at = { line: lineOf(text, dice), character: 0 };
  await world.edit(name, [{ range: { start: at, end: at }, newText: `${dice.of(LINES)}\n` }]);
  return `${name}: a line at ${at.line}`;
};
const dropsLine: Operation = async ({ world, dice, name, text }) => {
  const line = lineOf(text, dice);
  await world.edit(name, [{ range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } }, newText: '' }]);
  return `${name}: line ${line} goes`;
};
const changesNumber: Operation = async ({ world, dice, name, text }) => {
  const numbers = [...text.matchAll(/\b\d+\b/g)];
  if (numbers.length === 0) return NOTHING;
  const m = dice.of(numbers);
  const to = String(dice.below(2000));
  await world.edit(name, [{ range: world.open.get(name)!.range(m[0], m.index), newText: to }]);
  return `${name}: ${m[0]} becomes ${to}`;
};
/** Back to what the notebook has: pages that are only torn say nothing any more. */
const asInNotebook: Operation = async ({ world, name, text }) => {
  await world.edit(name, [{ range: { start, end: endOf(text) }, newText: NOTEBOOK[name] ?? '' }]);
  return `${name}: as in the notebook`;
};
/** An editor that tells the whole text. */
const whole: Operation = async ({ world, dice, name, text }) => {
  const now = dice.below(2) === 0 ? NOTEBOOK[name] ?? '' : text.split('\n').filter(() => dice.below(8) > 0).join('\n');
  world.edits++;
  await world.open.get(name)!.rewrite(now);
  return `${name}: told whole`;
};
const takesBack: Operation = async ({ world, name, text }) => {
  const before = world.past.get(name)?.pop();
  if (before === undefined) return NOTHING;
  let [head, tail] = [0, 0];
  const most = Math.min(before.length, text.length);
  while (head < most && before[head] === text[head]) head++;
  while (tail < most - head && before[before.length - 1 - tail] === text[text.length - 1 - tail]) tail++;
  world.edits++;
  const page = world.open.get(name)!;
  await page.edit([{ range: page.range(text.slice(head, text.length - tail), head), newText: before.slice(head, before.length - tail) }]);
  return `${name}: takes back`;
};
/** The name of a file, as it is typed: none of these was there before. */
const usesAnother: Operation = async ({ world, dice, name, text }) => {
  const used = /use "([^"\n]*)"/.exec(text);
  const path = `shelf-${++world.names}.plate`;
  if (!used || dice.below(2) === 0) await world.edit(name, [{ range: { start, end: start }, newText: `use "${path}"\n` }]);
  else await world.edit(name, [{ range: world.open.get(name)!.range(used[1]!, used.index + 5), newText: path }]);
  return `${name}: uses ${path}`;
};
const seesNewPage: Operation = async ({ world, dice }) => {
  const name = `untitled:Untitled-${++world.names}`;
  await world.show(name, NOTEBOOK[dice.of(NAMES)]);
  world.edits++;
  const page = world.open.get(name)!;
  await page.edit([{ range: { start, end: start }, newText: '// tried\n' }]);
  await page.codes();
  await world.hide(name);
  return `${name}: comes and goes`;
};

const changesLab: Operation = async ({ world, dice }) => {
  const lab = LABS[0]!;
  const next = dice.below(6) === 0 ? undefined : (world.disk.get(uri(lab)) ?? NOTEBOOK[lab]!).replace(/\d+(?= mm)/, String(10 + dice.below(900)));
  await world.write(lab, next);
  return next === undefined ? `${lab} is deleted` : `${lab} changes on disk`;
};
const changesAnnex: Operation = async ({ world, dice }) => {
  const next = [undefined, RING, NOTEBOOK['annex.plate'], NOTEBOOK['annex.plate']][dice.below(4)];
  await world.write(LABS[1]!, next);
  return `the annex is ${next === undefined ? 'deleted' : next === RING ? 'a ring' : 'as ever'}`;
};
const movesLab: Operation = async ({ world, dice }) => {
  const [from, to] = dice.below(2) === 0 ? [LABS[0]!, 'store.plate'] : ['store.plate', LABS[0]!];
  const text = world.disk.get(uri(from));
  if (text === undefined) return NOTHING;
  await world.written([[from, undefined], [to, text]]);
  return `${from} is renamed ${to} on disk`;
};
/** The page stays open, over a file that is gone. */
const deletesPage: Operation = async ({ world, dice, name }) => {
  if (!NAMES.includes(name)) return NOTHING;
  const gone = dice.below(2) === 0;
  await world.write(name, gone ? undefined : NOTEBOOK[name]);
  return `${name} ${gone ? 'is deleted' : 'comes back'} on disk`;
};
const changesShed: Operation = async ({ world, dice }) => {
  const next = dice.below(3) === 0 ? undefined : NOTEBOOK[`${SHED}tools.plate`]!.replace('30%', `${dice.below(90)}%`);
  await world.write(`${SHED}tools.plate`, next);
  return `the tools in the shed are ${next === undefined ? 'gone' : 'others'}`;
};

const opensLab: Operation = async ({ world, dice }) => {
  const lab = dice.of(LABS);
  if (world.open.has(lab)) {
    await world.hide(lab);
    return `${lab} is closed`;
  }
  if (!world.disk.has(uri(lab))) return NOTHING;
  await world.show(lab);
  return `${lab} is opened`;
};
const savesAndOpens: Operation = async ({ world, name, text }) => {
  if (!NAMES.includes(name)) return NOTHING;
  await world.write(name, text);
  await world.tell('textDocument/didSave', { textDocument: { uri: uri(name) } });
  await world.hide(name);
  await world.show(name);
  return `${name}: saved, closed and opened`;
};
const opensFolder: Operation = async ({ world }) => {
  await world.folder(world.folders.length > 1 ? [FOLDER.slice(0, -1)] : TWO_FOLDERS);
  return `open folders: ${world.folders.join(', ')}`;
};
const chooses: Operation = async ({ world, dice }) => {
  const said = (names: readonly string[]): Record<string, boolean> => Object.fromEntries(names.map(n => [n, dice.below(2) === 0]));
  await world.choose({ hints: said(['legLengths', 'armTotals', 'mismatch', 'found']), lenses: said(['setups', 'arms']) });
  return `chooses ${JSON.stringify(world.chosen)}`;
};
const tellsBase: Operation = async ({ world, name }) => {
  if (!NAMES.includes(name)) return NOTHING;
  await world.base(name);
  return `${name}: the last commit is told`;
};

const formats: Operation = async ({ world, name }) => {
  const edits = await world.open.get(name)!.ask<TextEdit[] | null>('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } });
  if (edits && edits.length > 0) await world.edit(name, edits);
  return `${name}: formatted`;
};
const mends: Operation = async ({ world, dice, name, text }) => {
  const { line } = placeIn(text, dice);
  const actions = await world.open.get(name)!.actions({ start: { line, character: 0 }, end: { line: line + 3, character: 0 } });
  const first = actions.find((a: CodeAction) => a.edit);
  if (first?.edit) await world.apply(first.edit);
  return `${name}: ${first?.title ?? 'no fix'}`;
};
const renames: Operation = async ({ world, dice, name, text }) => {
  const words = [...text.matchAll(/\b(M1|S1|P1|red|limpets|spear|lab|thread|old|flat-50|reference|object)\b/g)];
  if (words.length === 0) return NOTHING;
  const m = dice.of(words);
  const page = world.open.get(name)!;
  const newName = `${m[0]}-${dice.below(9)}`;
  const edit = await page.ask<WorkspaceEdit | null>('textDocument/rename', { position: page.range(m[0], m.index).start, newName }).catch(() => null);
  if (edit) await world.apply(edit);
  return `${name}: ${m[0]} is renamed ${newName}${edit ? '' : ' (refused)'}`;
};

/** Asked in the middle of things; a third of it is not wanted any more before it is answered. */
const asks: Operation = async ({ world, dice, name, text }) => {
  const all = questionsOf(text, name, dice).slice(0, -1);
  const [method, params] = dice.of(all);
  const cancel = new CancellationTokenSource();
  const asked = world.editor.connection.sendRequest(method, { textDocument: { uri: uri(name) }, ...params }, cancel.token).catch(() => undefined);
  const given = dice.below(3) === 0;
  if (given) {
    if (dice.below(2) === 0) await new Promise(go => { setImmediate(go); });
    cancel.cancel();
  } else if (dice.below(4) === 0) await asked;
  return `${name}: asks ${method}${given ? ', and gives it up' : ''}`;
};

/** How often each is done. */
const OFTEN: readonly (readonly [number, Operation])[] = [
  [40, types], [14, addsLine], [14, dropsLine], [20, changesNumber], [8, asInNotebook], [5, whole], [10, takesBack], [3, usesAnother], [1, seesNewPage],
  [3, changesLab], [3, changesAnnex], [2, movesLab], [1, deletesPage], [1, changesShed], [3, opensLab], [3, savesAndOpens], [1, opensFolder], [2, chooses], [1, tellsBase],
  [2, formats], [1, mends], [3, renames], [12, asks],
];
const ALL = OFTEN.flatMap(([n, o]) => Array.from({ length: n }, () => o));

/** Does what a number says, and says what that was. */
export async function operate(world: World, number: number): Promise<string> {
  const dice = new Dice(number);
  const name = dice.of([...world.open.keys()]);
  return dice.of(ALL)({ world, dice, name, text: world.open.get(name)!.text });
}
