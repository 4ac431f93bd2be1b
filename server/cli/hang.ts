/** `platewright hang`: what to record, from where the finished hologram will hang. It writes nothing. */
import { analyse } from '../analysis.ts';
import { hangOf, type HangAnswer, type HangAnswers, type Hitch } from '../features/hang/answer.ts';
import { hangMarkdown } from '../features/hang/markdown.ts';
import { hangPage } from '../features/hang/page.ts';
import { hangText } from '../features/hang/text.ts';
import type { Cell } from '../results/graph.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import { onScreen, type Done, type Format } from './done.ts';
import { Misuse, openFile, Trouble, type Opened, type Reach } from './files.ts';
import { beside, document, figure, number, place, type Members, type Naming } from './json.ts';

export interface HangOptions extends Reach { readonly format: Format; readonly output?: string; readonly lamp?: string; readonly dark?: boolean; readonly setup?: string; readonly variant?: string }

export async function hang(named: string, { format, output, lamp, dark, setup, variant, ...reach }: HangOptions): Promise<Done> {
  if (output !== undefined) return (await import('./draw.ts')).draw(named, { output, view: 'hung', ...(lamp === undefined ? {} : { lamp }), ...(dark === undefined ? {} : { dark }), ...(setup === undefined ? {} : { setup }), ...(variant === undefined ? {} : { variant }), ...reach });
  if (lamp !== undefined) throw new Misuse('“--lamp” chooses a picture: name one with “-o hung.svg”. Without it all lamps are told of.');
  const file = openFile(named, reach);
  const snapshot = analyse(file.uri, file.text, file.texts);
  const results = setupsNamed(inVariant(snapshot, file.name, setup, variant).results, file.name, setup);
  if (results.length === 0) throw new Trouble(`There is no setup in ${file.name}.`);
  const all = results.map(hangOf);
  // Of a file with many setups only those are shown that have a lamp.
  const lit = all.filter(a => a.answers.length > 0 || a.untold.some(u => u.lamp));
  const answers = lit.length > 0 ? lit : all.slice(0, 1);
  const open = answers.some(a => a.untold.length > 0 || a.answers.some(x => x.hitches.length > 0));
  const pages = answers.map(hangPage);
  const out = format === 'json' ? hangJson(file, answers) : format === 'markdown' ? onScreen(hangMarkdown(pages, file.name)) : onScreen(hangText(pages, file.name));
  return { out, code: open ? 1 : 0 };
}

/** The document of `hang --format json`, as `report.schema.json` describes it. */
function hangJson(file: Opened, all: readonly HangAnswers[]): string {
  const naming = beside(file);
  return document('hang', {
    file: naming(file.uri),
    setups: all.map(a => {
      const page = hangPage(a);
      return {
        name: a.results.setup.name, variant: a.results.setup.variant ?? null, place: place(a.results.setup.at, naming), says: page.says,
        lamps: a.answers.map((x, i) => ({ ...lamp(x, naming), hitches: x.hitches.map((h, j) => hitch(h, page.lamps[i]!.hitches[j]!)), notes: page.lamps[i]!.notes })),
      };
    }),
  });
}

function lamp(a: HangAnswer, naming: Naming): Members {
  const { hanging: h } = a;
  const of = (cell: Cell | undefined): Members | null => (cell ? figure(a.results.graph, cell, naming) : null);
  return {
    lamp: h.lamp.id, plate: h.plate.id, viewer: h.viewer?.id ?? null, way: h.rainbow ? 'rainbow' : h.way, steps: h.transfer ? 2 : 1, imageFrom: h.imageFrom,
    image: of(h.image), lampAngle: of(h.lampAngle), lampDistance: of(h.lampDistance), viewerAngle: of(h.viewerAngle), viewerDistance: of(h.viewerDistance),
    referenceAngle: of(h.referenceAngle), objectAngle: of(h.objectAngle),
    distances: h.distances.map(d => ({ reference: d.reference, referenceDistance: of(d.distance), objectDistance: of(h.transfer ? d.fromMaster : d.object), masterToPlate: of(d.master), imageBeforePlate: of(h.transfer ? d.object : undefined), width: of(d.width) })),
    colours: of(h.colours), write: a.lines.map(l => ({ thing: l.to.id, text: l.text })),
  };
}

const hitch = (h: Hitch, words: string): Members => ({ kind: h.kind, reference: h.kind === 'no object' ? h.reference : null, value: h.kind === 'no object' ? number(h.farther) : 'by' in h ? number(h.by) : null, words });
