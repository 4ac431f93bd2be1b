/** What is installed in an editor talks to nobody but that editor: looked for in the bundles, the packages in them included. */
import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { read } from './manifest.ts';

/** `npm run build` makes them, as `npm test` does first. */
const bundles = existsSync(new URL('../../dist', import.meta.url)) ? readdirSync(new URL('../../dist', import.meta.url)).filter(f => /\.c?js$/.test(f)) : [];
const shipped = bundles.filter(f => /^(?:extension|server|plan|review|shoot)\./.test(f));
const files = (words: RegExp, of = bundles): string[] => of.filter(f => words.test(read(`dist/${f}`)));

test('there are bundles to look at', () => {
  expect(shipped).toEqual(expect.arrayContaining(['extension.cjs', 'extension.web.js', 'plan.js', 'review.js', 'server.browser.js', 'server.cjs', 'server.core.js', 'server.features.js', 'server.press.cjs', 'server.worker.js', 'shoot.js']));
  expect(bundles).toContain('cli.cjs');
});

describe('nothing is asked of a network', () => {
  test.each([
    ['fetch', /\bfetch\s*\(/], ['XMLHttpRequest', /\bXMLHttpRequest\b/], ['WebSocket', /\bWebSocket\b/], ['EventSource', /\bEventSource\b/], ['sendBeacon', /\bsendBeacon\b/], ['WebRTC', /\bRTCPeerConnection\b/],
    ['modules of Node.js that speak with others', /(?:require|import)\(\s*["'`](?:node:)?(?:https?|http2|tls|dgram|dns|inspector|cluster)["'`]/],
  ])('by %s', (_, words) => { expect(files(words)).toEqual([]); });
  // A part of a bundle is loaded from its own folder.
  test('by scripts from elsewhere', () => { expect(files(/importScripts\(\s*["'`]|import\(\s*["'`]https?:/)).toEqual([]); });
  test('by net, which the library of the protocol has for pipes: they are not used', () => {
    expect(files(/require\(\s*["'`](?:node:)?net["'`]/, shipped)).toEqual(['extension.cjs', 'server.cjs']);
    expect(read('client/extension.ts')).toContain('transport: TransportKind.ipc');
  });
});

test('nothing is told to anybody: no logger of usage is made, and none of the protocol is used', () => {
  expect(files(/createTelemetryLogger|TelemetryLogger|applicationinsights|isTelemetryEnabled/i)).toEqual([]);
  const sources = ['client', 'server', 'grammar'].flatMap(folder => readdirSync(new URL(`../../${folder}`, import.meta.url), { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts')).map(f => `${folder}/${f}`));
  expect(sources.filter(f => /telemetry|machineId/i.test(read(f)))).toEqual([]);
});

test('the panels may load nothing that is not in the extension', () => {
  expect(read('client/panel-page.ts')).toMatch(/default-src 'none'; style-src \$\{source\}; script-src 'nonce-\$\{nonce\}'/);
  for (const panel of ['plan', 'review', 'shoot']) {
    const page = read(`client/${panel}/html.ts`);
    expect(page).toContain('panelPage(');
    expect(page).not.toMatch(/<script|<link|<style|<img|<iframe|\son\w+=|https?:/);
  }
});
