import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openRoom, saveRoom } from '../../../core/room/open-room';
import type {
  AutosaveRecord,
  Host,
  HostOutcome,
  KeptWork,
  OpenedFile,
  SaveOutcome,
} from '../../../renderer/host/host';
import type { DocumentCommands } from '../../../renderer/state/document-commands';
import type { Session } from '../../../renderer/state/session';
import { exampleText } from '../support/rooms';
import { stubPage, type StubbedPage } from './support/window-stubs';

type Save = Parameters<Host['save']>;

/** A host that remembers what it was asked, and answers as it is told. */
class ToldHost implements Host {
  readonly edition = 'browser';
  readonly kept: AutosaveRecord[] = [];
  readonly saves: Save[] = [];
  readonly forgotten: string[] = [];
  keeping: HostOutcome<null> = { kind: 'done', value: null };
  opening: HostOutcome<OpenedFile> = { kind: 'cancelled' };
  saving: SaveOutcome = {
    kind: 'done',
    value: { name: 'den.room.json', token: 'token', stamp: { modifiedMs: 1, sizeBytes: 2 } },
  };
  found: KeptWork = { record: null, unreadable: [] };

  open = () => Promise.resolve(this.opening);
  reopen = () => Promise.resolve(this.opening);
  openDropped = () => Promise.resolve(this.opening);
  save = (...asked: Save) => {
    this.saves.push(asked);
    return Promise.resolve(this.saving);
  };
  exportBytes = () => Promise.resolve({ kind: 'cancelled' } as const);
  openData = () => Promise.resolve({ kind: 'cancelled' } as const);
  recent = () => Promise.resolve([]);
  print = () => Promise.resolve({ kind: 'done', value: null } as const);
  keepAutosave = (record: AutosaveRecord) => {
    this.kept.push(record);
    return Promise.resolve(this.keeping);
  };
  readAutosave = () => Promise.resolve(this.found);
  forgetUnreadable = (id: string) => {
    this.forgotten.push(id);
    return Promise.resolve();
  };
  onMenuCommand = () => () => undefined;
}

let page: StubbedPage;
let host: ToldHost;
let commands: DocumentCommands;
let session: () => Session;

beforeEach(async () => {
  vi.useFakeTimers();
  page = stubPage();
  vi.resetModules();
  const { useSession } = await import('../../../renderer/state/session');
  const { createDocumentCommands } = await import('../../../renderer/state/document-commands');
  host = new ToldHost();
  session = useSession.getState;
  commands = createDocumentCommands(host, useSession, (print) => print());
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const project = () => session().work.present.state.project;
const widen = (width: number): void =>
  session().change({ kind: 'size', size: { ...project().room.size, width } });
const press = async (label: string): Promise<void> => {
  const action = session().notice?.actions?.find((known) => known.label.startsWith(label));
  if (!action) throw new Error(`No "${label}" in ${JSON.stringify(session().notice)}`);
  await action.run();
};
const said = (): string => [session().notice?.title, ...(session().notice?.lines ?? [])].join('\n');
/** A project that no change of the window makes: a bug, or a file of tomorrow. */
const breakProject = async (): Promise<void> => {
  const { useSession } = await import('../../../renderer/state/session');
  const { work } = session();
  const broken = { ...project(), name: 'x'.repeat(200) };
  const present = { ...work.present, state: { ...work.present.state, project: broken } };
  useSession.setState({ work: { ...work, present } });
};

describe('keeping the work', () => {
  it('happens at least every two seconds while changes go on', async () => {
    await commands.start();
    for (let step = 0; step < 60; step += 1) {
      widen(3 + step / 100);
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(host.kept.length).toBeGreaterThanOrEqual(2);
    const [first] = host.kept;
    const opened = openRoom(first?.text ?? '');
    expect(opened.ok && opened.project.room.size.width).toBeCloseTo(3.2, 1);
  });

  it('waits for a pause where the hand rests soon', async () => {
    await commands.start();
    widen(3);
    await vi.advanceTimersByTimeAsync(399);
    expect(host.kept).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(2);
    expect(host.kept).toHaveLength(1);
  });

  it('that fails is said once, and then closing the page asks', async () => {
    await commands.start();
    const asks = (): boolean => {
      let asked = false;
      page.listeners.get('beforeunload')?.({ preventDefault: () => (asked = true) });
      return asked;
    };
    widen(3);
    await vi.advanceTimersByTimeAsync(500);
    expect(asks()).toBe(false);
    host.keeping = { kind: 'failed', sentence: 'The storage is full.' };
    widen(3.1);
    await vi.advanceTimersByTimeAsync(500);
    expect(said()).toMatch(/not kept[\s\S]*storage is full/);
    expect(asks()).toBe(true);
    session().notify(null);
    widen(3.2);
    await vi.advanceTimersByTimeAsync(500);
    expect(session().notice).toBeNull();
    await commands.save();
    expect(asks()).toBe(false);
  });

  it('leaves what was kept alone where the room could not be opened again, and says so', async () => {
    await commands.start();
    widen(3);
    await vi.advanceTimersByTimeAsync(500);
    await breakProject();
    await vi.advanceTimersByTimeAsync(500);
    expect(host.kept).toHaveLength(1);
    expect(said()).toMatch(/could not be opened again[\s\S]*name: must be/);
  });
});

describe('saving', () => {
  it('writes nothing that the reader refuses, says where, and offers the text as it is', async () => {
    await breakProject();
    await commands.save();
    expect(host.saves).toHaveLength(0);
    expect(said()).toMatch(/not saved[\s\S]*name: must be text of at most 120/);
    await press('Save it as it is');
    expect(host.saves).toEqual([[saveRoom(project()), 'basement-bay.room.json', null]]);
  });

  it('asks where the file was changed elsewhere, and replaces it only when told to', async () => {
    const saved = host.saving;
    await commands.save();
    widen(3);
    host.saving = { kind: 'changed' };
    await commands.save();
    expect(host.saves[1]?.slice(2)).toEqual([
      'token',
      { stamp: { modifiedMs: 1, sizeBytes: 2 }, replace: false },
    ]);
    expect(said()).toMatch(/changed elsewhere/);
    host.saving = saved;
    await press('Replace it');
    expect(host.saves[2]?.[3]).toMatchObject({ replace: true });
    expect(said()).toMatch(/Saved as den/);
  });

  it('that ends after another room was opened marks the room that was saved', async () => {
    const { bareRoom } = await import('../../../renderer/state/examples');
    const saving = commands.save();
    session().load(bareRoom('metric'), 'new room');
    await saving;
    expect(session().work.present.state.file.name).toBe('new.room.json');
    expect(session().work.past.at(-1)?.state.file.name).toBe('den.room.json');
  });
});

describe('a file that cannot be read', () => {
  const broken = exampleText('basement-bay').replace('"width": 4.2', '"width": "wide"');

  it('leaves the room alone, says where it is wrong, and can be saved as it is', async () => {
    const before = project();
    const value = { name: 'den.room.json', text: broken, token: 'token', stamp: null };
    host.opening = { kind: 'done', value };
    await commands.open();
    expect(project()).toBe(before);
    expect(said()).toMatch(/room\.size\.width: must be/);
    await press('Save it as it is');
    expect(host.saves).toEqual([[broken, 'den.room.json', null]]);
  });

  it('dropped on the window, is told of in the same way; a good one opens over undo', async () => {
    const good = {
      name: 'den.room.json',
      text: exampleText('long-room'),
      token: null,
      stamp: null,
    };
    host.opening = { kind: 'done', value: good };
    const before = project();
    await commands.openDropped({} as DataTransfer);
    expect(project().room.size.width).toBe(3.6);
    session().undo();
    expect(project()).toBe(before);
  });

  it('as kept work, is offered at the start beside the work that can be, and forgotten once saved', async () => {
    const text = exampleText('long-room');
    host.found = {
      record: {
        text,
        name: 'long.room.json',
        token: null,
        stamp: { modifiedMs: 7, sizeBytes: 8 },
        savedAtMs: 5,
        unsaved: true,
        before: null,
      },
      unreadable: [{ id: 'id-1', name: 'den.room.json', text: broken }],
    };
    await commands.start();
    expect(project().room.size.width).toBe(3.6);
    expect(session().work.present.state.file.stamp).toEqual({ modifiedMs: 7, sizeBytes: 8 });
    expect(said()).toMatch(
      /den\.room\.json[\s\S]*room\.size\.width: must be[\s\S]*long\.room\.json is back/,
    );
    host.saving = { kind: 'cancelled' };
    await press('Save it as it is');
    expect(host.forgotten).toEqual([]);
    host.saving = { kind: 'done', value: { name: 'den.room.json', token: null, stamp: null } };
    await press('Save it as it is');
    expect(host.saves.at(-1)).toEqual([broken, 'den.room.json', null]);
    expect(host.forgotten).toEqual(['id-1']);
  });
});

describe('a change that no room file can hold', () => {
  it('is not made, and told', () => {
    const before = project();
    session().change({ kind: 'name', name: 'x'.repeat(200) });
    session().change({ kind: 'finish', face: 'back', finish: 'no-such-finish' });
    session().change({ kind: 'row', id: 'row-1', change: { y: Number.NaN } });
    expect(project()).toBe(before);
    expect(said()).toMatch(/not made[\s\S]*seating\.rows\[0\]\.y/);
  });
});
