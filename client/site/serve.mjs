// Serves a folder on this machine alone, as any host of static files would.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

const TYPES = { '.html': 'text/html; charset=utf-8', '.css': 'text/css; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.json': 'application/json', '.svg': 'image/svg+xml', '.png': 'image/png', '.plate': 'text/plain; charset=utf-8', '.txt': 'text/plain; charset=utf-8', '.mjs': 'text/plain; charset=utf-8' };

/** @param port any free one by default @returns its address, and how it ends */
export async function serve(folder, port = 0) {
  const root = resolve(folder);
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://127.0.0.1');
    let file;
    try { file = join(root, decodeURIComponent(pathname)); } catch { file = ''; }
    if (file.endsWith(sep)) file = join(file, 'index.html');
    const found = file.startsWith(root + sep) ? readFile(file) : Promise.reject(new Error('outside'));
    found.then(body => response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' }).end(body), () => response.writeHead(404, { 'content-type': 'text/plain' }).end('Nothing is here.\n'));
  });
  await new Promise((done, failed) => { server.once('error', failed).listen(port, '127.0.0.1', done); });
  return { address: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}
