/** Searches all pages of the site. What there is to be searched is loaded when somebody first comes to the field. */
import MiniSearch from 'minisearch';
import { made, text } from '../../review/view/dom.ts';

interface Section { readonly id: string; readonly title: string; readonly page: string; readonly at: string; readonly text: string }
const MOST = 12;
const EXCERPT = 120;

export function search(root: string): void {
  const box = document.querySelector<HTMLElement>('.search')!;
  const [field, list, count] = ['search', 'found', 'found-count'].map(id => document.getElementById(id)!) as [HTMLInputElement, HTMLElement, HTMLElement];
  box.hidden = false;
  let sections: Promise<Map<string, Section>> | undefined;
  const index = new MiniSearch<Section>({ fields: ['title', 'text', 'page'], searchOptions: { boost: { title: 4, page: 2 }, prefix: true, fuzzy: term => (term.length > 4 ? 0.2 : false), combineWith: 'AND' } });

  field.addEventListener('focus', () => { void load(); });
  field.addEventListener('input', () => { void find(); });
  box.addEventListener('keydown', e => {
    const links = [...list.querySelectorAll('a')];
    const at = links.indexOf(document.activeElement as HTMLAnchorElement);
    if (e.key === 'Escape') { field.value = ''; field.focus(); void find(); }
    else if (e.key === 'ArrowDown') (links[at + 1] ?? links[at])?.focus();
    else if (e.key === 'ArrowUp') (at <= 0 ? field : links[at - 1]!).focus();
    else if (e.key === 'Enter' && at < 0) links[0]?.click();
    else return;
    e.preventDefault();
  });
  document.addEventListener('keydown', e => {
    if (e.key !== '/' || e.ctrlKey || e.metaKey || e.altKey || (e.target as HTMLElement).matches('input, textarea, select')) return;
    e.preventDefault();
    field.focus();
  });
  document.addEventListener('click', e => { if (!box.contains(e.target as Node)) list.hidden = true; });

  function load(): Promise<Map<string, Section>> {
    sections ??= fetch(`${root}search.json`).then(r => r.json()).then((all: Section[]) => {
      index.addAll(all);
      return new Map(all.map(s => [s.id, s]));
    });
    // Asked again next time.
    sections.catch(() => { sections = undefined; count.textContent = 'The list of what can be searched could not be loaded.'; });
    return sections;
  }

  async function find(): Promise<void> {
    const words = field.value.trim();
    const all = await load();
    if (words !== field.value.trim()) return;
    const found = words === '' ? [] : index.search(words).slice(0, MOST).map(r => all.get(r.id as string)!);
    list.replaceChildren(...found.map(s => row(s, words)));
    if (words !== '' && found.length === 0) list.replaceChildren(text('li', 'Nothing found.', 'quiet'));
    list.hidden = words === '';
    count.textContent = words === '' ? '' : `${String(found.length)} found.`;
  }

  function row({ title, page, at, text: all }: Section, words: string): HTMLElement {
    const item = made('li');
    const link = made('a');
    link.href = `${root}${at}`;
    link.addEventListener('click', () => { list.hidden = true; });
    link.append(text('strong', title), ...(page === title ? [] : [text('span', page, 'quiet')]), text('span', excerpt(all, words), 'words'));
    item.append(link);
    return item;
  }
}

function excerpt(all: string, words: string): string {
  const first = Math.max(0, all.toLowerCase().indexOf(words.toLowerCase().split(/\s+/)[0]!) - 30);
  const begin = first === 0 ? 0 : all.indexOf(' ', first) + 1;
  return `${begin > 0 ? '… ' : ''}${all.slice(begin, begin + EXCERPT)}${all.length > begin + EXCERPT ? ' …' : ''}`;
}
