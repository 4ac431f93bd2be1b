// Serves a folder over http on this machine: an extension that VS Code loads from there runs in the web worker host.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES = { '.js': 'text/javascript', '.cjs': 'text/javascript', '.css': 'text/css', '.json': 'application/json', '.svg': 'image/svg+xml', '.png': 'image/png', '.md': 'text/markdown' };

/** `instead` holds content, by path, that is given in place of what the folder has there. */
export async function serveFolder(folder, instead = {}) {
  const server = createServer(async (request, response) => {
    const open = { 'Access-Control-Allow-Origin': '*', 'Cross-Origin-Resource-Policy': 'cross-origin' };
    try {
      const path = normalize(decodeURIComponent(new URL(request.url, 'http://localhost').pathname));
      const content = instead[path] ?? await readFile(join(folder, path));
      response.writeHead(200, { ...open, 'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream' }).end(content);
    } catch {
      response.writeHead(404, open).end();
    }
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const stop = () => new Promise((resolve) => {
    server.closeAllConnections();
    server.close(resolve);
  });
  return { url: `http://127.0.0.1:${server.address().port}`, stop };
}
