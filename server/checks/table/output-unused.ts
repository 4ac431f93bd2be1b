import type { Problem } from '../../model/model.ts';
import { num, text, type Check, type Data } from '../check.ts';
import { capital } from '../words.ts';

export const outputUnused: Check = {
  code: 'output-unused',
  severity: 'note',
  title: 'Light leaves a splitter or a hologram that no beam uses',
  page: `**What you see.** Stray light: a haze on the plate, a second image of the setup, a spot on a wall at eye height.

**Why.** A splitter has two outputs, and a hologram lets through what it does not diffract. One of them starts no beam, and no card or stop stands where its light goes.

**What to do.** Put a beam stop or a black card there, and give it a place; or lead a beam to it, \`beam rest from S1 through\`.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  splitter S1 at (300, 0) mm
  beam stop B1 at (300, 400) mm
  beam stop B2 at (600, 0) mm
  beam raw from red
    -> S1
  beam turned from S1 reflected
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  splitter S1 at (300, 0) mm
  beam stop B1 at (300, 400) mm
  beam raw from red
    -> S1
  beam turned from S1 reflected
    -> B1
}
`,
  severityOf: d => (d['fogs'] === true ? 'warning' : 'note'),
  message: d => {
    const on = text(d, 'on');
    const where = d['x'] === undefined ? 'where it goes' : `at about ${point(d)}`;
    return `${text(d, 'port') === 'through' ? `What goes straight through ${text(d, 'thing')}` : `What ${text(d, 'thing')} reflects`} is used by no beam${on ? `, and falls on ${on}` : ''}. ${capital(`put a beam stop or a black card ${where}`)}${d['fogs'] === true ? ': it fogs the plate' : ''}.`;
  },
  run: ({ table, setup }) => table.look.unused.map((u): Problem => ({
    code: 'output-unused', at: u.thing.at, subject: u.thing.id, setup: setup.name,
    data: { thing: u.thing.id, port: u.port, ...(u.on ? { on: u.on.id, fogs: u.on.kind.light === 'recorded' } : {}), ...(u.stop ? { x: u.stop[0], y: u.stop[1], z: u.stop[2] } : {}) },
  })),
};

/** `(450, 100) mm`, in the plan. */
const point = (d: Data): string => `(${['x', 'y'].map(k => Math.round(num(d, k) * 1000)).join(', ')}) mm`;
