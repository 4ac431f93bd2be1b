// Serves a folder over http on this machine alone, as any host of static files would.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const text = type => `${type}; charset=utf-8`;
const TYPES = {
  '.html': text('text/html'), '.css': text('text/css'), '.js': text('text/javascript'), '.cjs': text('text/javascript'), '.json': 'application/json', '.svg': 'image/svg+xml', '.png': 'image/png', '.md': text('text/markdown'), '.plate': text('text/plain'), '.mjs': text('text/plain'), '.txt': text('text/plain'),
};

/** `instead` holds content, by path, that is given in place of what the folder has there; any free port is taken where none is named. */
export async function serve(folder, { port = 0, instead = {}, headers = {} } = {}) {
  const server = createServer(async (request, response) => {
    try {
      const asked = normalize(decodeURIComponent(new URL(request.url, 'http://localhost').pathname)).replaceAll('\\', '/');
      const path = asked.endsWith('/') ? `${asked}index.html` : asked;
      const content = instead[path] ?? await readFile(join(folder, path));
      response.writeHead(200, { ...headers, 'Content-Type': TYPES[extname(path)] ?? 'application/octet-stream' }).end(content);
    } catch {
      response.writeHead(404, headers).end();
    }
  });
  await new Promise((resolve, reject) => { server.once('error', reject).listen(port, '127.0.0.1', resolve); });
  const stop = () => new Promise((resolve) => {
    server.closeAllConnections();
    server.close(resolve);
  });
  return { url: `http://127.0.0.1:${server.address().port}`, stop };
}
