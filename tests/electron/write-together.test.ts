import * as fs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { FileSteps } from '../../electron/files/temporary';
import { FileOfSetError, writeTogether } from '../../electron/files/write-together';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();
const NAMES = ['a.csv', 'b.csv', 'c.csv', 'd.csv'];
const set = (text: string) => NAMES.map((name) => ({ name, text }));
const contents = (): Promise<readonly string[]> =>
  Promise.all(NAMES.map((name) => fs.readFile(temp.at(name), 'utf8').catch(() => 'none')));

describe('files that belong together', () => {
  it('are all written, nothing else is left, and what was replaced is named', async () => {
    await fs.writeFile(temp.at('b.csv'), 'old');
    expect(await writeTogether(temp.at(), set('new'))).toEqual(['b.csv']);
    expect(await contents()).toEqual(['new', 'new', 'new', 'new']);
    expect((await fs.readdir(temp.at())).sort()).toEqual(NAMES);
  });

  it.each([1, 2, 3, 4])('are put back where number %i cannot be put in place', async (n) => {
    await writeTogether(temp.at(), set('old').slice(0, 2));
    let renames = 0;
    const rename: FileSteps['rename'] = (from, to) => {
      renames += 1;
      return renames === n
        ? Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' }))
        : fs.rename(from, to);
    };
    const failing = writeTogether(temp.at(), set('new'), { ...fs, rename });
    await expect(failing).rejects.toThrow(FileOfSetError);
    await expect(failing).rejects.toMatchObject({ file: temp.at(NAMES[n - 1] ?? '') });
    expect(await contents()).toEqual(['old', 'old', 'none', 'none']);
    expect((await fs.readdir(temp.at())).sort()).toEqual(['a.csv', 'b.csv']);
  });

  it('are left as they were where the disk fills while they are written', async () => {
    await writeTogether(temp.at(), set('old'));
    let opened = 0;
    const open: FileSteps['open'] = (file, flags, mode) => {
      if (flags === 'wx') opened += 1;
      return opened === 3
        ? Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' }))
        : fs.open(file, flags, mode);
    };
    await expect(writeTogether(temp.at(), set('new'), { ...fs, open })).rejects.toThrow('c.csv');
    expect(await contents()).toEqual(['old', 'old', 'old', 'old']);
    expect((await fs.readdir(temp.at())).sort()).toEqual(NAMES);
  });

  it('of two writers at once never come out mixed', async () => {
    const slowly: FileSteps['rename'] = async (from, to) => {
      await new Promise((resolve) => setTimeout(resolve, Math.random() * 8));
      await fs.rename(from, to);
    };
    for (let round = 0; round < 5; round += 1) {
      await Promise.all(
        ['one', 'two', 'three'].map((text) =>
          writeTogether(temp.at(), set(text), { ...fs, rename: slowly }),
        ),
      );
      expect(new Set(await contents()).size).toBe(1);
    }
  });

  it('pass by a lock that a killed writer has left', async () => {
    const lock = temp.at('.roomwright-writing.lock');
    await fs.writeFile(lock, '');
    const old = new Date(Date.now() - 10 * 60_000);
    await fs.utimes(lock, old, old);
    await writeTogether(temp.at(), set('new'));
    expect((await fs.readdir(temp.at())).sort()).toEqual(NAMES);
  });
});
