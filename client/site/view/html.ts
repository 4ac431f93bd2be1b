/** Draws marks as HTML in the page. Elements are made one by one, and text is only ever text. */
import type { Canvas } from '../../plan/view/patch.ts';

/** What a text in colours and its findings are made of: nothing that can load or run anything. */
const TAGS: ReadonlySet<string> = new Set(['span', 'strong', 'dl', 'div', 'dt', 'dd', 'ul', 'li', 'p', 'a', 'button']);
const ATTRIBUTES: ReadonlySet<string> = new Set(['class', 'type', 'data-line', 'data-start', 'data-end']);
/** Links lead to the page of a finding in the site itself. */
const allows = (attribute: string, value: string): boolean => ATTRIBUTES.has(attribute) || (attribute === 'href' && /^(?:\.\/|(?:\.\.\/)*)findings\/#[a-z-]+$/.test(value));

export const HTML: Canvas<HTMLElement> = {
  make: tag => (TAGS.has(tag) ? document.createElement(tag) : undefined),
  set(node, attribute, value) {
    if (value !== undefined && allows(attribute, value)) node.setAttribute(attribute, value);
    else node.removeAttribute(attribute);
  },
  write(node, text) { node.textContent = text; },
  put(parent, node, before) { parent.insertBefore(node, before ?? null); },
  drop(node) { node.remove(); },
};
