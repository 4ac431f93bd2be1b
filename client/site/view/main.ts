/** What a browser adds to the pages of the site: they can be searched, and pages of the language can be changed where they stand. All else is there without it. */
import { ready } from './running.ts';
import { search } from './search.ts';

search(document.body.dataset['root']!);
for (const page of document.querySelectorAll<HTMLElement>('.page')) ready(page);

// Beside a narrow page the list of pages waits until it is asked for.
const pages = document.querySelector<HTMLDetailsElement>('details.pages')!;
const narrow = matchMedia('(max-width: 60rem)');
const fold = (): void => { pages.open = !narrow.matches; };
narrow.addEventListener('change', fold);
fold();
