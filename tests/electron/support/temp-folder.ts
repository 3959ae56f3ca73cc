import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach } from 'vitest';

/** A fresh folder for each test of the file; `at()` names a place in it. */
export function freshFolder(): { readonly at: (...names: string[]) => string } {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'roomwright-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true, force: true });
  });
  return { at: (...names) => path.join(folder, ...names) };
}
