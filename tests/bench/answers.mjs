// How long what an editor asks for takes, once the findings of an edit are there: ours beside the JSON and the YAML server, in turns, at several lengths.
import { open } from './client.mjs';
import { setup } from './setups.mjs';

const TURNS = 20;
const WARM_UP = 12;
const count = (symbols) => symbols.reduce((n, s) => n + 1 + count(s.children ?? []), 0);
/** What is asked. Neither peer tells colours by meaning: ours stand beside the outline of the faster one, which is a walk over the whole text as well. */
const ASKED = [
  { name: 'completion', method: 'textDocument/completion', at: 'value', holds: (a) => (a?.items ?? a ?? []).some((i) => i.label.replaceAll('"', '') === 'dielectric') },
  { name: 'hover', method: 'textDocument/hover', at: 'key', holds: () => true },
  { name: 'symbols', method: 'textDocument/documentSymbol', holds: (a, lines) => count(a) > lines / 3 },
  { name: 'formatting', method: 'textDocument/formatting', params: { options: { tabSize: 2, insertSpaces: true } }, holds: (a) => Array.isArray(a) },
  { name: 'colours', method: 'textDocument/semanticTokens/full', peer: { method: 'textDocument/documentSymbol', holds: (a, lines) => count(a) > lines / 3 }, holds: (a, lines) => a.data.length > lines },
];

/** Median milliseconds of each question, by server: Map of `completion, 1000 lines` to Map of name to ms. Each has rounds of its own, so that none pays for what another leaves to be cleared away. */
export async function timeAnswers(servers, lengths, median) {
  const figures = new Map();
  for (const lines of lengths) {
    const sessions = [];
    for (const server of servers) {
      const { text, edit } = setup(lines, server.format);
      sessions.push({ server, session: await open(server, { uri: `file:///notebook/setup.${server.format}`, languageId: server.languageId, text }, server), edit, places: placesIn(text) });
    }
    for (const asked of ASKED) {
      const times = new Map(servers.map(({ name }) => [name, []]));
      for (let n = 0; n < WARM_UP + TURNS; n++) {
        for (const { server, session, edit, places } of sessions) {
          const { method, at, params, holds } = server.name === 'ours' ? asked : { ...asked, ...asked.peer };
          await session.edit(edit, n % 2 === 1);
          const { answer, ms } = await session.ask(method, at ? { position: places[at] } : params);
          if (!holds(answer, lines)) throw new Error(`${server.name}: ${asked.name} of ${lines} lines gives ${JSON.stringify(answer)?.slice(0, 300)}`);
          if (n >= WARM_UP) times.get(server.name).push(ms);
        }
        sessions.reverse();
      }
      figures.set(`${asked.name}, ${lines} lines`, new Map([...times].map(([name, all]) => [name, median(all)])));
    }
    for (const { session } of sessions) await session.close();
  }
  return figures;
}

/** The coating of the last mirror: in the middle of its value, and in its name. */
function placesIn(text) {
  const before = text.slice(0, text.lastIndexOf('coating')).split('\n');
  const line = before.length - 1;
  const key = before.at(-1).length;
  return { key: { line, character: key + 2 }, value: { line, character: text.split('\n')[line].indexOf('aluminium') + 3 } };
}
