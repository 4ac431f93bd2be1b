import { expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { symbolsOf, type OutlineItem } from '../../server/features/symbols.ts';
import { FILE, whelk } from './source.ts';

/** The outline as indented text: kind, name, detail, lines. */
function check(source: string, outline: string): void {
  const rows = (items: readonly OutlineItem[], indent: string): string[] =>
    items.flatMap(i => [`${indent}${i.kind} ${i.name} [${i.detail}] ${i.at.line + 1}–${i.end + 1}`, ...rows(i.children, `${indent}  `)]);
  expect(rows(symbolsOf(analyse(FILE, source)), '').join('\n')).toBe(outline.trim());
}

it('shows things, beams and legs with their lengths', () => check(whelk, `
setup Whelk shell [transmission] 2–27
  thing red [laser] 4–7
  thing S1 [splitter] 8–8
  thing M1 [mirror] 9–9
  thing M2 [mirror] 10–10
  thing M3 [mirror] 11–11
  thing whelk [object] 12–14
  thing P1 [plate] 15–15
  beam raw [] 17–18
    leg → S1 [350 mm] 18–18
  beam reference [1471 ± 3 mm] 19–21
    leg → M1 [750 mm] 20–20
    leg → P1 [721 mm] 21–21
  beam object [1555 ± 6 mm] 22–26
    leg → M2 [410 mm] 23–23
    leg → M3 [377 mm] 24–24
    leg → whelk [468 mm] 25–25
    leg → P1 [300 mm] 26–26`));

it('shows inventories, variants and shots', () => check(`inventory lab {
  laser red-12 {
    wavelength: 632.8 nm
  }
}
setup "a" {
  laser red = lab.red-12
  variant "closer" {
    red at (0, 0) mm
  }
  shot 7 on 2026-02-11 {
    outcome: "dull"
  }
}
`, `
inventory lab [] 1–5
  thing red-12 [laser] 2–4
setup a [] 6–14
  thing red [laser] 7–7
  variant closer [] 8–10
  shot shot 7 on 2026-02-11 [] 11–13`));

it('shows what is half typed', () => check('setup "a" {\n  laser red\n  beam raw from red\n    ->\n    -> M1: \n', `
setup a [] 1–6
  thing red [laser] 2–2
  beam raw [] 3–5
    leg → ? [] 4–4
    leg → M1 [] 5–5`));
