/** `platewright explain`: the chain of numbers behind a result, or the page of a finding. */
import { analyse, type Snapshot } from '../analysis.ts';
import { pageOf, pageParts, shownExample } from '../checks/pages.ts';
import { findCheck, CHECKS } from '../checks/registry.ts';
import type { Check } from '../checks/check.ts';
import { chainOf } from '../features/chain.ts';
import { chainMarkdown, chainText, type Told } from '../features/chain-text.ts';
import { wrap } from '../features/plain-text.ts';
import type { Place, Setup } from '../model/model.ts';
import { overridesOf } from '../model/overrides.ts';
import { nearest } from '../model/scope.ts';
import type { Cell } from '../results/graph.ts';
import { LATER } from '../results/goals.ts';
import type { Results } from '../results/plan.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { EXTENSION, Misuse, nameOfUri, openFile, type Opened, type Reach } from './files.ts';
import { explanationJson, pageJson } from './json.ts';

/** `words` are a file and the name of a result, or the code of a finding alone. */
export function explain(words: readonly string[], options: { format: Format; setup?: string; variant?: string } & Reach): Done {
  const [first, ...rest] = words as [string, ...string[]];
  if (rest.length === 0 && !first.endsWith(EXTENSION)) return explainCode(first, options.format);
  const file = openFile(first, options);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, options.setup, options.variant);
  const setups = setupsNamed(snapshot.results, file.name, options.setup);
  const asked = rest.join(' ').trim();
  if (asked === '') throw new Misuse(`Say which result to explain. ${knownNames(setups)}`);
  for (const r of setups) r.ask(asked);
  const found = setups.flatMap(r => named(asked, r).map(cell => ({ r, cell })));
  const [one] = found;
  if (!one) {
    if (LATER.includes(asked)) return { out: '', err: [`“${asked}” is not computed yet.`], code: 3 };
    const near = nearest(asked, setups.flatMap(namesOf));
    throw new Misuse(`${file.name} has no result “${asked}”. ${near !== undefined ? `Did you mean “${near}”?` : knownNames(setups)}`);
  }
  if (found.length > 1) {
    const several = new Set(found.map(f => f.r.setup.name));
    throw new Misuse(several.size > 1 ? `Several setups have a result “${asked}”; choose one with --setup: ${[...several].map(n => `“${n}”`).join(', ')}.` : `“${asked}” means several results: ${found.map(f => f.cell.name).join(', ')}. Write the full name of one.`);
  }
  const told = teller(file, snapshot, one.r.setup);
  const chain = chainOf(one.r.graph, one.cell);
  const out = options.format === 'json' ? explanationJson(file, one.r, one.cell, asked, chain) : options.format === 'markdown' ? onScreen(chainMarkdown(chain, told)) : onScreen(chainText(chain, told));
  return { out, code: 0 };
}

/** Where a number stands and what is written there; of a fact of an inventory item that is written otherwise, also what the item has. */
function teller(file: Opened, { tree }: Snapshot, setup: Setup): Told {
  const key = (at: Place): string => `${at.uri} ${at.line} ${at.start}`;
  const overridden = new Map(overridesOf(setup).map(o => [key(o.fact.at), o]));
  const line = (at: Place): string => (at.uri === file.uri ? `line ${at.line + 1}` : `${nameOfUri(at.uri)}, line ${at.line + 1}`);
  return at => {
    const o = overridden.get(key(at));
    return `${line(at)}${at.uri === file.uri ? `: ${tree.lines[at.line]!.text.slice(at.start, at.end)}` : ''}${o ? `, instead of ${o.item}’s ${o.instead} (${line(o.at)})` : ''}`;
  };
}

/** The cells of a name: one, or all that a short name may mean. */
function named(name: string, r: Results): readonly Cell[] {
  const exact = r.graph.find(name);
  return exact ? [exact] : (r.aliases.get(name) ?? []);
}

const namesOf = (r: Results): string[] => [...r.aliases.keys(), ...r.graph.cells.map(c => c.name)];

function knownNames(setups: readonly Results[]): string {
  const names = [...new Set(setups.flatMap(r => r.published.map(c => c.name)))];
  return names.length === 0 ? 'It has no results yet.' : `Its results: ${names.slice(0, 20).join(', ')}${names.length > 20 ? ', …' : ''}.`;
}

function explainCode(code: string, format: Format): Done {
  const check = findCheck(code);
  if (!check) {
    const near = nearest(code, CHECKS.map(c => c.code));
    throw new Misuse(`There is no finding “${code}”. ${near !== undefined ? `Did you mean “${near}”?` : `To explain a result, name the file first: platewright explain FILE RESULT.`}`);
  }
  return { out: format === 'json' ? pageJson(check) : format === 'markdown' ? `${pageOf(check)}\n` : pageText(check), code: 0 };
}

function pageText(c: Check): string {
  const parts = pageParts(c.page);
  const setup = (text: string): string => shownExample(text).split('\n').map(l => `  ${l}`.trimEnd()).join('\n');
  const cured = parts.filter(p => p.kind === 'setup').map(p => setup(p.text));
  return `${[
    [`${c.code} (${c.severity})`, ...wrap(`${c.title}.`)].join('\n'), ...parts.filter(p => p.kind === 'text').map(p => wrap(p.text.replaceAll('**', '')).join('\n')),
    'An example that has this finding:', setup(c.example), ...(cured.length > 0 ? ['Put right:', ...cured] : []),
  ].join('\n\n')}\n`;
}
