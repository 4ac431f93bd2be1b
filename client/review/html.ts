/** The page in the panel. It is fixed text: what a file says comes later, as messages, and is only ever text. */
import type { Parts } from '../plan/html.ts';

export const pageOf = ({ script, style, source, nonce }: Parts): string => `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>Comparison of a page</title>
  <link rel="stylesheet" href="${style}">
</head>
<body>
  <header hidden>
    <h1><span class="unseen">Held against each other: </span><span id="before"></span> <span class="way" aria-hidden="true">→</span> <span class="unseen">and </span><span id="after"></span></h1>
    <button id="other" type="button" title="Choose what the page is held against">Compare with another…</button>
  </header>
  <main aria-describedby="keys"><p class="quiet">The earlier text is being read…</p></main>
  <p id="said" class="unseen" role="status"></p>
  <p id="keys" class="unseen">Tab and the arrow keys up and down go from row to row. Enter shows a row in the text, Ctrl+Enter goes there.</p>
  <script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
