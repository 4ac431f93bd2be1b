// The three language servers that are compared, each with what it needs to know to check the same setup.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { SCHEMA } from './setups.mjs';

const BENCH = resolve('.bench');
const PEERS = { 'vscode-langservers-extracted': '4.10.0', 'yaml-language-server': '1.25.0' };
const inPeer = (...path) => join(BENCH, 'node_modules', ...path);

/** Installs the peers into .bench/ unless they are there, and takes the YAML server's wait out. */
export function peers() {
  mkdirSync(BENCH, { recursive: true });
  if (!existsSync(join(BENCH, 'package.json'))) writeFileSync(join(BENCH, 'package.json'), '{"private":true}');
  const missing = Object.entries(PEERS).filter(([name, version]) => installedVersion(name) !== version);
  if (missing.length > 0) {
    const packages = missing.map(([name, version]) => `${name}@${version}`);
    execFileSync('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error', ...packages], { cwd: BENCH, stdio: 'inherit' });
  }
  const schema = join(BENCH, 'setup.schema.json');
  writeFileSync(schema, JSON.stringify(SCHEMA));
  return { json: jsonServer(), yaml: yamlServer(pathToFileURL(schema).href) };
}

/** Ours, as it is shipped. `pull` false: it sends its findings by itself. */
export function ours(pull) {
  return {
    name: pull ? 'ours' : 'ours, sent',
    format: 'plate',
    languageId: 'plate',
    command: [resolve('dist/server.cjs'), '--stdio'],
    settings: {},
    pull,
    found: (findings) => findings.some(({ code }) => code === 'arms-mismatched'),
  };
}

/** Where Node.js can keep what it has compiled for the next start (22 and later), as the extension has it do. */
export const KEEPS = Number(process.versions.node.split('.')[0]) >= 22;
/** The same, started as if it had been started before. */
export const kept = (server) => ({ ...server, env: { NODE_COMPILE_CACHE: join(BENCH, 'kept', server.format) } });

const aboveMaximum = (findings) => findings.some(({ message }) => /above the maximum/i.test(message));

function jsonServer() {
  return {
    name: 'JSON',
    format: 'json',
    languageId: 'json',
    command: [inPeer('vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'],
    options: { provideFormatter: true },
    settings: { json: { validate: { enable: true }, schemas: [{ fileMatch: ['*.json'], schema: SCHEMA }] } },
    pull: true,
    found: aboveMaximum,
  };
}

function yamlServer(schema) {
  removeWait();
  return {
    name: 'YAML',
    format: 'yaml',
    languageId: 'yaml',
    command: [inPeer('yaml-language-server/bin/yaml-language-server'), '--stdio'],
    // Its outline ends at 5000 names unless it is told otherwise; the others give all.
    settings: { yaml: { maxItemsComputed: 100_000, validate: true, hover: true, completion: true, format: { enable: true }, schemas: { [schema]: '*.yaml' }, schemaStore: { enable: false }, kubernetesCRDStore: { enable: false } } },
    pull: false, // it does not answer when asked
    found: aboveMaximum,
  };
}

/** It lets 200 ms pass after a change before it looks; that would not be a measure of its work. */
function removeWait() {
  const file = inPeer('yaml-language-server/out/server/src/yamlSettings.js');
  const source = readFileSync(file, 'utf8').replace('this.validationDelayMs = 200;', 'this.validationDelayMs = 0;');
  const waits = source.match(/validationDelayMs = \d+/g);
  if (waits?.join() !== 'validationDelayMs = 0') throw new Error(`the wait of the YAML server is not where it was: ${waits} in ${file}`);
  writeFileSync(file, source);
  console.log(`yaml-language-server: its wait after a change is taken out (${waits.join()})`);
}

/** What stands beside ours, with versions. */
export const versions = () => Object.entries(PEERS).map(([name, version]) => `${name} ${version}`);

function installedVersion(name) {
  const manifest = inPeer(name, 'package.json');
  return existsSync(manifest) ? JSON.parse(readFileSync(manifest, 'utf8')).version : undefined;
}
