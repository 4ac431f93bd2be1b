/** How a web worker finds the files of the server. What is in them, tests/editor sees in a browser. */
import { afterAll, expect, it, vi } from 'vitest';

interface Scope { onmessage?: (first: { readonly data: string }) => void; importScripts(url: string): void; require?: (name: string) => object; exports?: Record<string, string> }

afterAll(() => { vi.unstubAllGlobals(); });

it('loads from the folder that the client names: each file once, each with exports of its own, also where one loads another', async () => {
  const loaded: string[] = [];
  let seen: object | undefined;
  // Stands for files as they are bundled: they take hold of their exports when they begin.
  const files: Record<string, (exports: Record<string, string>) => void> = {
    'https://plates.example/dist/server.browser.js': exports => {
      seen = scope.require!('./server.core.js');
      exports.from = 'browser';
    },
    'https://plates.example/dist/server.core.js': exports => { exports.from = 'core'; },
  };
  const scope: Scope = {
    importScripts(url) {
      loaded.push(url);
      files[url]!(scope.exports!);
    },
  };
  vi.stubGlobal('self', scope);
  await import('../../server/lsp/worker.ts');
  expect(loaded).toEqual([]);
  scope.onmessage!({ data: 'https://plates.example/dist/' });
  expect(loaded).toEqual(['https://plates.example/dist/server.browser.js', 'https://plates.example/dist/server.core.js']);
  expect(seen).toEqual({ from: 'core' });
  expect(scope.require!('./server.browser.js')).toEqual({ from: 'browser' });
  expect(scope.require!('./server.core.js')).toBe(seen);
  expect(loaded.length).toBe(2);
});
