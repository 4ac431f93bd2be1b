// Packs what is shipped, and puts it into folders that hold nothing else.
import { execFileSync } from 'node:child_process';
import { createWriteStream, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fromBufferPromise } from 'yauzl';

export const VSIX = 'out/platewright.vsix';
export const TARBALL = `out/platewright-${JSON.parse(readFileSync('package.json', 'utf8')).version}.tgz`;

/** Makes both; `built` where dist/ is of now. */
export function pack(built) {
  if (!built) execFileSync('npm', ['run', '--silent', 'build'], { stdio: 'inherit' });
  execFileSync(process.execPath, ['client/package.mjs'], { stdio: 'inherit' });
}

/** As a user installs it; gives the folder in which the command lies. What it depends on comes from npm, here or never. */
export function install(into) {
  mkdirSync(into, { recursive: true });
  execFileSync('npm', ['install', '--prefix', into, '--prefer-offline', '--no-audit', '--no-fund', '--loglevel=error', resolve(TARBALL)], { cwd: into, stdio: ['ignore', 'ignore', 'inherit'] });
  return join(into, 'node_modules/.bin');
}

/** Nothing but the packed files themselves. */
export function unpack(into) {
  mkdirSync(into, { recursive: true });
  execFileSync('tar', ['xzf', resolve(TARBALL), '-C', into, '--strip-components=1']);
}

export async function unpackExtension(into) {
  const zip = await fromBufferPromise(readFileSync(VSIX));
  for await (const entry of zip.eachEntry()) {
    if (entry.fileName.endsWith('/')) continue;
    const file = join(into, entry.fileName);
    mkdirSync(dirname(file), { recursive: true });
    await pipeline(await zip.openReadStreamPromise(entry), createWriteStream(file));
  }
}

/** All files below a folder, in the order of their names. How what the command line loads later is cut into files is the bundler's affair. */
export const listed = folder => [...new Set(readdirSync(folder, { recursive: true, withFileTypes: true }).filter(f => f.isFile())
  .map(f => join(f.parentPath, f.name).slice(folder.length + 1).replaceAll('\\', '/').replace(/^dist\/cli-.*\.cjs$/, 'dist/cli-*.cjs')))].sort();
