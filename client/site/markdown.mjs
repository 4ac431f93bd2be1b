// The project's pages as HTML: headings with addresses as code hosts give them, links that lead to where their targets stand in the site, and pages in colours.
import markdownIt from 'markdown-it';
import anchor from 'markdown-it-anchor';
import { way } from './pages.mjs';

/** As code hosts make it of a heading's words. */
export const slug = words => words.trim().toLowerCase().replace(/[^\p{L}\p{N}\p{M}\s_-]/gu, '').replace(/\s/g, '-');

/**
 * @param target gives where a file of the project stands in the site; undefined where there is no such file
 * @param sizeOf gives the width and height of a picture, so that a page does not jump when it comes
 * @param page gives the markup of a page of the language
 * @param escaped makes text that stays text
 * `render(text, { file, at })`: the file that the text is of, and where it stands in the site.
 */
export function markdown({ target, sizeOf, page, escaped }) {
  const md = markdownIt({ html: false, linkify: false, typographer: false });
  md.use(anchor, { slugify: slug, tabIndex: false, permalink: anchor.permalink.headerLink({ safariReaderFix: true }) });
  md.core.ruler.push('addresses', ({ tokens, env }) => {
    for (const token of tokens.flatMap(t => t.children ?? [])) {
      if (token.type === 'link_open') token.attrSet('href', addressOf(token.attrGet('href'), env));
      if (token.type !== 'image') continue;
      const named = token.attrGet('src');
      const [width, height] = sizeOf(pathOf(named, env)) ?? [];
      for (const [name, value] of Object.entries({ src: addressOf(named, env), loading: 'lazy', ...(width && { width, height }) })) token.attrSet(name, String(value));
    }
  });
  // Which heading a page stands under is known where its tokens are.
  md.core.ruler.push('under', ({ tokens }) => {
    let heading;
    tokens.forEach((token, i) => {
      if (token.type === 'heading_open') heading = tokens[i + 1].content;
      if (token.type === 'fence') token.meta = { heading };
    });
  });
  md.renderer.rules.fence = (tokens, i, _options, env) => {
    const { info, content, map, meta } = tokens[i];
    const [language, ...rest] = info.trim().split(' ');
    if (language === 'plate') return page({ text: content, name: rest[0], line: map[0] + 1, heading: meta.heading, env });
    const asked = language === 'text' && rest.length > 0 ? `<p class="asked">platewright ${escaped(rest.join(' '))}</p>` : '';
    return `<div class="plain">${asked}<pre tabindex="0"><code>${escaped(content)}</code></pre></div>\n`;
  };
  md.renderer.rules.table_open = () => '<div class="wide" tabindex="0" role="group" aria-label="Table"><table>\n';
  md.renderer.rules.table_close = () => '</table></div>\n';
  return md;

  function addressOf(href, { file, at }) {
    // What is made for the site is named by where it stands in it.
    if (href.startsWith('site:')) return way(at, href.slice('site:'.length));
    if (/^[a-z]+:/i.test(href) || href.startsWith('#')) return href;
    const path = pathOf(href, { file });
    const to = target(path);
    if (to === undefined) throw new Error(`${file}: the link “${href}” leads to ${path}, which is not there. Correct the link, or bring the file back.`);
    return way(at, to) + new URL(href, `file:///${file}`).hash;
  }

  /** Of a file of the project, as a page names it. */
  function pathOf(href, { file }) { return decodeURIComponent(new URL(href, `file:///${file}`).pathname.slice(1)); }
}
