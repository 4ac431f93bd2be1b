/** The answer as it is shown: rows of words, the same on a terminal and in Markdown. */
import { DECIDES } from '../../checks/eye-limits.ts';
import { capital } from '../../checks/words.ts';
import { plain, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Cell } from '../../results/graph.ts';
import type { Distances, Hanging, Untold } from '../../results/hang/hang.ts';
import { figure } from '../../results/shown.ts';
import { showCell } from '../chain.ts';
import { titleOf } from '../report/report.ts';
import type { HangAnswer, HangAnswers, Hitch } from './answer.ts';

export interface HangRow { readonly name: string; readonly text: string; readonly why: string }
export interface HangPart { readonly title: string; readonly rows: readonly HangRow[] }
export interface HangPage {
  readonly title: string;
  readonly line: number;
  readonly lamps: readonly {
    /** where it will hang, in a sentence */
    readonly lead: string;
    readonly parts: readonly HangPart[];
    /** what stands against it, with what to do */
    readonly hitches: readonly string[];
    /** what else is worth knowing; cautions last */
    readonly notes: readonly string[];
    /** the lines to write, and in what */
    readonly write: { readonly to: string; readonly lines: readonly string[] } | undefined;
  }[];
  /** why a lamp, or the setup, tells nothing */
  readonly says: readonly string[];
}

export function hangPage({ results, answers, untold }: HangAnswers): HangPage {
  const { setup } = results;
  return {
    title: titleOf({ setup: setup.name, ...(setup.variant === undefined ? {} : { variant: setup.variant }) }), line: setup.at.line, says: untold.map(untoldWords),
    lamps: answers.map(a => ({
      lead: leadOf(a), parts: partsOf(a), hitches: a.hitches.map(h => hitchWords(h, a)), notes: notesOf(a),
      write: a.lines.length > 0 ? { to: a.hanging.plate.id, lines: a.lines.map(l => l.text) } : undefined,
    })),
  };
}

function untoldWords({ lamp, plate, why, plates }: Untold): string {
  const id = lamp?.id ?? '';
  switch (why) {
    case 'no lamp': return 'No lamp is written, so that nothing says how the hologram will be lit. Write a “lamp” with its “distance: 1.5 m” and its “angle: 45°”, a “viewer” with its “distance: 600 mm”, and in the plate “image behind: 80 mm” or “image before: 30 mm”.';
    case 'no plate': return `There is no plate that ${id} could show. Write one.`;
    case 'which plate': return `There are several plates, and ${id} does not say which one it shows. Write “plate: ${plates[0]!.id}” in it.`;
    case 'no way': return `Nothing says what ${plate!.id} is to be. Write “hologram: reflection”, “hologram: transmission” or “hologram: rainbow”.`;
  }
}

/** What lies on the other side is told by its side, not by a sign. */
function shown(cell: Cell | undefined, { results: { graph } }: HangAnswer): string {
  const s = cell && showCell(graph, cell);
  return cell && s?.value !== undefined && s.value < 0 ? figure(cell, -s.value, s.u ?? 0) : s?.text ?? 'unknown';
}
const length = (v: number): string => show(Number(v.toPrecision(2)), LENGTH);
const who = ({ viewer }: Hanging): string => viewer?.id ?? 'who looks';

/** `spot lights P1 from 45°, 1500 mm away; visitor stands 600 mm before it. The image is to stand 80 mm behind the glass, where shard stands on the page.` */
function leadOf(a: HangAnswer): string {
  const { hanging: h, results: { graph } } = a;
  const at = graph.value(h.image);
  const where = h.image.missing ? '' : `The image is to stand ${at === 0 ? 'in the plate' : `${shown(h.image, a)} ${at! > 0 ? 'behind' : 'before'} it`}${h.imageFrom === 'page' ? `, as on the page ${h.master ? `that of ${h.master.id}` : h.pair?.arm.object?.id ?? 'the object'}` : ''}.`;
  const lamp = `${capital(h.lamp.id)} shows ${h.plate.id} from ${h.lampAngle.missing ? 'an unknown angle' : shown(h.wrongSide ? h.lampAngle.inputs[0] : h.lampAngle, a)}${h.from ? ` ${h.from === 'above' ? 'above' : 'below'}` : ''}, ${h.lampDistance ? `${shown(h.lampDistance, a)} away` : 'at an unknown distance'}`;
  return `${lamp}${h.viewerDistance ? `; ${who(h)} looks at it from ${shown(h.viewerDistance, a)}` : ''}. ${where}`.trim();
}

/** There is nothing to record then. */
const isBlocked = (a: HangAnswer): boolean => a.hitches.some(x => ['lamp behind', 'lamp edge-on', 'behind the viewer', 'too fine', 'too slanted'].includes(x.kind));

function partsOf(a: HangAnswer): HangPart[] {
  const { hanging: h } = a;
  if (isBlocked(a)) return [];
  const [fits, other] = h.distances as [Distances, Distances];
  const bad = (d: Distances): boolean => a.hitches.some(x => x.kind === 'no object' && x.reference === d.reference);
  const angles = [reference(a), row('object angle', h.objectAngle, a, h.ratio ? 'along the line of sight, as it is bent in the layer' : 'along the line of sight')];
  const title = other.reference === 'as set up' ? `With the reference as on the page, spreading from ${shown(other.distance, a)}` : 'With a parallel reference';
  if (!h.transfer) {
    return [
      { title: 'What to record', rows: [...angles, row('reference distance', fits.distance, a, h.ratio ? 'from how far it spreads: so the image is as wide as the object' : 'from how far it spreads: as the lamp’s light, so that nothing of the image is moved'), row('object distance', fits.object, a, nowWords('', a.now.object, a))] },
      ...(bad(other) || other.object?.missing ? [] : [{ title, rows: [row('object distance', other.object, a, 'so that the image stands there all the same'), row('width of the image', other.width, a, 'beside the object’s')] }]),
    ];
  }
  const stands = (d: Distances): HangRow => row((a.results.graph.value(d.object!) ?? 0) < 0 ? 'its image, behind the plate' : 'its image, before the plate', d.object, a, (a.results.graph.value(d.object!) ?? 0) < 0 ? 'on the far side from the master' : 'on the side of the master');
  return [
    { title: 'First step, the master', rows: [row('object distance', fits.fromMaster, a, `from the object to the master; as far off its real image will be${nowWords('; ', a.now.fromMaster, a)}`), { name: 'reference', text: 'parallel', why: 'at any angle: turned round, the plate is lit by the same beam run backwards; one that spreads would have to run together' }] },
    {
      title: `Second step, the transfer to ${h.plate.id}`, rows: [
        row('master to plate', fits.master, a, `where its opening will stand before ${h.plate.id}, and ${who(h)} look${h.viewer ? 's' : ''} through it${nowWords('; ', a.now.master, a)}`), stands(fits), ...angles,
        row('reference runs together', fits.distance, a, h.way === 'reflection' ? 'on the side of the master, where the lamp will stand' : 'behind the plate, seen from the master: where the lamp will stand'),
      ],
    },
    ...(bad(other) || other.object?.missing || other.master?.missing ? [] : [{ title, rows: [row('object distance', other.fromMaster, a, nowWords('', a.now.fromMaster, a)), row('master to plate', other.master, a, nowWords('', a.now.master, a)), stands(other), row('width of the image', other.width, a, 'beside that of the master’s image')] }]),
  ];
}

function reference(a: HangAnswer): HangRow {
  const { hanging: h } = a;
  const why = h.ratio ? `so that ${h.lamp.id} of another colour meets the fringes rightly` : h.transfer ? `as ${h.lamp.id} will stand, run backwards` : `as ${h.lamp.id} will stand`;
  return row('reference angle', h.referenceAngle, a, `${why}${nowWords('; ', a.now.reference, a)}`);
}

const row = (name: string, cell: Cell | undefined, a: HangAnswer, why: string): HangRow => (cell && !cell.missing ? { name, text: name === 'width of the image' ? `${plain(a.results.graph.value(cell)!, 3)} times` : name === 'object angle' ? showCell(a.results.graph, cell).text : shown(cell, a), why } : { name, text: 'unknown', why: cell?.missing?.code === 'impossible-value' ? '' : cell?.missing?.why ?? '' });
const nowWords = (before: string, cell: Cell | undefined, a: HangAnswer): string => (cell ? `${before}on the page ${shown(cell, a)}` : '');

function hitchWords(x: Hitch, a: HangAnswer): string {
  const { hanging: h } = a;
  const { lamp, plate } = h;
  switch (x.kind) {
    case 'no angle': return `From where ${lamp.id} lights ${plate.id} is not known: write its “angle: 45°”, or its “height: 2.5 m” and “distance: 1.5 m”, and a “wall” with the “height: 1.5 m” at which ${plate.id} will hang.`;
    case 'too steep': return `${capital(lamp.id)} cannot be that much higher or lower than ${plate.id} and still so near: the distance is that from the plate to the lamp, along its light. Write a greater one, or another height.`;
    case 'no distance': return `How far ${lamp.id} is from ${plate.id} is not known: write its “distance: 1.5 m”.`;
    case 'no image': return `Where the image is to stand is not known: write “image behind: 80 mm” or “image before: 30 mm” in ${plate.id}.`;
    case 'lamp behind': return `${capital(lamp.id)} stands behind ${plate.id}. A reflection hologram throws light back, so it stays dark from there: light it from the side of ${who(h)}, at less than 90° from its normal.`;
    case 'lamp edge-on': return `At ${shown(h.lampAngle, a)} the light of ${lamp.id} runs along ${plate.id}, and next to nothing enters it. Bring the lamp to 30° to 60°.`;
    case 'too fine': return `The laser cannot make fringes for ${lamp.id}: its waves are too long beside those that the lamp shows at these angles. The image would come in another colour, or not at all. Choose a lamp of a longer wavelength, or record with a shorter one.`;
    case 'too slanted': return `Fringes for ${lamp.id} would take a beam that is more slanted in the layer than light from air can be. Bring the lamp nearer to the normal of ${plate.id}, or choose one nearer to the colour of the laser.`;
    case 'no viewer': return `How far the master is from ${plate.id} follows from where one looks from: write ${h.viewer ? `the “distance: 600 mm” of ${h.viewer.id}` : 'a “viewer” with its “distance: 600 mm”'}.`;
    case 'behind the viewer': return `The image would stand ${shown(h.image, a)} before ${plate.id}, and ${who(h)} looks from ${shown(h.viewerDistance, a)}: it would be at the eyes or behind them. Bring the image nearer to the plate, or let ${who(h)} step back.`;
    case 'in the plate': return `The nearest part of ${h.pair?.arm.object?.id ?? 'the object'} would stand ${length(x.by)} in ${plate.id}. An image that reaches through the plate takes a master and a transfer: write “image before” or put it farther behind.`;
    case 'in the master': return `The nearest part of the object would stand ${length(x.by)} in the master. Bring the image nearer to the plate, or let ${who(h)} stand farther off.`;
    case 'no object': {
      const which = x.reference === 'lamp' ? 'a reference that fits the lamp' : x.reference === 'as set up' ? 'the reference as on the page' : 'a parallel reference';
      return `With ${which} no place of the object gives that image: ${lamp.id} is too near for it, and the object’s light would have to run together.${x.farther === undefined ? ` Bring the image nearer to ${plate.id}.` : ` It takes a lamp more than ${length(x.farther)} away, an image nearer to ${plate.id}, or a reference that spreads from nearer.`}`;
    }
  }
}

function notesOf(a: HangAnswer): string[] {
  const { hanging: h, results } = a;
  const { graph, values } = results;
  if (isBlocked(a)) return [];
  const ratio = h.ratio && graph.value(h.ratio);
  const notes: string[] = [];
  if (ratio !== undefined && !h.transfer) notes.push(`${capital(h.lamp.id)} has ${plain(ratio, 3)} times the wavelength of the laser: with the reference that fits it the image is as wide as the object and ${plain(1 / ratio, 3)} times as deep${h.otherFocus && !h.otherFocus.missing ? `, and lines that run the other way are sharp ${shown(h.otherFocus, a)} behind the plate` : ''}.`);
  if (h.transfer) notes.push(`Hang ${h.plate.id} so that one looks at it from the side on which the master stood, its lamp where the reference ran to: so the image comes right side out. From the other side it is inside out.`);
  if (h.transfer === 'needed' && !h.rainbow) notes.push('An image before the plate, or in it, takes two steps: no object can stand there while the reference comes.');
  if (h.rainbow) notes.push(`Cover the master but for a slit that is level for ${who(h)}${h.colours && !h.colours.missing ? `: through the one on the page an eye sees ${shown(h.colours, a)} of colour at once` : ''}. ${capital(who(h))} sees the whole image where the slit is imaged, and other colours above and below.`);
  if (h.smear && !h.smear.missing && !h.transfer) notes.push(`Each 10 nm of its lamp’s colour smears the middle of the image by ${shown(h.smear, a)}. For white light make it a reflection hologram, or bring its image to the plate by a transfer.`);
  if (h.way === 'reflection' && !h.ratio) notes.push('Out of white light it takes its own colour, about that of the laser where the layer keeps its thickness.');
  notes.push(values.isWritten(h.plate, 'shrinkage') ? `The shrinkage of ${h.plate.id} is left out here: it moves colour and angle.` : 'That the layer shrinks or swells in its baths is left out: it moves colour and angle.');
  const overhead = h.from === 'above' || h.from === 'below' || values.words(h.plate, 'reference from') !== 'the side';
  if (overhead) notes.push(`A reference from ${h.from === 'below' ? 'below' : 'above or below'} leaves the plane of the table, where eyes are: put a board behind its mirror first. ${DECIDES}`);
  if (h.lamp.facts.has('laser')) notes.push(`What of the laser’s light goes past or through ${h.plate.id} goes on into the room: end it on a stop, and keep it from the height of eyes. ${DECIDES}`);
  return notes;
}
