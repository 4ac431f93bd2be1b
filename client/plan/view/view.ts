/** How much of the picture is in sight: zoom and pan, by mouse, fingers and keys. It stays as it is when the picture changes. */
import { select, type Selection } from 'd3-selection';
import { zoom, zoomIdentity, zoomTransform, type D3ZoomEvent, type ZoomBehavior, type ZoomTransform } from 'd3-zoom';
import type { PictureSheet } from '../../../server/lsp/protocol.ts';

type Box = PictureSheet['box'];
/** Of the panel, around the picture. */
const AIR = 0.97;
/** How much larger than as a whole a picture is ever shown. */
const LARGEST = 40;
/** One step of a key or a button. */
const STEP = 1.3;
const PAN = 60;
/** The smallest letters that are shown, pixels, and how large they are in most pictures, mm. */
const LEGIBLE = 5;
const LETTER = 12;
/** Of a gentle move, ms. */
const GLIDE = 220;

export class View {
  private readonly svg: Selection<SVGSVGElement, unknown, null, undefined>;
  private readonly zoom: ZoomBehavior<SVGSVGElement, unknown>;
  private box: Box = { x: 0, y: 0, w: 1, h: 1 };
  /** all of it is in sight, and stays so when the panel changes its size */
  private whole = true;
  private gliding = 0;

  /**
   * @param busy the pointer is on something of its own, and does not move the picture
   * @param settled the view has come to rest
   */
  constructor(private readonly plan: SVGSVGElement, layer: SVGGElement, busy: (e: Event) => boolean, settled: () => void) {
    this.svg = select(plan);
    this.zoom = zoom<SVGSVGElement, unknown>()
      .extent(() => [[0, 0], this.size])
      .filter((e: MouseEvent) => e.type === 'wheel' || (e.button === 0 && !e.ctrlKey && !busy(e)))
      .on('zoom', ({ transform: t, sourceEvent }: D3ZoomEvent<SVGSVGElement, unknown>) => {
        if (sourceEvent) this.touched();
        layer.setAttribute('transform', t.toString());
        plan.style.setProperty('--k', String(t.k));
        // Lengths and angles that nobody could read are left out.
        plan.classList.toggle('far', t.k * Number(layer.querySelector('[data-layer="lengths"] text, [data-layer="angles"] text')?.getAttribute('font-size') ?? LETTER) < LEGIBLE);
      })
      .on('end', settled);
    this.svg.call(this.zoom).on('dblclick.zoom', null);
    new ResizeObserver(() => { if (this.whole && !plan.classList.contains('moving')) this.fit(); }).observe(plan);
  }

  /** The picture is as large as that now. */
  of(box: Box): void {
    this.box = box;
    const least = this.leastFor(box);
    // Most of it can be pushed out of sight, all of it cannot.
    this.zoom.scaleExtent([least / 2, least * LARGEST]).translateExtent([[box.x - 1.5 * box.w, box.y - 1.5 * box.h], [box.x + 2.5 * box.w, box.y + 2.5 * box.h]]);
  }

  fit(): void {
    const { x, y, w, h } = this.box;
    const [width, height] = this.size;
    if (width === 0 || height === 0) return;
    this.of(this.box);
    const k = this.leastFor(this.box);
    this.whole = true;
    this.to(zoomIdentity.translate((width - w * k) / 2 - x * k, (height - h * k) / 2 - y * k).scale(k));
  }

  /** @param larger steps; below zero it grows smaller */
  step(larger: number): void {
    this.touched();
    this.zoom.scaleBy(this.svg, STEP ** larger);
  }

  /** @param right steps that the eye goes to the right */
  pan(right: number, down: number): void {
    this.touched();
    const { k } = this.now;
    this.zoom.translateBy(this.svg, (-right * PAN) / k, (-down * PAN) / k);
  }

  /** Where a pointer is in the sheet, mm. */
  at({ clientX, clientY }: MouseEvent): [number, number] {
    const { left, top } = this.plan.getBoundingClientRect();
    return this.now.invert([clientX - left, clientY - top]);
  }

  get kept(): { x: number; y: number; k: number } | undefined {
    const { x, y, k } = this.now;
    return this.whole ? undefined : { x, y, k };
  }

  keep({ x, y, k }: { readonly x: number; readonly y: number; readonly k: number }): void {
    this.whole = false;
    this.to(zoomIdentity.translate(x, y).scale(k));
  }

  /** Goes there gently, unless some of it is in sight. In pixels of the window. */
  seek(there: DOMRect): void {
    const here = this.plan.getBoundingClientRect();
    if (there.right > here.left && there.left < here.right && there.bottom > here.top && there.top < here.bottom) return;
    this.touched();
    const [dx, dy] = [here.left + here.width / 2 - (there.left + there.width / 2), here.top + here.height / 2 - (there.top + there.height / 2)];
    this.glide(dx, dy);
  }

  private glide(dx: number, dy: number): void {
    const from = this.now;
    const at = (part: number): ZoomTransform => zoomIdentity.translate(from.x + dx * part, from.y + dy * part).scale(from.k);
    if (document.body.classList.contains('vscode-reduce-motion') || matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.to(at(1));
      return;
    }
    const start = performance.now();
    const frame = (time: number): void => {
      const t = Math.min(1, Math.max(0, (time - start) / GLIDE));
      this.to(at(t * t * (3 - 2 * t)));
      if (t < 1) this.gliding = requestAnimationFrame(frame);
    };
    this.gliding = requestAnimationFrame(frame);
  }

  private to(t: ZoomTransform): void { this.zoom.transform(this.svg, t); }
  private get now(): ZoomTransform { return zoomTransform(this.plan); }
  private get size(): [number, number] { return [this.plan.clientWidth, this.plan.clientHeight]; }

  /** Somebody's hand is on it. */
  private touched(): void {
    cancelAnimationFrame(this.gliding);
    this.whole = false;
  }

  private leastFor({ w, h }: Box): number {
    const [width, height] = this.size;
    return Math.max(1e-6, AIR * Math.min(width / w, height / h));
  }
}
