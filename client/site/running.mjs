// A page of the language in the site: its text in colours, the picture that the command line draws of it, its figures and its findings. What makes it live in a browser is in view/.
import { createHash } from 'node:crypto';
import { way } from './pages.mjs';

export class Running {
  /** files of the site by their addresses, to be written */
  files = new Map();
  count = 0;
  known = new Map();

  constructor(core) { this.core = core; }

  /** @param beside files that lie beside the page, by name @param at where the page of the site stands @param inside a piece of a larger page: lines of `text` from that one on */
  markup({ name, text, beside, at, within }) {
    const { codeOf, escaped, isWhole, markup } = this.core;
    const looked = this.looked(name ?? 'page.plate', within?.text ?? text, beside);
    if (!isWhole(text)) {
      const from = within?.from ?? 0;
      const cut = list => list.slice(from, from + text.split('\n').length - 1);
      return `<div class="plain"><pre tabindex="0"><code>${markup(codeOf({ texts: cut(looked.texts), colours: cut(looked.colours), findings: [] }))}</code></pre></div>\n`;
    }
    this.count++;
    const own = Object.keys(beside).length > 0 ? this.keep(`beside/`, '.json', JSON.stringify(beside)) : undefined;
    const shown = name ?? 'page.plate';
    return `<div class="page" role="group" aria-label="${escaped(shown)}" data-name="${escaped(shown)}"${own === undefined ? '' : ` data-beside="${way(at, own)}"`}>
<div class="bar"><span class="name">${name === undefined ? 'A page' : escaped(name)}</span></div>
<div class="text"><pre><code>${markup(codeOf(looked))}</code></pre></div>
<div class="shown">${this.figure(looked, at)}<div class="result">${markup(this.core.resultOf(looked, way(at, ''), false))}</div></div>
</div>\n`;
  }

  /** The picture of a page: where it stands in the site, and what it is of. */
  picture({ picture }) {
    if (!picture?.sheet) return undefined;
    const { title, box } = picture.sheet;
    return { at: this.keep('drawn/', '.svg', this.core.svgOf(picture.sheet)), words: `${title}: ${picture.views.find(v => v.name === picture.view).words}`, box };
  }

  figure(looked, at) {
    const picture = this.picture(looked);
    if (!picture) return '';
    const { words, box } = picture;
    const to = way(at, picture.at);
    return `<figure class="plan"><a href="${to}" title="Open the drawing alone"><img src="${to}" alt="${this.core.escaped(words)}" width="${Math.round(box.w)}" height="${Math.round(box.h)}" loading="lazy"></a></figure>`;
  }

  /** A page that stands in several places of the site is looked at once. */
  looked(name, text, beside) {
    const key = JSON.stringify([name, text, beside]);
    if (!this.known.has(key)) this.known.set(key, this.core.look(name, text, beside));
    return this.known.get(key);
  }

  /** The same text is kept once. */
  keep(folder, ending, text) {
    const address = `${folder}${createHash('sha256').update(text).digest('hex').slice(0, 16)}${ending}`;
    this.files.set(address, text);
    return address;
  }
}
