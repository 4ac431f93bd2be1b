/** The page of a comparison, before anything is known. */
import { panelPage, type Parts } from '../panel-page.ts';

const BODY = `
  <header hidden>
    <h1><span class="unseen">Held against each other: </span><span id="before"></span> <span class="way" aria-hidden="true">→</span> <span class="unseen">and </span><span id="after"></span></h1>
    <button id="other" type="button" title="Choose what the page is held against">Compare with another…</button>
  </header>
  <main aria-describedby="keys"><p class="quiet">The earlier text is being read…</p></main>
  <p id="said" class="unseen" role="status"></p>
  <p id="keys" class="unseen">Tab and the arrow keys up and down go from row to row. Enter shows a row in the text, Ctrl+Enter goes there.</p>`;

export const pageOf = (parts: Parts): string => panelPage('Comparison of a page', BODY, parts);
