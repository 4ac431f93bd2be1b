/** Pictures of the table as it is over how it was, one a setup. What is the same in the next one stays as it is drawn. */
import type { PictureSheet } from '../../../server/lsp/protocol.ts';
import { patch, type Canvas, type Drawn } from '../../plan/view/patch.ts';
import { CANVAS, made as drawn } from '../../plan/view/svg.ts';
import type { Setup } from '../messages.ts';
import { made } from './dom.ts';

interface Plan {
  readonly figure: HTMLElement;
  readonly svg: SVGSVGElement;
  readonly canvas: Canvas<SVGElement>;
  marks: readonly Drawn<SVGElement>[];
}

/** The smallest letters that are shown, pixels. */
const LEGIBLE = 5;

export class Plans {
  private readonly all = new Map<string, Plan>();
  private made = 0;
  private readonly sized = new ResizeObserver(entries => { for (const { target } of entries) scale(target as SVGSVGElement); });

  of(setup: string, { title, box, marks }: PictureSheet, items: Setup['items']): HTMLElement {
    const plan = this.all.get(setup) ?? this.begin(setup);
    const { svg } = plan;
    svg.setAttribute('viewBox', [box.x, box.y, box.w, box.h].join(' '));
    svg.setAttribute('aria-label', title);
    plan.marks = patch<SVGElement>(plan.canvas, svg, plan.marks, marks);
    const at = new Map(items.map(i => [i.id, i.at]));
    for (const e of svg.querySelectorAll<SVGElement>('[data-item]')) {
      const to = at.get(e.getAttribute('data-item')!);
      if (to === undefined) delete e.dataset['at'];
      else e.dataset['at'] = String(to);
    }
    scale(svg);
    return plan.figure;
  }

  /** Only these are there now. */
  forget(setups: readonly string[]): void {
    for (const [name, { svg }] of this.all) {
      if (setups.includes(name)) continue;
      this.sized.unobserve(svg);
      this.all.delete(name);
    }
  }

  private begin(setup: string): Plan {
    const [figure, svg] = [made('figure'), drawn('svg')];
    svg.setAttribute('class', 'sheet');
    svg.setAttribute('role', 'img');
    figure.append(svg);
    const plan = { figure, svg, canvas: named(`p${String(++this.made)}-`), marks: [] };
    this.all.set(setup, plan);
    this.sized.observe(svg);
    return plan;
  }
}

/** Names in a picture are names of the whole page: each picture has its own. */
const named = (prefix: string): Canvas<SVGElement> => ({
  ...CANVAS,
  set: (node, attribute, value) => { CANVAS.set(node, attribute, attribute === 'id' && value !== undefined ? prefix + value : value?.replace(/^url\(#/, `url(#${prefix}`)); },
});

/** Lengths and angles are shown where they can be read. */
function scale(svg: SVGSVGElement): void {
  const { width, height } = svg.viewBox.baseVal;
  if (width === 0 || svg.clientWidth === 0) return;
  const k = Math.min(svg.clientWidth / width, svg.clientHeight / height);
  svg.style.setProperty('--k', String(k));
  svg.classList.toggle('far', k * Number(svg.querySelector('[data-layer="lengths"] text, [data-layer="angles"] text')?.getAttribute('font-size') ?? 0) < LEGIBLE);
}
