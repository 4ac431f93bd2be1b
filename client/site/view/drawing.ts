/** The picture of a page while somebody changes it, in the place of the one that was drawn when the site was built. */
import type { PictureSheet } from '../../../server/lsp/protocol.ts';
import { patch, type Canvas, type Drawn } from '../../plan/view/patch.ts';
import { CANVAS, made } from '../../plan/view/svg.ts';

export class Drawing {
  readonly svg = made('svg');
  private marks: readonly Drawn<SVGElement>[] = [];
  private readonly canvas: Canvas<SVGElement>;

  /** @param own of this picture only: names in a picture are names of the whole page */
  constructor(own: string) {
    this.svg.setAttribute('class', 'sheet');
    this.svg.setAttribute('role', 'img');
    const named = (value: string | undefined): string | undefined => value?.replace(/^url\(#/, `url(#${own}`);
    this.canvas = { ...CANVAS, set: (node, attribute, value) => { CANVAS.set(node, attribute, attribute === 'id' && value !== undefined ? own + value : named(value)); } };
    new ResizeObserver(() => { this.scale(); }).observe(this.svg);
  }

  show({ title, box, marks }: PictureSheet): void {
    this.svg.setAttribute('viewBox', [box.x, box.y, box.w, box.h].join(' '));
    this.svg.setAttribute('aria-label', title);
    this.marks = patch<SVGElement>(this.canvas, this.svg, this.marks, marks);
    this.scale();
  }

  /** Names are read at any size of the picture. */
  private scale(): void {
    const { width, height } = this.svg.viewBox.baseVal;
    if (width === 0 || this.svg.clientWidth === 0) return;
    this.svg.style.setProperty('--k', String(Math.min(this.svg.clientWidth / width, this.svg.clientHeight / height)));
  }
}
