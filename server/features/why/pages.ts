/** The answer to *why* as a page of plain text and of Markdown. */
import { escaped, bullets, strong } from '../markdown.ts';
import { WIDTH, wrap } from '../plain-text.ts';
import { lightText } from '../report/light.ts';
import { upTo, type Suspect, type Why } from '../why.ts';

const title = (w: Why): string => `${w.setup === '' ? '(a setup without a name)' : w.setup}${w.variant !== undefined ? `, variant “${w.variant}”` : ''}`;

/** What was asked, and how it was understood. */
export function asked(w: Why): string {
  if (w.seen === undefined) return 'What this page itself speaks for, the strongest first.';
  if (w.well) return `“${w.seen}”: nothing to look for. What would make it brighter still:`;
  if (w.outcomes.length === 0) return `“${w.seen}” is no outcome that is known here.${w.nearest.length > 0 ? ` Did you mean ${orOf(w.nearest)}?` : ''} What this page itself speaks for:`;
  return `“${w.seen}”${w.outcomes.length === 1 && w.outcomes[0] === w.seen ? '' : `, understood as ${w.outcomes.map(o => `“${o}”`).join(' and ')}`}.`;
}
const orOf = (list: readonly string[]): string => list.map(o => `“${o}”`).join(', ').replace(/, ([^,]*)$/, ' or $1');

const NOTHING = 'Nothing that this page tells speaks for it.';
const HEADS = { suspects: 'Suspects by this page', untold: 'What text cannot tell', cleared: 'Less likely, by this page' } as const;

export function whyText(all: readonly Why[], file: string): string {
  if (all.length === 0) return `${file}\n${wrap('There is no setup in this file.', { first: '  ' }).join('\n')}\n`;
  return all.map(w => [
    title(w), '─'.repeat(WIDTH), ...wrap(asked(w)), '', HEADS.suspects, '', ...(w.suspects.length > 0 ? w.suspects.flatMap((s, i) => suspect(s, `${i + 1}.`)) : wrap(NOTHING, { first: '  ' })),
    ...(w.untold.length > 0 ? ['', HEADS.untold, '', ...w.untold.flatMap(s => suspect(s, '-'))] : []),
    ...(w.cleared.length > 0 ? ['', HEADS.cleared, '', ...w.cleared.flatMap(s => wrap(`${s.cause}. ${s.evidence.join(' ')}`, { first: '  - ', rest: '    ' }))] : []),
    ...w.ladders.flatMap(l => ['', ...lightText(l)]),
  ].join('\n')).join('\n\n') + '\n';
}

function suspect(s: Suspect, mark: string): string[] {
  const rest = ' '.repeat(3 + mark.length);
  return [
    ...wrap(`${s.cause}${s.stops === undefined ? '' : `: ${upTo(s)}`}.`, { first: `  ${mark} `, rest }), ...s.evidence.flatMap(e => wrap(e, { first: rest })), ...wrap(`Test: ${s.test}`, { first: rest }),
  ];
}

export function whyMarkdown(all: readonly Why[], file: string): string {
  if (all.length === 0) return `# ${escaped(file)}\n\nThere is no setup in this file.\n`;
  return `${all.flatMap(w => [
    `# ${escaped(title(w))}`, escaped(asked(w)), `## ${HEADS.suspects}`, w.suspects.length > 0 ? w.suspects.map((s, i) => item(s, `${i + 1}. `)).join('\n') : NOTHING,
    ...(w.untold.length > 0 ? [`## ${HEADS.untold}`, w.untold.map(s => item(s, '- ')).join('\n')] : []),
    ...(w.cleared.length > 0 ? [`## ${HEADS.cleared}`, bullets(w.cleared.map(s => `${escaped(s.cause)}. ${s.evidence.map(escaped).join(' ')}`))] : []),
    ...w.ladders.flatMap(l => [`## ${escaped(l.title)}`, ['| | | |', '| --- | --- | --- |', ...l.rows.map(x => `| ${escaped(x.label)} | ${escaped(x.text)} | ${escaped(x.remark)} |`)].join('\n')]),
  ]).join('\n\n')}\n`;
}

const item = (s: Suspect, mark: string): string => `${mark}${strong(s.cause)}${s.stops === undefined ? '' : `: ${upTo(s)}`}. ${s.evidence.map(escaped).join(' ')}${s.evidence.length > 0 ? ' ' : ''}*Test:* ${escaped(s.test)}`;

/** The first few, for a hover. */
export function whyBrief(w: Why, most = 3): string {
  const first = [...w.suspects, ...w.untold].slice(0, most);
  return [escaped(asked(w)), first.length > 0 ? first.map((s, i) => item(s, `${i + 1}. `)).join('\n') : NOTHING].join('\n\n');
}
