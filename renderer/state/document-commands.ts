/** Opening, saving, keeping and recovering the room, by way of the host. */

import type { StoreApi } from 'zustand';
import { openRoom } from '../../core/room/open-room';
import type { Project } from '../../core/room/project';
import { readBack } from '../../core/room/read-back';
import type { Host, HostOutcome, KeptRoom, MenuCommand, OpenedFile } from '../host/host';
import { bareRoom, EXAMPLES, exampleRoom, type ExampleId } from './examples';
import { faultLines } from './fault-lines';
import { createAutosave } from './autosave';
import { fileOf, projectOf, type Session } from './session';
import type { DocumentState } from './document';

export interface DocumentCommands {
  readonly edition: Host['edition'];
  /** Bring back unsaved work, then keep it up to date; listens to the desktop menu. */
  readonly start: () => Promise<void>;
  readonly newRoom: () => void;
  readonly openExample: (id: ExampleId) => void;
  readonly open: () => Promise<void>;
  /** Open the file that was dropped on the window; to be called while the event is handled. */
  readonly openDropped: (dropped: DataTransfer) => Promise<void>;
  readonly save: () => Promise<void>;
  readonly saveAs: () => Promise<void>;
  readonly print: () => Promise<void>;
}

/** Where a room could not be read: the text itself can be put into a file. */
const SAVE_AS_IS = 'Save it as it is';

const documentOf = (
  project: Project,
  { name, token, stamp }: KeptRoom,
  saved: boolean,
): DocumentState => ({
  project,
  file: { name, token, stamp, saved: saved ? project : null },
});

export function createDocumentCommands(
  host: Host,
  store: Pick<StoreApi<Session>, 'getState' | 'subscribe'>,
  /** Prepares the sheet for paper around a print. */
  onPaper: <T>(print: () => Promise<T>) => Promise<T>,
): DocumentCommands {
  const session = (): Session => store.getState();
  const { keep, watch } = createAutosave(host, store);

  const failed = (title: string, sentence: string): void =>
    session().notify({ tone: 'bad', title, lines: [sentence] });

  const take = (outcome: HostOutcome<OpenedFile>): void => {
    if (outcome.kind === 'cancelled') return;
    if (outcome.kind === 'failed') {
      failed('The file was not opened', outcome.sentence);
      return;
    }
    const { name, text, token, stamp } = outcome.value;
    const opened = openRoom(text);
    if (!opened.ok) {
      session().notify({
        tone: 'bad',
        title: `"${name}" was not opened; your room is untouched`,
        lines: faultLines(opened.faults),
        actions: [{ label: SAVE_AS_IS, run: () => saveAsIs(text, name) }],
      });
      return;
    }
    session().notify(null);
    session().load(
      { project: opened.project, file: { name, token, stamp, saved: opened.project } },
      `open ${name}`,
    );
  };

  /** Put a text that no reader understands into a file, unchanged. True where it is there. */
  const saveAsIs = async (text: string, name: string): Promise<boolean> => {
    const outcome = await host.save(text, name, null);
    if (outcome.kind === 'failed') failed('The text was not saved', outcome.sentence);
    if (outcome.kind !== 'done') return false;
    session().notify({ tone: 'good', title: `Saved as it is: ${outcome.value.name}`, lines: [] });
    return true;
  };

  const write = async (askPlace: boolean, replace = false): Promise<void> => {
    const project = projectOf(session());
    const file = fileOf(session());
    const back = readBack(project);
    if (!back.ok) {
      session().notify({
        tone: 'bad',
        title: 'The room was not saved: it could not be opened again',
        lines: [...faultLines(back.faults), 'Undo the last change, then save again.'],
        actions: [{ label: SAVE_AS_IS, run: () => saveAsIs(back.text, file.name) }],
      });
      return;
    }
    const token = askPlace ? null : file.token;
    const options = { stamp: file.stamp ?? null, replace };
    const outcome = await host.save(back.text, file.name, token, options);
    if (outcome.kind === 'failed') failed('The room was not saved', outcome.sentence);
    if (outcome.kind === 'changed') {
      session().notify({
        tone: 'bad',
        title: `"${file.name}" was not saved: it was changed elsewhere since it was opened here`,
        lines: ['What is in the file now is lost if you replace it.'],
        actions: [
          { label: 'Save as another file', run: () => write(true) },
          { label: 'Replace it', run: () => write(false, true) },
        ],
      });
    }
    if (outcome.kind !== 'done') return;
    session().markSaved({ ...outcome.value, saved: project }, file);
    session().notify({ tone: 'good', title: `Saved as ${outcome.value.name}`, lines: [] });
    await keep();
  };

  const recover = async (): Promise<void> => {
    const { record, unreadable } = await host.readAutosave();
    const opened = record && openRoom(record.text);
    const back = record?.unsaved && opened?.ok ? record : null;
    if (record && opened?.ok)
      session().restore(
        documentOf(opened.project, record, !record.unsaved),
        replaced(record.before),
      );
    const backTitle = `Your unsaved work on ${back?.name ?? ''} is back`;
    if (unreadable.length > 0) {
      session().notify({
        tone: 'bad',
        title: `Kept work could not be read: ${unreadable.map(({ name }) => name).join(', ')}`,
        lines: [
          ...unreadable.flatMap(({ text }) => {
            const read = openRoom(text);
            return read.ok ? [] : faultLines(read.faults);
          }),
          'Nothing of it is lost: its text can be saved to a file as it is.',
          ...(back ? [`${backTitle}.`] : []),
        ],
        actions: unreadable.map(({ id, name, text }) => ({
          label: unreadable.length > 1 ? `${SAVE_AS_IS}: ${name}` : SAVE_AS_IS,
          run: async () => {
            if (await saveAsIs(text, name)) await host.forgetUnreadable(id);
          },
        })),
      });
    } else if (back) {
      session().notify({
        tone: 'good',
        title: backTitle,
        lines: [`It was kept on ${new Date(back.savedAtMs).toLocaleString()}.`],
      });
    }
  };

  /** Unsaved work that the kept room had replaced, where it can still be read. */
  const replaced = (before: KeptRoom | null): DocumentState | null => {
    const opened = before && openRoom(before.text);
    return before && opened?.ok ? documentOf(opened.project, before, false) : null;
  };

  const commands: DocumentCommands = {
    edition: host.edition,
    start: async () => {
      host.onMenuCommand((command) => runCommand(command));
      await recover();
      watch();
    },
    newRoom: () => session().load(bareRoom(session().units), 'new room'),
    openExample: (id) => {
      const title = EXAMPLES.find((example) => example.id === id)?.title ?? id;
      session().load(exampleRoom(id, session().units), `example ${title}`);
    },
    open: async () => take(await host.open()),
    openDropped: async (dropped) => take(await host.openDropped(dropped)),
    save: () => write(false),
    saveAs: () => write(true),
    print: async () => {
      const outcome = await onPaper(() => host.print());
      if (outcome.kind === 'failed') failed('The sheet was not printed', outcome.sentence);
    },
  };

  const runCommand = (command: MenuCommand): void => {
    const actions: Readonly<Record<MenuCommand, () => unknown>> = {
      new: commands.newRoom,
      open: commands.open,
      save: commands.save,
      'save-as': commands.saveAs,
      undo: session().undo,
      redo: session().redo,
      print: commands.print,
    };
    actions[command]();
  };

  return commands;
}
