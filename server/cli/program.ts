/** The commands and their options, as they are typed. */
import { Argument, Command, InvalidArgumentError, Option } from 'commander';
import { version } from '../../package.json';
import { PAPERS, type Paper } from '../features/card/paper.ts';
import { check } from './check.ts';
import { diff, type DiffOptions } from './diff.ts';
import type { CheckFormat, Done, Format } from './done.ts';
import { explain } from './explain.ts';
import { Misuse } from './files.ts';
import { log } from './log.ts';
import { format } from './format.ts';
import type { HangOptions } from './hang.ts';
import type { HistoryOptions } from './learn/history.ts';
import type { LearnOptions } from './learn/learn.ts';
import { newPage } from './new.ts';
import { report } from './report.ts';
import type { LayoutOptions } from './layout.ts';
import { TABLE_FORMATS } from './tabled.ts';
import type { SolveOptions } from './solve.ts';
import type { SweepOptions } from './sweep/sweep.ts';
import { why } from './why.ts';

/** Where help, version and words about wrong usage go. */
export interface Say {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** The program; what a command has to say goes to `finish`. Wrong usage throws a CommanderError or a Misuse. */
export function program(finish: (done: Done) => void, say: Say): Command {
  const top = new Command('platewright')
    .description('Computes what a hologram recording setup will do, from its .plate file.')
    .version(version)
    .exitOverride()
    .configureOutput({ writeOut: say.out, writeErr: say.err, outputError: (text, write) => write(text.replace(/^error: /, 'platewright: ')) })
    .addHelpText('after', '\nExit codes: 0 fine, 1 errors or expectations that are not met, 2 wrong usage, 3 could not read or compute.');
  const command = (name: string, words: string): Command => top.command(name).description(words);

  command('new', 'begin a page with one of the usual layouts, or list them')
    .addArgument(new Argument('[LAYOUT]', 'which one; without it all are listed'))
    .option('-o, --output <FILE>', 'where to write it: a .plate file that is not there yet; on standard output by default')
    .action((layout: string | undefined, o: { output?: string }) => finish(newPage(layout, o)));

  command('check', 'list what is wrong or worth knowing in files')
    .addArgument(new Argument('<FILE...>', '.plate files; a folder stands for every .plate file in it'))
    .addOption(checkFormats()).addOption(folder()).addOption(inventory())
    .option('--strict', 'end with exit code 1 for warnings too', false)
    .action((files: string[], o: { format: CheckFormat; strict: boolean; folder?: string; inventory: string[] }) => finish(check(files, o)));

  command('report', 'show a setup on one page: paths, brightness, expectations, findings')
    .argument('<FILE>', 'a .plate file')
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action((file: string, o: { format: Format; setup?: string; variant?: string; folder?: string; inventory: string[] }) => finish(report(file, o)));

  command('explain', 'show the numbers behind a result (explain FILE RESULT), or what a finding means (explain CODE)')
    .addArgument(new Argument('<WORDS...>', 'a .plate file and the name of a result, or the code of a finding'))
    .usage('[options] FILE RESULT | CODE')
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action((words: string[], o: { format: Format; setup?: string; variant?: string; folder?: string; inventory: string[] }) => finish(explain(words, o)));

  command('why', 'tell what may have darkened or spoilt a plate, and how to find out (why FILE, or why FILE dull at the back)')
    .argument('<FILE>', 'a .plate file')
    .addArgument(new Argument('[OUTCOME...]', 'what was seen: dull at the back, wood grain, nothing at all, …'))
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action((file: string, outcome: string[], o: { format: Format; setup?: string; variant?: string; folder?: string; inventory: string[] }) => finish(why(file, outcome, o)));

  command('solve', 'find the values that are written ?, so that the goals of a setup (aim, expect) are met')
    .argument('<FILE>', 'a .plate file')
    .option('--write', 'write what is found into the file; nothing else in it changes', false)
    .addOption(new Option('--choice <NUMBER>', 'which one to write, where several will do').default(1, 'the first').argParser(count))
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action(async (file: string, o: SolveOptions) => finish((await import('./solve.ts')).solve(file, o)));

  command('hang', 'tell what to record, from where the finished hologram will hang: lamp, viewer, and where the image is to stand')
    .argument('<FILE>', 'a .plate file; its lamp and its viewer count, and “image behind” or “image before” of the plate')
    .option('-o, --output <PICTURE>', 'draws instead what the hologram of the page will show there, as its name ends: .svg, .png or .pdf').addOption(dark())
    .option('--lamp <NAME>', 'the lamp under which it is drawn; by default the first')
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action(async (file: string, o: HangOptions) => finish(await (await import('./hang.ts')).hang(file, o)));
  command('sweep', 'show what becomes of results while a number of a page takes other values: a table, or a plot')
    .argument('<FILE>', 'a .plate file')
    .addOption(new Option('--over <RANGE>', 'the number and its values: "S1.reflects from 10% to 90% by 10%"; given twice, the second is a curve for each of its values').argParser(several))
    .addOption(new Option('--show <RESULTS>', 'the results, parted by commas: "mismatch, beam ratio"; by default what the setup aims for and expects').argParser(several))
    .option('--variants', 'the variants of the setup, side by side with it as written', false)
    .addOption(tableFormats()).addOption(tableFile()).addOption(dark())
    .addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    .action(async (file: string, o: SweepOptions) => finish(await (await import('./sweep/sweep.ts')).sweep(file, o)));

  command('layout', 'lay out a setup that has no places: up to three layouts on whole holes, with paths that match')
    .argument('<FILE>', 'a .plate file')
    .option('--write', 'write the places into the file; nothing else in it changes', false)
    .addOption(new Option('--choice <NUMBER>', 'which one to write').default(1, 'the first').argParser(count))
    .addOption(formats()).addOption(folder()).addOption(inventory()).addOption(setup())
    .action(async (file: string, o: LayoutOptions) => finish((await import('./layout.ts')).layoutCommand(file, o)));

  command('draw', 'draw the table from above, to scale, or another view of a setup, as a picture')
    .argument('<FILE>', 'a .plate file')
    .option('-o, --output <PICTURE>', 'where to write it, as its name ends: .svg, .png or .pdf; SVG on standard output by default')
    .option('--dark', 'light lines on a dark ground; an SVG without it goes by the reader’s screen', false)
    .option('--view <VIEW>', 'what to draw: plan, the table from above, by default; side, from its near side; arms, unrolled; object, as its plate sees it; pair, as two eyes there see it; or over the plate its light, beam ratio or brightness: light, ratio, brightness; hung, the finished hologram as it hangs')
    .option('--plate <NAME>', 'the plate that a view is of; by default the first that has it')
    .option('--lamp <NAME>', 'the lamp under which the finished hologram is drawn; by default the first')
    .addOption(new Option('--from <X,Y>', 'the point of the plate that the object is seen from: to the right and up, as shares of half the plate, such as -0.5,0').argParser(point))
    .addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    // Loaded when it is asked for: the other commands start without the pictures.
    .action(async (file: string, o: { output?: string; dark: boolean; view?: string; plate?: string; lamp?: string; from?: readonly [number, number]; setup?: string; variant?: string; folder?: string; inventory: string[] }) => finish(await (await import('./draw.ts')).draw(file, o)));

  command('card', 'write a card for the bench, to be printed: what to set up, measure, balance and shoot, with room to write')
    .argument('<FILE>', 'a .plate file; each of its setups has a card of its own')
    .option('-o, --output <CARD>', 'where to write it, as its name ends: .html or .pdf; HTML on standard output by default')
    .addOption(new Option('--paper <PAPER>', 'a4 or letter').default('a4').choices([...PAPERS]))
    .addOption(folder()).addOption(inventory()).addOption(setup()).addOption(variant())
    // As the pictures.
    .action(async (file: string, o: { output?: string; paper: Paper; setup?: string; variant?: string; folder?: string; inventory: string[] }) => finish(await (await import('./card/card.ts')).card(file, o)));

  command('diff', 'tell what a change does to the hologram: between two files, folders or revisions, or a setup and its variants')
    .addArgument(new Argument('<PAGES...>', 'the older file or folder and the newer one; with --git a revision, or two, and what to look at; with --variant one file'))
    .usage('[options] OLD NEW | --git REVISION [REVISION] FILE_OR_FOLDER... | FILE --variant NAME')
    .option('--git', 'compare with a revision in the git repository that holds the page, such as HEAD, HEAD~3, main, or main... for where main and this branch parted', false)
    .addOption(new Option('--format <FORMAT>', 'text, json, markdown, html, or svg: the plan with what was there before as a ghost').default('text').choices(['text', 'json', 'markdown', 'html', 'svg']))
    .option('-o, --output <FILE>', 'where to write it; on standard output by default')
    .addOption(folder()).addOption(inventory()).addOption(setup())
    .addOption(new Option('--variant <NAME>', 'a variant against the setup as written; given twice, the second against the first').argParser(several))
    .option('--shot <NUMBER>', 'compare with the page as it stood when that plate was shot: by git, else by the dates on the page')
    .addOption(new Option('--as-driver', 'what git calls, see below').hideHelp())
    .addHelpText('after', SET_UP)
    .action(async (pages: string[], o: DiffOptions) => finish(await diff(pages, o)));

  command('log', 'tell what each revision of a page did to the hologram, the newest first; needs git')
    .argument('<FILE>', 'a .plate file in a git repository')
    .addOption(formats()).addOption(new Option('--max <NUMBER>', 'only so many').argParser(count))
    .addOption(folder()).addOption(inventory()).addOption(setup())
    .action(async (file: string, o: { format: Format; max?: number; setup?: string; folder?: string; inventory: string[] }) => finish(await log(file, o)));

  command('learn', 'tell what the shots of pages teach: the exposure that a stock needs, what its layer loses, how far a laser keeps step')
    .addArgument(new Argument('<FILE...>', '.plate files; a folder stands for every .plate file in it'))
    .option('--write', 'write the values into the inventory; nothing else in it changes', false)
    .addOption(formats()).addOption(folder()).addOption(inventory())
    .action(async (files: string[], o: LearnOptions) => finish((await import('./learn/learn.ts')).learn(files, o)));

  command('history', 'list the plates that were shot, by date: stock, box, exposure, outcome; or draw them over time')
    .addArgument(new Argument('<FILE...>', '.plate files; a folder stands for every .plate file in it'))
    .addOption(tableFormats()).addOption(tableFile()).addOption(dark())
    .addOption(folder()).addOption(inventory())
    .action(async (files: string[], o: HistoryOptions) => finish(await (await import('./learn/history.ts')).history(files, o)));

  command('format', 'put blanks, indents and line ends in order')
    .addArgument(new Argument('<FILE...>', '.plate files or folders; - reads standard input and prints the result'))
    .option('--check', 'change nothing; end with exit code 1 where something would change', false)
    .action(async (files: string[], o: { check: boolean }) => finish(await format(files, o)));

  command('lsp', 'serve an editor')
    .option('--stdio', 'talk over standard input and output')
    .addOption(new Option('--clientProcessId <ID>').hideHelp())
    .action(async (o: { stdio?: boolean }) => {
      if (o.stdio !== true) throw new Misuse('Say how to talk: platewright lsp --stdio');
      const { startStdio } = await import('../lsp/node.ts');
      startStdio();
    });
  return top;
}

function formats(): Option {
  return new Option('--format <FORMAT>', 'text, json or markdown').default('text').argParser((given: string): Format => {
    if (given === 'text' || given === 'json' || given === 'markdown') return given;
    throw new InvalidArgumentError(given === 'sarif' ? 'Only check writes it; choose text, json or markdown.' : 'Choose text, json or markdown.');
  });
}
function checkFormats(): Option {
  return new Option('--format <FORMAT>', 'text, json, markdown or sarif, which code hosts and editors read').default('text').argParser((given: string): CheckFormat => {
    if (given === 'text' || given === 'json' || given === 'markdown' || given === 'sarif') return given;
    throw new InvalidArgumentError('Choose text, json, markdown or sarif.');
  });
}
const tableFormats = (): Option => new Option('--format <FORMAT>', 'text, json, markdown, csv, or svg: a plot').choices([...TABLE_FORMATS]);
const tableFile = (): Option => new Option('-o, --output <FILE>', 'where to write it, as its name ends: .csv, .json, .md, .txt, or a plot as .svg, .png or .pdf; text on standard output by default');
const dark = (): Option => new Option('--dark', 'a plot with light lines on a dark ground; an SVG without it goes by the reader’s screen').default(false);
const folder = (): Option => new Option('--folder <FOLDER>', 'what a file uses must lie in it; the working folder by default');
const inventory = (): Option => new Option('--inventory <FOLDER>', 'a folder in which the files that a file uses are looked for besides; may be given several times').argParser((given: string, before: string[]) => [...before, given]).default([], 'none');
function point(given: string): readonly [number, number] {
  const numbers = given.split(',').map(v => (v.trim() === '' ? Number.NaN : Number(v)));
  if (numbers.length !== 2 || !numbers.every(v => Math.abs(v) <= 1)) throw new InvalidArgumentError('Write two shares from -1 to 1, such as 0.5,0.');
  return [numbers[0]!, numbers[1]!];
}

const several = (given: string, before: string[] | undefined): string[] => [...before ?? [], given];

function count(given: string): number {
  if (!/^[1-9]\d{0,8}$/.test(given)) throw new InvalidArgumentError('Write a whole number from 1.');
  return Number(given);
}

const SET_UP = `
Exit codes: 0 nothing differs, 1 something does.

So that git diff and git show tell the same, once in a repository:
  git config diff.platewright.command "platewright diff --as-driver"
  echo "*.plate diff=platewright" >> .gitattributes
Then: git diff, and git show --ext-diff or git log -p --ext-diff. Lines again: git diff --no-ext-diff.`;

const setup = (): Option => new Option('--setup <NAME>', 'only the setup with that name');
const variant = (): Option => new Option('--variant <NAME>', 'the setup as its variant of that name makes it');
