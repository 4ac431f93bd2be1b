// What `--format json` prints, held against its schema.
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect } from 'vitest';

const schema = JSON.parse(readFileSync('server/cli/report.schema.json', 'utf8')) as Record<string, unknown>;
export const published = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true, strictTypes: false }).compile(schema);
// Readers must bear members that they do not know; our own output has none that the schema does not name.
export const closed = new Ajv2020({ allErrors: true, strict: false }).compile(close(schema) as Record<string, unknown>);

function close(s: unknown, name = ''): unknown {
  if (Array.isArray(s)) return s.map(x => close(x));
  if (typeof s !== 'object' || s === null) return s;
  const o = Object.fromEntries(Object.entries(s).map(([k, v]) => [k, close(v, k)]));
  return o['type'] === 'object' && 'properties' in o && !('additionalProperties' in o) && name !== 'figure' ? { ...o, unevaluatedProperties: false } : o;
}

/** The document, after it was held against the schema. */
export function bySchema(out: string): unknown {
  const document: unknown = JSON.parse(out);
  published(document);
  expect(published.errors).toBeNull();
  closed(document);
  expect(closed.errors).toBeNull();
  expect(out).not.toMatch(/NaN|Infinity/);
  return document;
}
