// The workbench with the packed extension in it, and what someone does there with mouse and keyboard.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { startServer } from './server.mjs';
import { openWorkbench } from './workbench.mjs';

/** Where someone sits now. */
export let desk;

/** Opens `folder` in an installed `host`, in whose `state` the extension is installed, unless it comes from an address, `extension`: then it runs in the web worker host. */
export async function openDesk({ host, state, folder, extension, language }) {
  const server = await startServer(host, state);
  const workbench = await openWorkbench({ port: server.port, folder, extension, language });
  const { page } = workbench;
  page.setDefaultTimeout(20_000);
  const editor = page.locator('.editor-instance .monaco-editor').first();
  const input = page.locator('.quick-input-widget input').first();
  const focused = page.locator('.monaco-editor.focused');

  /** Answers a question at the top of the window. Asked while the window is busy, it may close again, or miss letters: then it is asked once more. */
  async function quick(key, typed, row, again = 2) {
    await page.keyboard.press(key);
    await input.waitFor();
    await page.keyboard.type(typed);
    const there = row && page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: row });
    const asked = async () => (await input.inputValue()).endsWith(typed) && (!row || there.waitFor({ timeout: 7000 }).then(() => true, () => false));
    if (!(await asked())) {
      if (again === 0) throw new Error(`asked for '${typed}' after ${key}, the question holds '${await input.inputValue()}'${row ? ` and '${row}' is not chosen` : ''}`);
      await page.keyboard.press('Escape');
      return quick(key, typed, row, again - 1);
    }
    await page.keyboard.press('Enter');
  }

  desk = {
    folder, page, editor,
    command: (title) => quick('F1', title, title),

    async open(file) {
      await quick('Control+P', file, file);
      await page.locator('.tab.active', { hasText: file }).first().waitFor();
      await focused.waitFor();
    },

    /** Puts the cursor into a line, both counted from 1. */
    async goTo(line, column = 1) {
      const there = page.locator('.statusbar-item', { hasText: new RegExp(`Ln ${line}, Col`) });
      // A window that has just been busy may take the key and lose the number.
      for (let again = 2; ; again--) {
        await quick('Control+G', `${line}:${column}`);
        const came = await there.waitFor({ timeout: again > 0 ? 6000 : 20_000 }).then(() => true, (e) => { if (again === 0) throw e; return false; });
        if (came) break;
        await page.keyboard.press('Escape');
      }
      await focused.waitFor();
    },

    /** Puts the cursor into the first place where `text` has `words`, `after` characters behind their begin. */
    async goInto(text, words, after = 1) {
      const before = text.slice(0, text.indexOf(words));
      if (!text.includes(words)) throw new Error(`'${words}' is not in the text`);
      await desk.goTo(before.split('\n').length, before.length - before.lastIndexOf('\n') + after);
    },

    /** The line that shows `words`, hints and all. */
    line: (words) => editor.locator('.view-line').filter({ hasText: words }).first(),

    /** Moves the mouse onto a word, which may be only a part of an element; `beside` is another word of its line. */
    async pointAt(word, beside = word) {
      const { x, y } = await desk.line(beside).evaluate((line, wanted) => {
        const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
        while (walker.nextNode()) {
          const at = walker.currentNode.data.indexOf(wanted);
          if (at < 0) continue;
          const range = document.createRange();
          range.setStart(walker.currentNode, at);
          range.setEnd(walker.currentNode, at + wanted.length);
          const box = range.getBoundingClientRect();
          return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
        }
        throw new Error(`'${wanted}' is not in one piece`);
      }, word);
      await page.mouse.move(x, y, { steps: 5 });
    },

    /** Saves, and waits until nothing is left to be saved. */
    async save() {
      await page.locator('.tab.dirty').first().waitFor();
      await page.keyboard.press('Control+S');
      await page.locator('.tab.dirty').waitFor({ state: 'detached' });
    },

    /** The settings that are written, as text. */
    settings: () => readFileSync(join(state, 'data/User/settings.json'), 'utf8'),

    /** Takes the steps of a part by name, until one fails. With SCREENSHOTS a picture of each is kept in that folder. */
    async run(part, steps) {
      let [passed, failed] = [0, 0];
      for (const [name, step] of Object.entries(steps)) {
        try {
          await step();
          passed++;
          console.log(`  passed  ${name}`);
        } catch (error) {
          failed++;
          console.log(`  FAILED  ${name}\n${error.stack}`);
        }
        await screenshot(page, `${part}-${String(passed + failed).padStart(2, '0')}-${name}`);
        if (failed > 0) break; // the steps rest on one another
      }
      return { passed, failed };
    },

    /** As it was before a page was opened. */
    async clear() {
      await desk.command('View: Close All Editors');
      await page.locator('.tab').first().waitFor({ state: 'detached' });
      if (await page.locator('.part.panel').isVisible()) await page.keyboard.press('Control+J');
      await page.mouse.move(0, 0); // away from the text, where it may point at something
    },

    async close() {
      if (workbench.refused.size > 0) console.log('refused requests to other machines:', [...workbench.refused]);
      await workbench.close();
      await server.stop();
    },
  };
}

export function expect(held, what) {
  if (!held) throw new Error(what);
}

async function screenshot(page, name) {
  const folder = process.env.SCREENSHOTS;
  if (!folder) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name.replaceAll(/\W+/g, '-')}.png`) });
}
