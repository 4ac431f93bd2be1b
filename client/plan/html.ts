/** The page of the plan, before anything is known. */
import { panelPage, type Parts } from '../panel-page.ts';

const KEYS = 'Arrow keys move the view, + and − make it larger and smaller, 0 shows all of it. Tab goes to the things on the table: there arrow keys go from one to the next, Enter shows it in the text, and Ctrl+Enter goes there. Shift+arrow keys move a thing by a hole and write that, with Alt by a millimetre; [ and ] turn what has a heading by a degree and write that, with Alt by a tenth. D makes the panel dark, for work beside open plates. The mouse drags things too: with Alt beside the holes, and Escape leaves all as it was. In views from a plate, Alt+arrow keys move the eye over the plate. On a map over a plate, Tab goes to a point: arrow keys move it, with Shift to the edge, Home to the middle, and its figure is read out.';

/** What is read before it grows dark. */
const CARD = `<div id="cover" hidden></div>
  <section id="card" role="dialog" aria-modal="true" aria-labelledby="card-title" hidden>
    <h1 id="card-title">Dark, for work beside open plates</h1>
    <p><strong>The way back: Escape, D, or a click anywhere in the panel.</strong></p>
    <p id="card-why"></p>
    <p>Any screen can fog a plate, even a dim one; a black one still glows a little, and in all colours. Test it as you test a safelight: a coin on a scrap of plate beside the screen, for as long as plates lie open there; developed, it must not show.</p>
    <p>Only this panel grows dark, the rest of the window stays lit. Move the panel into a window of its own first (right click on its tab), make that full screen, and turn the screen down.</p>
    <p>A soft tick each second says that it is dark. After a change of the text two rising tones say that the page has no error; short low tones count its errors, up to four; one long low tone says that the page cannot be read. Two falling tones: lit again. Keep the loudspeaker off the table.</p>
    <p><button id="go-dark" type="button">Grow dark</button> <button id="stay-lit" type="button">Stay lit</button></p>
  </section>`;

const BODY = `
  <header>
    <label id="setups" hidden><span>Setup</span> <select></select></label>
    <label id="variants" hidden><span>Variant</span> <select></select></label>
    <label id="looks" hidden><span>View</span> <select></select></label>
    <label id="plates" hidden><span>Plate</span> <select></select></label>
    <span id="zoom">
      <button id="smaller" type="button" aria-label="Smaller" title="Smaller (−)">−</button>
      <button id="larger" type="button" aria-label="Larger" title="Larger (+)">+</button>
      <button id="fit" type="button" title="Show all of it (0)">Fit</button>
      <button id="darken" type="button" aria-label="Dark, for work beside open plates" title="Dark, for work beside open plates (D)">Dark</button>
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
  ${CARD}
  <p id="said" class="unseen" role="status"></p>
  <p id="keys" class="unseen">${KEYS}</p>`;

export const pageOf = (parts: Parts): string => panelPage('Bench plan', BODY, parts);
