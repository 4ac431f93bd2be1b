/** Slips of words and units. */
import type { Finding } from '../../checks/check.ts';
import { within } from '../../model/place.ts';
import type { Candidate } from './candidate.ts';

/** A misspelt word changed to the one suggested, a forgotten unit added. */
export function wordFixes(finding: Finding): Candidate[] {
  const suggestion = finding.data['suggestion'];
  if (typeof suggestion !== 'string') return [];
  if (finding.code === 'missing-unit') {
    const { at } = finding;
    const gap = /^[°%]/.test(suggestion) ? '' : ' ';
    return [{ title: () => `Add the unit: ${String(finding.data['written'] ?? '')}${gap}${suggestion}`, edits: [{ at: within(at, { start: at.end, end: at.end }), newText: gap + suggestion }]}];
  }
  return [{ title: () => `Change to “${suggestion}”`, edits: [{ at: finding.at, newText: suggestion }]}];
}
