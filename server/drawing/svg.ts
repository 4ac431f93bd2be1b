/** A picture as SVG text. The same picture gives the same text, letter for letter. */
import { n, type Mark, type Sheet } from './marks.ts';
import { coloursOf, cssOf, PALETTES, styled, type Palette } from './style.ts';

/** Black on white, or the other way about, by what the reader's screen prefers. */
export function svgOf(sheet: Sheet): string {
  const used = new Set(sheet.marks.flatMap(classesIn));
  const style = `\n${cssOf(ink => PALETTES.light[ink], used)}@media (prefers-color-scheme: dark) {\n${coloursOf(ink => PALETTES.dark[ink], used)}}\n`;
  return page(sheet, [element('style', {}, [escaped(style)]), ...sheet.marks.map(text)]);
}

const classesIn = (m: Mark): string[] => [...(m.attributes['class']?.split(' ') ?? []), ...m.children.flatMap(classesIn)];

/** In one palette, with nothing left to a style sheet: for programs that make other pictures of it. */
export function inkedSvg(sheet: Sheet, palette: Palette): string {
  const inked = (m: Mark): Mark[] => {
    const { 'paint-order': halo, stroke, 'stroke-width': width, 'stroke-linejoin': join, ...attributes } = styled(m.attributes, palette);
    const own = { ...m, attributes: halo === undefined ? styled(m.attributes, palette) : attributes, children: m.children.flatMap(inked) };
    // Letters over their halo: two marks, since not every program knows of an order.
    return halo === undefined ? [own] : [{ ...own, attributes: { ...attributes, fill: 'none', stroke: stroke!, 'stroke-width': width!, 'stroke-linejoin': join! } }, own];
  };
  return page(sheet, sheet.marks.flatMap(inked).map(text));
}

function page({ title, box }: Sheet, parts: readonly string[]): string {
  const [x, y, w, h] = [box.x, box.y, box.w, box.h].map(n) as [string, string, string, string];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element('svg', { xmlns: 'http://www.w3.org/2000/svg', viewBox: `${x} ${y} ${w} ${h}`, width: w, height: h, role: 'img' }, [element('title', {}, [escaped(title)]), ...parts])}\n`;
}

const text = (m: Mark): string => element(m.tag, m.attributes, m.text === undefined ? m.children.map(text) : [escaped(m.text)]);

function element(name: string, attributes: Readonly<Record<string, string>>, children: readonly string[] = []): string {
  const open = `<${name}${Object.entries(attributes).map(([k, v]) => ` ${k}="${escaped(v)}"`).join('')}`;
  if (children.length === 0) return `${open}/>`;
  return children.length === 1 && !children[0]!.startsWith('<') ? `${open}>${children[0]!}</${name}>` : `${open}>\n${children.join('\n')}\n</${name}>`;
}

/** Text that is nothing but text: marks of SVG are written as numbers, and what XML 1.0 has no place for, or what turns the order of letters, as a dot. */
const escaped = (words: string): string => words.replace(/(?!\n)[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu, '·').replace(/[&<>"']/g, c => `&#${c.charCodeAt(0)};`);
