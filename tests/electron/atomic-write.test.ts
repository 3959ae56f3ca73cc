import * as fs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { writeAtomically } from '../../electron/files/atomic-write';
import { ReadOnlyFileError, type FileSteps } from '../../electron/files/temporary';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();

const failing = (code: string): (() => Promise<never>) => {
  return () => Promise.reject(Object.assign(new Error(code), { code }));
};

/** Real file steps with some replaced. */
const stepsWith = (replaced: Partial<FileSteps>): FileSteps => ({ ...fs, ...replaced });

describe('writing a file as a whole', () => {
  it('writes a new file and leaves nothing else behind', async () => {
    await writeAtomically(temp.at('den.room.json'), 'one', { backup: true });
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('one');
    expect(await fs.readdir(temp.at())).toEqual(['den.room.json']);
  });

  it('keeps the previous version beside the file', async () => {
    const file = temp.at('den.room.json');
    for (const text of ['one', 'two', 'three']) await writeAtomically(file, text, { backup: true });
    expect(await fs.readFile(file, 'utf8')).toBe('three');
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('two');
    expect((await fs.readdir(temp.at())).sort()).toEqual(['den.room.json', 'den.room.json.bak']);
  });

  it('does not push the older version out by saving the same again, or over an empty file', async () => {
    const file = temp.at('den.room.json');
    for (const text of ['one', 'two', 'two']) await writeAtomically(file, text, { backup: true });
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('one');
    await fs.writeFile(file, '');
    await writeAtomically(file, 'three', { backup: true });
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('one');
  });

  it('keeps no backup where none is asked for', async () => {
    for (const text of ['one', 'two']) await writeAtomically(temp.at('modes.csv'), text);
    expect(await fs.readdir(temp.at())).toEqual(['modes.csv']);
  });

  it('keeps the permissions, and writes through a link', async () => {
    await fs.writeFile(temp.at('real.json'), 'one', { mode: 0o640 });
    await fs.symlink(temp.at('real.json'), temp.at('link.json'));
    await writeAtomically(temp.at('link.json'), 'two');
    expect((await fs.lstat(temp.at('link.json'))).isSymbolicLink()).toBe(true);
    expect(await fs.readFile(temp.at('real.json'), 'utf8')).toBe('two');
    expect((await fs.stat(temp.at('real.json'))).mode & 0o777).toBe(0o640);
  });

  it('is never more open to others, on the way, than the file it replaces', async () => {
    await fs.writeFile(temp.at('den.room.json'), 'one', { mode: 0o600 });
    const modes: number[] = [];
    const open: FileSteps['open'] = async (file, flags, mode) => {
      const handle = await fs.open(file, flags, mode);
      if (flags === 'wx') modes.push((await handle.stat()).mode & 0o777);
      return handle;
    };
    await writeAtomically(temp.at('den.room.json'), 'two', { steps: stepsWith({ open }) });
    expect(modes).toEqual([0o600]);
    expect((await fs.stat(temp.at('den.room.json'))).mode & 0o777).toBe(0o600);
  });

  it('sweeps what killed writes have left an hour ago, and nothing else', async () => {
    const old = new Date(Date.now() - 2 * 60 * 60 * 1000);
    const names = {
      left: '.roomwright-0123456789abcdef.tmp',
      fresh: '.roomwright-fedcba9876543210.tmp',
      others: ['.roomwright-notes.tmp', 'den.tmp'],
    };
    for (const name of [names.left, names.fresh, ...names.others]) {
      await fs.writeFile(temp.at(name), 'x');
      if (name !== names.fresh) await fs.utimes(temp.at(name), old, old);
    }
    await writeAtomically(temp.at('den.room.json'), 'one');
    expect((await fs.readdir(temp.at())).sort()).toEqual(
      [names.fresh, ...names.others, 'den.room.json'].sort(),
    );
  });

  it('lets writes to one file follow one another in order', async () => {
    const file = temp.at('den.room.json');
    const texts = Array.from({ length: 8 }, (_, n) => `version ${n}`);
    await Promise.all(texts.map((text) => writeAtomically(file, text, { backup: true })));
    expect(await fs.readFile(file, 'utf8')).toBe('version 7');
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('version 6');
  });

  it('goes on after a rename that fails in passing', async () => {
    let failures = 2;
    const rename: FileSteps['rename'] = (from, to) =>
      failures-- > 0 ? failing('EPERM')() : fs.rename(from, to);
    await writeAtomically(temp.at('den.room.json'), 'one', { steps: stepsWith({ rename }) });
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('one');
  });
});

describe('a write that fails', () => {
  /** A handle that takes a part of the content and then reports a full disk. */
  const openOnFullDisk: FileSteps['open'] = async (file, flags) => {
    const handle = await fs.open(file, flags);
    handle.writeFile = async () => {
      await handle.write('hal');
      return failing('ENOSPC')();
    };
    return handle;
  };

  const stepFailures: readonly (readonly [string, Partial<FileSteps>])[] = [
    ['opening the temporary file', { open: failing('EACCES') }],
    ['writing on a full disk', { open: openOnFullDisk }],
    ['setting the permissions', { chmod: failing('EPERM') }],
    ['copying the previous version', { copyFile: failing('ENOSPC') }],
    ['renaming', { rename: failing('EIO') }],
  ];

  it.each(stepFailures)('at %s leaves the file and its backup as they were', async (_step, bad) => {
    const file = temp.at('den.room.json');
    for (const text of ['one', 'two']) await writeAtomically(file, text, { backup: true });
    const write = writeAtomically(file, 'three', { backup: true, steps: stepsWith(bad) });
    await expect(write).rejects.toThrow();
    expect(await fs.readFile(file, 'utf8')).toBe('two');
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('one');
    expect((await fs.readdir(temp.at())).sort()).toEqual(['den.room.json', 'den.room.json.bak']);
  });

  it('at the last step of all leaves the file, and a backup that is the last good version', async () => {
    const file = temp.at('den.room.json');
    for (const text of ['one', 'two']) await writeAtomically(file, text, { backup: true });
    const rename: FileSteps['rename'] = (from, to) =>
      to === file ? failing('EIO')() : fs.rename(from, to);
    const write = writeAtomically(file, 'three', { backup: true, steps: stepsWith({ rename }) });
    await expect(write).rejects.toThrow('EIO');
    expect(await fs.readFile(file, 'utf8')).toBe('two');
    expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('two');
    expect((await fs.readdir(temp.at())).sort()).toEqual(['den.room.json', 'den.room.json.bak']);
  });

  it('does not hold up the next write to the same file', async () => {
    const file = temp.at('den.room.json');
    const bad = writeAtomically(file, 'bad', { steps: stepsWith({ rename: failing('EIO') }) });
    const good = writeAtomically(file, 'good');
    await expect(bad).rejects.toThrow('EIO');
    await good;
    expect(await fs.readFile(file, 'utf8')).toBe('good');
  });

  it('refuses a file that its owner marked read-only', async () => {
    const file = temp.at('den.room.json');
    await fs.writeFile(file, 'one');
    const steps = stepsWith({ access: failing('EACCES') });
    await expect(writeAtomically(file, 'two', { steps })).rejects.toBeInstanceOf(ReadOnlyFileError);
    expect(await fs.readFile(file, 'utf8')).toBe('one');
  });
});
