/** The point of a map whose figure is told to who has no pointer: it takes the keyboard, and its arrow keys are its own only then. */
import type { Shown } from '../messages.ts';
import { inTheMiddle, stepped, wordsAt, type Net } from './net.ts';
import { made } from './svg.ts';

type Probe = NonNullable<Shown['probe']>;

export class MapPoint {
  /** drawn as large on the screen however large the picture is shown */
  private readonly mark = made('g');
  private probe: Probe | undefined;
  private at: Net = { column: 0, row: 0 };

  /** @param tell shows the figure, and says it with its place; without words none is shown any more */
  constructor(private readonly plan: SVGSVGElement, private readonly layer: SVGGElement, private readonly tell: (figure: string, place?: string) => void) {
    this.mark.id = 'map-point';
    this.mark.setAttribute('tabindex', '0');
    // Not an image: who listens has to hand its keys on.
    this.mark.setAttribute('role', 'application');
    const cross = made('g');
    for (const name of ['outer', 'inner']) {
      const path = made('path');
      path.setAttribute('class', name);
      path.setAttribute('d', 'M-12 0H-4M4 0H12M0 -12V-4M0 4V12');
      cross.append(path);
    }
    this.mark.append(cross);
    this.mark.addEventListener('focus', () => { this.show(); });
    this.mark.addEventListener('blur', () => { this.tell(''); });
  }

  /** Stays where it is on the plate, as long as there is a map. */
  update(probe: Shown['probe']): void {
    const { held } = this;
    const before = this.probe;
    this.probe = probe;
    if (!probe) {
      this.mark.remove();
      if (held) this.plan.focus({ preventScroll: true });
      return;
    }
    if (before?.columns !== probe.columns || before.rows !== probe.rows) this.at = inTheMiddle(probe);
    this.mark.setAttribute('aria-label', `${probe.words}: a map. Arrow keys move a point over it`);
    // Above all that is drawn; what is moved loses the keyboard.
    if (!this.mark.parentNode || this.layer.querySelector('#map-point ~ :not([aria-hidden])')) this.layer.append(this.mark);
    this.place(probe);
    if (held) {
      this.mark.focus({ preventScroll: true });
      this.show();
    }
  }

  /** @returns whether it was a key for the point, which has the keyboard */
  key(e: KeyboardEvent): boolean {
    const to = this.held && this.probe && !e.ctrlKey && !e.metaKey && !e.altKey ? stepped(this.probe, this.at, e.key, e.shiftKey) : undefined;
    if (!to) return false;
    this.at = to;
    this.show();
    return true;
  }

  /** Where it is, when it has the keyboard. */
  get inSight(): DOMRect | undefined { return this.held ? this.mark.getBoundingClientRect() : undefined; }

  private get held(): boolean { return document.activeElement === this.mark; }

  private show(): void {
    if (!this.probe) return;
    this.place(this.probe);
    const { figure, place } = wordsAt(this.probe, this.at);
    this.tell(figure, place);
  }

  private place({ box, columns, rows }: Probe): void {
    const [x, y] = [box.x + (box.w * this.at.column) / Math.max(1, columns - 1), box.y + (box.h * this.at.row) / Math.max(1, rows - 1)];
    this.mark.setAttribute('transform', `translate(${x} ${y})`);
  }
}
