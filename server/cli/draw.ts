/** `platewright draw`: a setup from above, to scale, as an SVG picture. */
import { analyse } from '../analysis.ts';
import { drawingOf } from '../drawing/drawing.ts';
import { planOf } from '../drawing/plan/plan.ts';
import { svgOf } from '../drawing/svg.ts';
import { findingsWithin } from '../features/report/report.ts';
import { inVariant, setupsNamed } from './chosen.ts';
import type { Done } from './done.ts';
import { Misuse, openFile, Trouble, writeMade, type Reach } from './files.ts';
import { exitFor } from './findings.ts';

export function draw(named: string, { output, setup, variant, ...reach }: { output?: string; setup?: string; variant?: string } & Reach): Done {
  const file = openFile(named, reach);
  const snapshot = inVariant(analyse(file.uri, file.text, file.texts), file.name, setup, variant);
  const results = setupsNamed(snapshot.results, file.name, setup);
  const [r] = results;
  if (!r) throw new Trouble(`There is no setup in ${file.name}.`);
  if (results.length > 1) throw new Misuse(`${file.name} has several setups; choose one with --setup: ${results.map(x => `“${x.setup.name}”`).join(', ')}.`);
  const drawing = drawingOf(r);
  if (!drawing) throw new Trouble(`Nothing in “${r.setup.name}” has a place, so that there is nothing to draw. Write where things stand, such as “mirror M1 at (350, 100) mm”.`);
  const svg = svgOf(planOf(drawing));
  const code = exitFor(findingsWithin(snapshot, r));
  if (output === undefined) return { out: svg, code };
  writeMade(output, svg);
  return { out: `${output}: drawn\n`, code };
}
