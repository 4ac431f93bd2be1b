/**
 * The bench card of a setup: what somebody at the table needs in the order of the evening, with lines for what is read and done. Nothing is computed here; every
 * figure is a cell of the results, shown as the report shows it, and what is not known is a line to write on.
 */
import type { Snapshot } from '../../analysis.ts';
import { factText } from '../../model/overrides.ts';
import type { Results } from '../../results/plan.ts';
import { balance } from './balance.ts';
import type { Card, Section } from '../blocks/blocks.ts';
import { eyes, open } from '../blocks/cautions.ts';
import { lightWords } from '../blocks/light.ts';
import { measure } from './measure.ts';
import { notes } from './notes.ts';
import { processing } from './process.ts';
import { hanging } from './replay.ts';
import { setUp } from './set-up.ts';
import { inTheDark, shoot } from './shoot.ts';
import { strays } from './strays.ts';

/** @param file as it is shown to people */
export function cardOf(snapshot: Snapshot, r: Results, file: string): Card {
  const { setup } = r;
  const sections = [open(snapshot, r), eyes(r), setUp(r), measure(r), balance(r), strays(r), shoot(r), inTheDark(r), processing(r), hanging(r), notes(r)];
  const name = setup.name.trim() === '' ? 'A setup without a name' : setup.name;
  return {
    title: setup.variant === undefined ? name : `${name}, variant “${setup.variant}”`, file, kinds: kindsOf(r), ...(setup.doc === undefined ? {} : { doc: setup.doc.replace(/\n+/g, ' ') }),
    light: lightWords(r), sections: sections.filter((s): s is Section => s !== undefined && s.blocks.length > 0),
  };
}

function kindsOf({ setup }: Results): string[] {
  const said = (phrase: string): string => { const f = setup.facts.get(phrase); return f === undefined ? '' : f.value.kind === 'words' ? f.value.text : factText(f).replace(/^"(.*)"$/, '$1'); };
  const hologram = said('hologram');
  return [hologram === '' ? '' : `${hologram} hologram`, said('workshop')].filter(k => k !== '');
}
