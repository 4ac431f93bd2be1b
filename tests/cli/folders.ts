// The folder in which all tests make theirs; it is gone after them.
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext { folders: string }
}

export default function setup({ provide }: TestProject): () => void {
  const path = mkdtempSync(join(tmpdir(), 'platewright-tests-'));
  // Some tests start the command as another user.
  chmodSync(path, 0o755);
  provide('folders', path);
  return () => { rmSync(path, { recursive: true, force: true }); };
}
