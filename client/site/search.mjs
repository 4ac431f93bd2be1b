// What can be searched: a section each, by its heading, with the words that stand in it and where it stands in the site.

/** @param tokens of a page of Markdown @param title of the page */
export function sectionsOf(tokens, title, at) {
  const sections = [];
  let own = { title, page: title, at, text: [] };
  sections.push(own);
  tokens.forEach((token, i) => {
    if (token.type === 'heading_open' && token.tag !== 'h1') {
      own = { title: wordsOf(tokens[i + 1]), page: title, at: `${at}#${token.attrGet('id')}`, text: [] };
      sections.push(own);
    } else if (token.type === 'inline' && tokens[i - 1]?.type !== 'heading_open') own.text.push(wordsOf(token));
  });
  return sections.map((s, id) => ({ ...s, id: `${at}${id}`, text: s.text.join(' ') }));
}

/** Words of a piece of text, without what marks them. */
export const wordsOf = ({ children, content }) => (children ?? [{ content }]).filter(t => !['link_open', 'link_close'].includes(t.type)).map(t => (t.type === 'softbreak' ? ' ' : t.content)).join('').trim();
