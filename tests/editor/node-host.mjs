// Runs the suite in the node extension host, by way of runTests() as any VS Code extension does.
//   node tests/editor/node-host.mjs EXTENSION_FOLDER FOLDER_TO_OPEN
//   HOST   folder of an installed host; without it a VS Code is downloaded (VSCODE_VERSION, stable unless said)
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { bundleSuite } from './suite/bundle.mjs';

const [extension, folder] = process.argv.slice(2);
const suite = fileURLToPath(new URL(`../../${await bundleSuite('node')}`, import.meta.url));
const editor = process.env.HOST
  ? { vscodeExecutablePath: fileURLToPath(new URL('host/code.mjs', import.meta.url)) }
  : { version: process.env.VSCODE_VERSION ?? 'stable' };
try {
  await runTests({ ...editor, extensionDevelopmentPath: extension, extensionTestsPath: suite, launchArgs: [folder] });
} catch (error) {
  console.error(String(error));
  process.exit(1);
}
