/** The page of a shot, before anything is known. */
import { panelPage, type Parts } from '../panel-page.ts';

const KEYS = 'Enter or Space takes the next step, Escape stops what is counted, D makes the panel dark or lights it again. While it is dark these are all keys that there are.';

const BODY = `
  <header>
    <h1 id="title">Shoot</h1>
    <p id="phase"></p>
    <p id="left" role="timer" aria-live="off"></p>
    <p id="doing"><button id="go" type="button" hidden></button> <button id="stop" type="button" hidden></button> <button id="darken" type="button" title="Dark, for work beside open plates (D)">Dark</button></p>
    <p id="said" role="status"></p>
    <p id="keys" class="quiet">${KEYS}</p>
  </header>
  <main><p class="quiet">The page is being read…</p></main>
  <div id="cover" hidden></div>`;

export const pageOf = (parts: Parts): string => panelPage('Shoot', BODY, parts);
