import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { signatureAt } from '../../server/features/signature.ts';
import { FUNCTIONS } from '../../server/results/expression.ts';
import { FILE, marked } from './source.ts';

/** The form at the mark `|`, with its active part in guillemets; undefined where there is none. */
const at = (line: string): string | undefined => {
  const { snapshot, line: n, character } = marked(`setup "a" {\n  ${line}\n}\n`);
  const found = signatureAt(snapshot, n, character);
  const part = found?.parts[found.active];
  return found && part && `${found.label.slice(0, part.start)}«${found.label.slice(part.start, part.end)}»${found.label.slice(part.end)}`;
};
const check = (line: string, wanted: string | undefined): void => expect(at(line), line).toBe(wanted);

describe('what is wanted next', () => {
  it('in a function', () => {
    check('let a = sqrt(|', 'sqrt(«value»)');
    check('let a = min(gap|, 3 mm)', 'min(«one», other)');
    check('let a = min(gap,|', 'min(one, «other»)');
    check('let a = min((3 + 4) mm, | 3 mm)', 'min(one, «other»)');
    check('let a = min(max(1 mm, |', 'max(one, «other»)');
    check('let a = min(max(1 mm, 2 mm), |', 'min(one, «other»)');
    check('let a = min(1, 2, |', undefined);
    check('-> M1: 2 * cos(|', 'cos(«angle»)');
    check('mirror M1 at (min(gap, |', 'min(one, «other»)');
    check('let a = sqrt(gap)|', undefined);
    check('let a = (3 +|', undefined);
    check('let a = min| (1, 2)', undefined);
  });
  it('in a place', () => {
    check('mirror M1 at |', 'at («x», y, height) mm');
    check('mirror M1 at (350|, 100) mm', 'at («x», y, height) mm');
    check('mirror M1 at (350, |', 'at (x, «y», height) mm');
    check('mirror M1 at (350, 100, |', 'at (x, y, «height») mm');
    check('mirror M1 at (350, 100) |', 'at (x, y, height) «mm»');
    check('mirror M1 at (350, 100) mm heading |', undefined);
    check('mirror M1 at (350, 100) mm {|', undefined);
    check('mirror M1| at (350, 100) mm', undefined);
  });
  it('on a leg, and behind a thing', () => {
    check('spreader R1 on |', 'on «A» -> B by distance');
    check('spreader R1 on Ma -> |', 'on A -> «B» by distance');
    check('spreader R1 on Ma -> Mb by 6|', 'on A -> B by «distance»');
    check('half-wave plate HW1 beyond |', 'beyond «A» by distance turning way');
    check('mirror M2 beyond M1 by |', 'beyond A by «distance» turning way');
    check('mirror M2 beyond M1 by 500 mm turning |', 'beyond A by distance turning «way»');
  });
  it('in a reading, and in what was moved', () => {
    check('measured |', 'measured «what» at place: value by instrument on date');
    check('measured reference at |', 'measured what at «place»: value by instrument on date');
    check('measured S1 -> M1: 75|2 mm by string', 'measured what at place: «value» by instrument on date');
    check('measured S1 -> M1: 752 mm by |', 'measured what at place: value by «instrument» on date');
    check('measured S1 -> M1: 752 mm by string on |', 'measured what at place: value by instrument on «date»');
    check('moved M1, |', 'moved «things» on date: reason');
    check('moved M1 on 2026-02-14: |', 'moved things on date: «reason»');
    check('moved M1 on 2026-02-14: "the c|at"', undefined);
  });
  it('nowhere else', () => {
    for (const line of ['|', 'mirror|', '// min(|', '/// at (|', 'let a = gap // min(|', 'shot 7 on |', 'hologram: |', 'beam raw from |', 'points: (1, 2) mm|']) check(line, undefined);
  });
});

it('every function has its form, with as many parts as it takes', () => {
  for (const [name, { args }] of FUNCTIONS) {
    const found = signatureAt(analyse(FILE, `let a = ${name}(`), 0, 9 + name.length)!;
    expect([found.label.startsWith(`${name}(`), found.parts.length, found.active]).toEqual([true, args, 0]);
    for (const p of found.parts) expect(found.label.slice(p.start, p.end)).toMatch(/^\w+$/);
  }
});
