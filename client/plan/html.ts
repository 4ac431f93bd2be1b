/** The page in the panel. It is fixed text: what a file says comes later, as messages, and is only ever text. */
export interface Parts {
  /** addresses that the panel may load */
  readonly script: string;
  readonly style: string;
  /** where the editor serves the files of an extension from */
  readonly source: string;
  /** of this page only */
  readonly nonce: string;
}

const KEYS = 'Arrow keys move the view, + and − make it larger and smaller, 0 shows all of it. Tab goes to the things on the table: there arrow keys go from one to the next, Enter shows it in the text, and Ctrl+Enter goes there. Shift+arrow keys move a thing by a hole and write that, with Alt by a millimetre. The mouse drags things too: with Alt beside the holes, and Escape leaves all as it was. In views from a plate, Alt+arrow keys move the eye over the plate.';

export const pageOf = ({ script, style, source, nonce }: Parts): string => `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>Bench plan</title>
  <link rel="stylesheet" href="${style}">
</head>
<body>
  <header>
    <label id="setups" hidden><span>Setup</span> <select></select></label>
    <label id="variants" hidden><span>Variant</span> <select></select></label>
    <label id="looks" hidden><span>View</span> <select></select></label>
    <span id="zoom">
      <button id="smaller" type="button" aria-label="Smaller" title="Smaller (−)">−</button>
      <button id="larger" type="button" aria-label="Larger" title="Larger (+)">+</button>
      <button id="fit" type="button" title="Show all of it (0)">Fit</button>
    </span>
  </header>
  <p id="note" role="status"></p>
  <main>
    <svg id="plan" role="graphics-document document" aria-label="Bench plan" aria-describedby="keys" tabindex="0"><g id="view" class="sheet"></g></svg>
    <p id="hint" aria-hidden="true"></p>
    <section id="nothing" hidden><p></p><pre></pre></section>
  </main>
  <footer hidden>
    <ul id="figures" aria-label="Figures of the setup"></ul>
    <p id="under" aria-hidden="true"></p>
  </footer>
  <p id="said" class="unseen" role="status"></p>
  <p id="keys" class="unseen">${KEYS}</p>
  <script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
