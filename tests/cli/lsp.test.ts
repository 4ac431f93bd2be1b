import { once } from 'node:events';
import { expect, it } from 'vitest';
import { start } from './command.ts';

// Messages as the Language Server Protocol 3.17 frames them ("Base protocol").
const framed = (message: object): string => {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
};

it('lsp --stdio serves an editor until it says goodbye', async () => {
  const child = start(['lsp', '--stdio']);
  let out = '';
  child.stdout!.setEncoding('utf8').on('data', (part: string) => { out += part; });
  child.stdin!.write(framed({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } }));
  await expect.poll(() => out, { timeout: 20_000 }).toContain('"capabilities"');
  expect(out).toMatch(/^Content-Length: \d+\r\n/);
  child.stdin!.write(framed({ method: 'initialized', params: {} }));
  child.stdin!.write(framed({ id: 2, method: 'shutdown' }));
  await expect.poll(() => out, { timeout: 20_000 }).toContain('"id":2');
  child.stdin!.write(framed({ method: 'exit' }));
  const [code] = (await once(child, 'close')) as [number];
  expect(code).toBe(0);
});
