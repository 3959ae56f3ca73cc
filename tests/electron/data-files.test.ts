import * as fs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { DataFiles, type DataQuestions } from '../../electron/main/data-files';
import { DATA_KINDS } from '../../renderer/host/host';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();
const BYTES = Uint8Array.from([0, 255, 128, 10]);

const filesWith = (answers: Partial<DataQuestions>): DataFiles =>
  new DataFiles({
    placeForExport: () => Promise.resolve(null),
    dataToOpen: () => Promise.resolve(null),
    writeOverChanged: () => Promise.reject(new Error('nobody was to be asked')),
    ...answers,
  });

describe('exporting bytes', () => {
  it('writes them as they are, under a plain name that ends as its type does', async () => {
    const offered: string[] = [];
    const files = filesWith({
      placeForExport: (name) => {
        offered.push(name);
        return Promise.resolve(temp.at('plan.svg'));
      },
    });
    expect(await files.exportBytes('a/b: plan', 'image/svg+xml', BYTES)).toEqual({
      kind: 'done',
      value: 'plan.svg',
    });
    expect(offered).toEqual(['a-b- plan.svg']);
    expect(Uint8Array.from(await fs.readFile(temp.at('plan.svg')))).toEqual(BYTES);
  });

  it('gives the ending that was left out, and then asks before it replaces anything', async () => {
    await fs.writeFile(temp.at('sheet.pdf'), 'old');
    const place = { placeForExport: () => Promise.resolve(temp.at('sheet')) };
    const asked: string[] = [];
    const answer = (yes: boolean) => (name: string) => {
      asked.push(name);
      return Promise.resolve(yes);
    };
    const no = filesWith({ ...place, writeOverChanged: answer(false) });
    expect(await no.exportBytes('sheet', 'application/pdf', BYTES)).toEqual({ kind: 'cancelled' });
    expect(await fs.readFile(temp.at('sheet.pdf'), 'utf8')).toBe('old');
    const yes = filesWith({ ...place, writeOverChanged: answer(true) });
    expect((await yes.exportBytes('sheet', 'application/pdf', BYTES)).kind).toBe('done');
    expect(asked).toEqual(['sheet.pdf', 'sheet.pdf']);
    expect(await fs.readFile(temp.at('sheet.pdf.bak'), 'utf8')).toBe('old');
  });

  it('is cancelled where the person calls it off, and says why a place does not do', async () => {
    expect(await filesWith({}).exportBytes('x', 'text/csv', BYTES)).toEqual({ kind: 'cancelled' });
    const nowhere = filesWith({ placeForExport: () => Promise.resolve(temp.at('gone/x.csv')) });
    expect(await nowhere.exportBytes('x', 'text/csv', BYTES)).toMatchObject({
      kind: 'failed',
      sentence: 'Could not save "x.csv": its folder is no longer there. Choose another place.',
    });
  });
});

describe('opening data', () => {
  const opening = (file: string): DataFiles =>
    filesWith({ dataToOpen: () => Promise.resolve(temp.at(file)) });

  it('gives name and bytes as they are in the file', async () => {
    await fs.writeFile(temp.at('den.wav'), BYTES);
    expect(await opening('den.wav').openData('recording')).toEqual({
      kind: 'done',
      value: { name: 'den.wav', bytes: BYTES },
    });
    expect(await filesWith({}).openData('recording')).toEqual({ kind: 'cancelled' });
  });

  it('refuses what is over the limit of its kind, and opens what is at it', async () => {
    const { mostBytes } = DATA_KINDS['measured-decay'];
    await fs.writeFile(temp.at('long.csv'), '');
    await fs.truncate(temp.at('long.csv'), mostBytes + 1);
    expect(await opening('long.csv').openData('measured-decay')).toEqual({
      kind: 'failed',
      sentence:
        'Could not open "long.csv": a file of this kind (measured decay) has 5 MB at most. Choose a shorter one.',
    });
    await fs.truncate(temp.at('long.csv'), mostBytes);
    expect((await opening('long.csv').openData('measured-decay')).kind).toBe('done');
  });

  it('says so where there is no such file, or none that can be read', async () => {
    await fs.mkdir(temp.at('folder.wav'));
    expect(await opening('folder.wav').openData('recording')).toMatchObject({
      sentence: 'Could not open "folder.wav": it is no plain file. Choose another one.',
    });
    expect(await opening('gone.wav').openData('recording')).toMatchObject({
      sentence:
        'Could not open "gone.wav": there is no such file. It may have been moved or renamed; choose it again.',
    });
  });
});
