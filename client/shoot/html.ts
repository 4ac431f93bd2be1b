/** The page in the panel. It is fixed text: what a file says comes later, as messages, and is only ever text. */
import type { Parts } from '../plan/html.ts';

const KEYS = 'Enter or Space takes the next step, Escape stops what is counted, D makes the panel dark or lights it again. While it is dark these are all keys that there are.';

export const pageOf = ({ script, style, source, nonce }: Parts): string => `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>Shoot</title>
  <link rel="stylesheet" href="${style}">
</head>
<body>
  <header>
    <h1 id="title">Shoot</h1>
    <p id="phase"></p>
    <p id="left" role="timer" aria-live="off"></p>
    <p id="doing"><button id="go" type="button" hidden></button> <button id="stop" type="button" hidden></button> <button id="darken" type="button" title="Dark, for work beside open plates (D)">Dark</button></p>
    <p id="said" role="status"></p>
    <p id="keys" class="quiet">${KEYS}</p>
  </header>
  <main><p class="quiet">The page is being read…</p></main>
  <div id="cover" hidden></div>
  <script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
