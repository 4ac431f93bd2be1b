/** What the left and the right eye see of a finished hologram: the plate as a window, and the image through it, both to one scale. */
import { label, mark, type Box, type Mark } from '../marks.ts';
import type { Hung } from './hung.ts';

/** Distance of eyes, m: common practice. */
const EYES = 0.065;
/** Height of a plate, in letters. */
const HIGH = 8;

export interface EyeBoxes { readonly w: number; readonly h: number; readonly marks: (x: number, y: number) => Mark[] }

/** Undefined where nobody looks, or there is nothing to see. */
export function eyeBoxes({ plate: p, image: i, viewer: v }: Hung, letter: number): EyeBoxes | undefined {
  if (!i || !v) return undefined;
  const [w, h] = p.sides.map(s => s * 1000) as [number, number];
  const scale = Math.min((HIGH * letter) / h, (1.2 * HIGH * letter) / w);
  const [pw, ph, gap] = [w * scale, h * scale, letter];
  const away = v.distance + i.place;
  // Where lines from the eye to the middle and the ends of the image meet the plate.
  const share = away > 1e-3 ? v.distance / away : 0;
  const seen = (eye: number): Box => ({ x: ((eye * i.place) / Math.max(1e-3, away) - (i.width / 2) * share) * 1000 * scale, y: -(i.height / 2) * share * 1000 * scale, w: i.width * share * 1000 * scale, h: i.height * share * 1000 * scale });
  const one = (eye: number, words: string, x: number, y: number): Mark[] => {
    const b = seen(eye);
    const [cx, cy] = [x + pw / 2, y + ph / 2];
    const [l, t] = [Math.max(x, cx + b.x), Math.max(y, cy + b.y)];
    const [r, d] = [Math.min(x + pw, cx + b.x + b.w), Math.min(y + ph, cy + b.y + b.h)];
    return [
      label(words, cx, y - 0.4 * letter, 0.9 * letter, 'letter', 'middle'), mark('rect', { class: 'night', x, y, width: pw, height: ph }),
      ...(r > l && d > t ? [mark('rect', { class: 'lit', x: l, y: t, width: r - l, height: d - t })] : []), mark('rect', { class: 'fine', x, y, width: pw, height: ph }),
    ];
  };
  return { w: 2 * pw + gap, h: ph + 1.4 * letter, marks: (x, y) => [...one(-EYES / 2, 'left eye', x, y + 1.4 * letter), ...one(EYES / 2, 'right eye', x + pw + gap, y + 1.4 * letter)] };
}
