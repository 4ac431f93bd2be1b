// How long what an editor asks for takes, once the findings of an edit are there: ours beside the JSON and the YAML server, in turns, at several lengths.
import { open } from './client.mjs';
import { setup } from './setups.mjs';

const TURNS = 30;
const WARM_UP = 10;
/** What both sides can be asked. Colours by meaning are asked of ours alone: neither peer has them. */
const ASKED = [
  { name: 'completion', method: 'textDocument/completion', at: 'value', holds: (a) => (a?.items ?? a ?? []).some((i) => i.label.replaceAll('"', '') === 'dielectric') },
  { name: 'hover', method: 'textDocument/hover', at: 'key', holds: () => true },
  { name: 'symbols', method: 'textDocument/documentSymbol', holds: (a, lines) => count(a) > lines / 10 },
  { name: 'formatting', method: 'textDocument/formatting', params: { options: { tabSize: 2, insertSpaces: true } }, holds: (a) => Array.isArray(a) },
  { name: 'colours', method: 'textDocument/semanticTokens/full', only: 'ours', holds: (a, lines) => a.data.length > lines },
];
const count = (symbols) => symbols.reduce((n, s) => n + 1 + count(s.children ?? []), 0);

/** Median milliseconds of each question, by server: Map of `completion, 1000 lines` to Map of name to ms. */
export async function timeAnswers(servers, lengths, median) {
  const figures = new Map();
  for (const lines of lengths) {
    const sessions = [];
    for (const server of servers) {
      const { text, edit } = setup(lines, server.format);
      const session = await open(server, { uri: `file:///notebook/setup.${server.format}`, languageId: server.languageId, text }, server);
      sessions.push({ server, session, edit, places: placesIn(text), times: new Map() });
    }
    for (let n = 0; n < WARM_UP + TURNS; n++) {
      for (const { server, session, edit, places, times } of sessions) {
        await session.edit(edit, n % 2 === 1);
        for (const { name, method, at, params, only, holds } of ASKED) {
          if (only && only !== server.name) continue;
          const { answer, ms } = await session.ask(method, at ? { position: places[at] } : params);
          if (!holds(answer, lines)) throw new Error(`${server.name}: ${name} of ${lines} lines gives ${JSON.stringify(answer)?.slice(0, 300)}`);
          if (n >= WARM_UP) times.set(name, [...(times.get(name) ?? []), ms]);
        }
      }
      sessions.reverse();
    }
    for (const { session } of sessions) await session.close();
    for (const { name } of ASKED) figures.set(`${name}, ${lines} lines`, new Map(servers.flatMap((server) => { const all = sessions.find((s) => s.server === server).times.get(name); return all ? [[server.name, median(all)]] : []; })));
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
