import type { Problem } from '../../model/model.ts';
import { millimetres, percent } from '../../model/show.ts';
import { legWords } from '../../results/legs/legs.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const beamClipped: Check = {
  code: 'beam-clipped',
  severity: 'warning',
  title: 'A mirror or lens is too small for its beam',
  page: `**What you see.** Of a spread beam: the corners of the plate or of the object stay dark. Of a narrow one: less light, and fringes from the edge that cut it.

**Why.** A face at a slant is as high as ever and only as wide as it looks from the beam. Of a narrow beam it is to catch 97 % or more. Behind a spreading lens a beam may be far wider than its mirror, and nothing is lost that anybody needs, as long as the part that goes on to the plate or the
object fits on the face: that part is told from the widths of the beam at both. Where the size of the face is not written, it is assumed, and all of that is a note.

**What to do.** Take a larger mirror, put it nearer to the spreading lens, or spread the beam behind it.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 20 m
    beam diameter: 0.8 mm
  }
  splitter S1 at (200, 0) mm
  spreader R1 at (400, 0) mm {
    focal length: 4.5 mm
  }
  mirror M1 at (1000, 0) mm {
    diameter: 25 mm
  }
  mirror M2 at (200, 300) mm
  object whelk at (900, 280) mm {
    size: 40 x 60 x 20 mm
    lit at: 128° ± 2°
  }
  plate P1 at (1000, 400) mm heading 300° {
    size: 102 x 127 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> R1
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> whelk
    -> P1
}
`,
  severityOf: d => (d['assumed'] === true || (text(d, 'kind') === 'share' && num(d, 'value') >= 0.8) ? 'note' : 'warning'),
  message: d => {
    const face = `${text(d, 'thing')}, ${millimetres(num(d, 'width'))} wide${d['assumed'] === true ? ' by assumption' : ''} and met at its slant,`;
    if (text(d, 'kind') === 'share') return `${face} catches ${percent(num(d, 'value'))} of ${quoted(d, 'beam')} on ${text(d, 'leg')}. The rest passes it by. Take a larger one, or narrow the beam before it.`;
    return `${face} is too small for what ${quoted(d, 'beam')} is to light behind it: it reaches ${percent(num(d, 'value'))} of the way to the corners of ${text(d, 'lit')}. Take one of ${millimetres(num(d, 'width') / num(d, 'value'))} or more, or put it nearer to the spreading lens.`;
  },
  run: ({ table, setup, graph }) => table.look.faces.map((c): Problem => ({
    code: 'beam-clipped', at: c.thing.at, subject: `${c.leg.id} ${c.thing.id}`, setup: setup.name,
    data: { thing: c.thing.id, beam: c.leg.beam.id, leg: legWords(c.leg), kind: c.kind, value: graph.value(c.cell)!, lit: c.lit.id, assumed: c.assumed, width: c.width },
  })),
};
