// Runs the suite in the web worker extension host: what a browser without a server behind it gives an extension.
//   node tests/editor/worker-host.mjs EXTENSION_FOLDER FOLDER_TO_OPEN
//   HOST   folder of an installed host
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serveExtension } from './host/serve-extension.mjs';
import { bundleSuite } from './suite/bundle.mjs';

const [extension, folder] = process.argv.slice(2);
const manifest = JSON.parse(await readFile(join(extension, 'package.json'), 'utf8'));
delete manifest.main; // VS Code would run that, in the node host
const site = await serveExtension(extension, {
  '/package.json': JSON.stringify(manifest),
  '/suite.js': await readFile(await bundleSuite('worker')),
});
const code = fileURLToPath(new URL('host/code.mjs', import.meta.url));
const child = spawn(process.execPath, [code, folder, `--extensionDevelopmentPath=${site.url}`, `--extensionTestsPath=${site.url}/suite.js`], { stdio: 'inherit' });
const [status] = await once(child, 'exit');
await site.stop();
process.exit(status ?? 1);
