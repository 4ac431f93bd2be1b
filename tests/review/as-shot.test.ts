/** A page as it stood when a plate was shot, by its own dates. */
import { describe, expect, it } from 'vitest';
import { alone, analyse } from '../../server/analysis.ts';
import { asShot, shotsNamed } from '../../server/review/as-shot.ts';

const was = (text: string, name: string) => { const s = analyse('file:///notebook/a.plate', text, alone); return asShot(s, shotsNamed(s, name)[0]!); };
const OPEN = 'setup "Whelk" {\n  mirror M1\n';
const SIX = '  shot 6 on 2026-01-28 {\n  }\n';
const SEVEN = '  shot 7 on 2026-02-11 {\n  }\n';

describe('a page as it was shot', () => {
  it('is without what is dated later', () => { expect(was(`${OPEN}${SIX}${SEVEN}}\n`, '6')).toEqual({ text: `${OPEN}${SIX}}\n`, left: 1 }); });
  it('is as it is for the newest', () => { expect(was(`${OPEN}${SIX}${SEVEN}}\n`, '7')).toEqual({ text: `${OPEN}${SIX}${SEVEN}}\n`, left: 0 }); });
  it('is not known of a shot without a date', () => { expect(was(`${OPEN}  shot 6 {\n  }\n${SEVEN}}\n`, '6')).toBe('undated'); });
  // The only closing brace belongs to the later shot: without it the setup would end at its first line, and the shot with it.
  it('is not known where a brace is missing, so that leaving out the later shot would take the earlier one along', () => { expect(was('setup{\n,\nshot 6 on 2026-01-28\n shot on 2026-02-11{\n}\n', '6')).toBe('unclosed'); });
});
