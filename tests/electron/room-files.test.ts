import * as fs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { AutosaveFile } from '../../electron/main/autosave-file';
import { PathTokens } from '../../electron/main/path-tokens';
import { RecentFiles } from '../../electron/main/recent-files';
import { RoomFiles, type FileQuestions } from '../../electron/main/room-files';
import { saveFailure } from '../../electron/files/file-sentences';
import { ReadOnlyFileError } from '../../electron/files/temporary';
import {
  type AutosaveRecord,
  type HostOutcome,
  type KeptRoom,
  type SaveOutcome,
} from '../../renderer/host/host';
import { MAX_ROOM_BYTES } from '../../core/room/read-json';
import { freshFolder } from './support/temp-folder';

const temp = freshFolder();

/** The room files of one run of the program, with what the person answers. */
function aRun(answers: Partial<FileQuestions> = {}): RoomFiles {
  const tokens = new PathTokens();
  return new RoomFiles({
    tokens,
    recents: new RecentFiles(temp.at('recent-rooms.json')),
    autosave: new AutosaveFile(temp.at('autosave.json'), tokens),
    ask: {
      roomToOpen: () => Promise.resolve(null),
      placeForRoom: () => Promise.resolve(null),
      writeOverChanged: () => Promise.reject(new Error('nobody was to be asked')),
      ...answers,
    },
  });
}

const opening = (file: string) => ({ roomToOpen: () => Promise.resolve(file) });
const savingAt = (file: string) => ({ placeForRoom: () => Promise.resolve(file) });

function done<T>(outcome: HostOutcome<T> | Extract<SaveOutcome, { kind: 'changed' }>): T {
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

describe('opening a room', () => {
  it('gives name, text and a token that tells nothing of the place', async () => {
    await fs.writeFile(temp.at('den.room.json'), '\uFEFF{"größe": 1}');
    const opened = done(await aRun(opening(temp.at('den.room.json'))).open());
    expect(opened.name).toBe('den.room.json');
    expect(opened.text).toBe('{"größe": 1}');
    expect(opened.token).toMatch(/^[A-Za-z0-9_-]{16,64}$/);
  });

  it('is cancelled where the person calls it off', async () => {
    expect(await aRun().open()).toEqual({ kind: 'cancelled' });
  });

  it('refuses a file over the limit, and opens one at the limit', async () => {
    await fs.writeFile(temp.at('video.json'), '');
    await fs.truncate(temp.at('video.json'), MAX_ROOM_BYTES + 1);
    expect(await aRun(opening(temp.at('video.json'))).open()).toEqual({
      kind: 'failed',
      sentence:
        'Could not open "video.json": it has 5.1 MB and a room file has 5 MB at most. ' +
        'Choose a room file (.room.json).',
    });
    await fs.truncate(temp.at('video.json'), MAX_ROOM_BYTES);
    expect((await aRun(opening(temp.at('video.json'))).open()).kind).toBe('done');
  });

  it.each([
    ['bytes that are no text', Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), /not UTF-8 text/],
    ['a folder', null, /not a file|a folder/],
  ])('refuses %s with a sentence', async (_what, bytes, sentence) => {
    if (bytes === null) await fs.mkdir(temp.at('x.room.json'));
    else await fs.writeFile(temp.at('x.room.json'), bytes);
    const outcome = await aRun(opening(temp.at('x.room.json'))).open();
    expect(outcome).toMatchObject({
      kind: 'failed',
      sentence: expect.stringMatching(sentence) as string,
    });
  });

  it('forgets a recent file that is gone', async () => {
    await fs.writeFile(temp.at('den.room.json'), '{}');
    const files = aRun(opening(temp.at('den.room.json')));
    const { token } = done(await files.open());
    await fs.rm(temp.at('den.room.json'));
    const outcome = await files.reopen(token ?? '');
    expect(outcome).toMatchObject({
      kind: 'failed',
      sentence: expect.stringContaining('no such file') as string,
    });
    expect(await files.recent()).toEqual([]);
  });

  it('knows no file that was not chosen', async () => {
    expect((await aRun().reopen(temp.at('den.room.json'))).kind).toBe('failed');
    expect((await aRun().save('{}', 'den', temp.at('den.room.json'))).kind).toBe('failed');
    expect(await fs.readdir(temp.at())).toEqual([]);
  });
});

describe('saving a room', () => {
  it('asks for a place once, writes there again by the token, and keeps the version before', async () => {
    let offered = '';
    const files = aRun({
      placeForRoom: (name) => {
        offered = name;
        return Promise.resolve(temp.at('den.room.json'));
      },
    });
    const saved = done(await files.save('one', 'Den: the "new" one', null));
    expect(offered).toBe('Den- the -new- one.room.json');
    expect(done(await files.save('two', 'Den', saved.token)).token).toBe(saved.token);
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('two');
    expect(await fs.readFile(temp.at('den.room.json.bak'), 'utf8')).toBe('one');
  });

  it('adds the ending where the person left it out, and then replaces nothing unasked', async () => {
    const saved = done(await aRun(savingAt(temp.at('den'))).save('one', 'den', null));
    expect(saved.name).toBe('den.room.json');
    const asked: string[] = [];
    const refusing = aRun({
      ...savingAt(temp.at('den')),
      writeOverChanged: (name) => {
        asked.push(name);
        return Promise.resolve(false);
      },
    });
    expect((await refusing.save('two', 'den', null)).kind).toBe('cancelled');
    expect(asked).toEqual(['den.room.json']);
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('one');
  });

  it.each([true, false])(
    'asks before it writes over what another program changed (answer: %s)',
    async (yes) => {
      const file = temp.at('den.room.json');
      await fs.writeFile(file, 'one');
      const files = aRun({ ...opening(file), writeOverChanged: () => Promise.resolve(yes) });
      const { token } = done(await files.open());
      await fs.writeFile(file, 'from elsewhere');
      expect((await files.save('two', 'den', token)).kind).toBe(yes ? 'done' : 'cancelled');
      expect(await fs.readFile(file, 'utf8')).toBe(yes ? 'two' : 'from elsewhere');
      if (yes) expect(await fs.readFile(`${file}.bak`, 'utf8')).toBe('from elsewhere');
    },
  );

  it('says what to do where the folder is gone', async () => {
    const outcome = await aRun(savingAt(temp.at('gone', 'den.room.json'))).save('{}', 'den', null);
    expect(outcome).toEqual({
      kind: 'failed',
      sentence:
        'Could not save "den.room.json": its folder is no longer there. ' +
        'Choose another place with Save as.',
    });
  });

  it('says what to do for each usual failure', () => {
    const say = (code: string): string =>
      saveFailure('/rooms/den.room.json', Object.assign(new Error(code), { code }), 'Use Save as.');
    expect(say('EROFS')).toBe(
      'Could not save "den.room.json": the folder is read-only. Use Save as.',
    );
    expect(say('ENOSPC')).toContain('the disk is full');
    expect(say('EWEIRD')).toContain('EWEIRD');
    expect(saveFailure('/rooms/den.room.json', new ReadOnlyFileError('x'), 'Use Save as.')).toBe(
      'Could not save "den.room.json": the file is read-only. Use Save as.',
    );
  });

  it('does not write what could not be opened again', async () => {
    const outcome = await aRun(savingAt(temp.at('den.room.json'))).save(
      'x'.repeat(MAX_ROOM_BYTES + 1),
      'den',
      null,
    );
    expect(outcome.kind).toBe('failed');
    expect(await fs.readdir(temp.at())).toEqual([]);
  });
});

describe('what is kept between runs', () => {
  it('lists recent rooms, newest first, each once, with tokens of this run', async () => {
    for (const name of ['a.json', 'b.json', 'a.json']) {
      await aRun(savingAt(temp.at(name))).save('{}', name, null);
    }
    const later = aRun();
    const recent = await later.recent();
    expect(recent.map((file) => file.name)).toEqual(['a.json', 'b.json']);
    const reopened = done(await later.reopen(recent[0]?.token ?? ''));
    expect(reopened).toMatchObject({ name: 'a.json', text: '{}', token: recent[0]?.token });
  });

  it('keeps ten recent rooms, and takes a broken list for none', async () => {
    const list = new RecentFiles(temp.at('recent-rooms.json'));
    for (let n = 0; n < 13; n += 1) await list.add(`/rooms/${n}.json`);
    const kept = await new RecentFiles(temp.at('recent-rooms.json')).list();
    expect(kept).toHaveLength(10);
    expect(kept[0]).toBe('/rooms/12.json');
    await fs.writeFile(temp.at('recent-rooms.json'), '{"version": 1, "pat');
    expect(await new RecentFiles(temp.at('recent-rooms.json')).list()).toEqual([]);
  });

  const ROOM =
    '{"format":"roomwright-room","version":1,"room":{"size":{"width":4,"length":5,"height":3}}}';
  const roomOf = (room: Partial<KeptRoom>): KeptRoom => ({
    text: ROOM,
    name: 'den.room.json',
    token: null,
    stamp: null,
    ...room,
  });
  const recordOf = (room: Partial<AutosaveRecord> = {}): AutosaveRecord => ({
    ...roomOf({}),
    savedAtMs: 5,
    unsaved: true,
    before: null,
    ...room,
  });

  it('gives the work at hand back, with a new token for the same file', async () => {
    const first = aRun(savingAt(temp.at('den.room.json')));
    const { token, stamp } = done(await first.save('{}', 'den', null));
    const record = recordOf();
    expect(await first.keepAutosave({ ...record, token, stamp })).toMatchObject({ kind: 'done' });

    const second = aRun();
    const { record: kept } = await second.readAutosave();
    expect(kept).toMatchObject({ ...record, token: expect.any(String) as string, stamp });
    expect(kept?.token).not.toBe(token);
    const options = { stamp: kept?.stamp ?? null, replace: false };
    const saved = await second.save('{"a":1}', 'den', kept?.token ?? null, options);
    expect(saved.kind).toBe('done');
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('{"a":1}');
  });

  it('asks at the first save after a restart where the file was changed meanwhile', async () => {
    const first = aRun(savingAt(temp.at('den.room.json')));
    const { token, stamp } = done(await first.save('{}', 'den', null));
    await first.keepAutosave(recordOf({ token, stamp }));
    await fs.writeFile(temp.at('den.room.json'), 'from elsewhere');
    const asked: string[] = [];
    const second = aRun({
      writeOverChanged: (name) => {
        asked.push(name);
        return Promise.resolve(false);
      },
    });
    const { record } = await second.readAutosave();
    const options = { stamp: record?.stamp ?? null, replace: false };
    expect((await second.save(ROOM, 'den', record?.token ?? null, options)).kind).toBe('cancelled');
    expect(asked).toEqual(['den.room.json']);
    expect(await fs.readFile(temp.at('den.room.json'), 'utf8')).toBe('from elsewhere');
  });

  it('has no work at hand at first', async () => {
    expect(await aRun().readAutosave()).toEqual({ record: null, unreadable: [] });
  });

  it('puts what cannot be read aside, and writes nothing over it until it is forgotten', async () => {
    await fs.writeFile(temp.at('autosave.json'), 'half of some');
    const first = await aRun().readAutosave();
    expect(first).toMatchObject({ record: null, unreadable: [{ text: 'half of some' }] });
    await aRun().keepAutosave(recordOf());
    const again = await aRun().readAutosave();
    expect(again).toEqual({ record: recordOf(), unreadable: first.unreadable });
    await aRun().forgetUnreadable(first.unreadable[0]?.id ?? '');
    expect((await aRun().readAutosave()).unreadable).toEqual([]);
  });

  it.each([
    ['the room at hand', { text: '{"half":', before: roomOf({ name: 'loft' }) }, 'loft'],
    ['the room before it', { before: roomOf({ name: 'loft', text: '{"half":' }) }, 'den.room.json'],
  ])('saves the other where %s does not open', async (_, parts, name) => {
    const record = recordOf(parts);
    await aRun().keepAutosave(record);
    for (let start = 0; start < 2; start += 1) {
      const found = await aRun().readAutosave();
      expect(found.record).toMatchObject({ name, text: ROOM, before: null });
      expect(found.unreadable).toMatchObject([{ text: '{"half":' }]);
    }
  });

  it('forgets no file but those that were put aside', async () => {
    await aRun().keepAutosave(recordOf());
    await aRun().forgetUnreadable('autosave.json');
    expect((await aRun().readAutosave()).record).toEqual(recordOf());
  });

  it('says so where it cannot be kept', async () => {
    const nowhere = new AutosaveFile(temp.at('gone', 'autosave.json'), new PathTokens());
    expect(await nowhere.keep(recordOf())).toMatchObject({
      kind: 'failed',
      sentence: expect.stringContaining('Save the room to a file') as string,
    });
  });
});
