import * as fs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { readLimited } from '../../electron/files/read-limited';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();

describe('reading a file up to a limit', () => {
  it('gives all of it, up to the very limit', async () => {
    await fs.writeFile(temp.at('a'), 'x'.repeat(200_000));
    const found = await readLimited(temp.at('a'), 200_000);
    expect(found.kind === 'read' ? found.bytes.length : found).toBe(200_000);
    expect(await readLimited(temp.at('a'), 199_999)).toEqual({
      kind: 'too-large',
      sizeBytes: 200_000,
    });
  });

  it('gives an empty file as no bytes, and a folder as no file', async () => {
    await fs.writeFile(temp.at('a'), '');
    expect(await readLimited(temp.at('a'), 10)).toMatchObject({
      kind: 'read',
      bytes: Buffer.alloc(0),
    });
    expect(await readLimited(temp.at(), 10)).toEqual({ kind: 'not-a-file' });
  });

  // Files of the processes say that they have no bytes, and give some all the same.
  it.runIf(process.platform === 'linux')(
    'holds the limit where a file belies its size',
    async () => {
      expect((await fs.stat('/proc/self/environ')).size).toBe(0);
      const found = await readLimited('/proc/self/environ', 8);
      expect(found).toEqual({ kind: 'too-large', sizeBytes: 9 });
    },
  );

  it.runIf(process.platform === 'linux' && process.getuid?.() === 0)(
    'does not wait for a device that looks like a file',
    async () => {
      const found = await readLimited('/proc/kmsg', 8).catch(() => null);
      if (found !== null) expect(['not-a-file', 'too-large']).toContain(found.kind);
    },
    5_000,
  );
});
