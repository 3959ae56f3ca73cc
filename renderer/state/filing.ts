/** Opening, saving, keeping and recovering the room, by way of the host. */

import type { StoreApi } from 'zustand';
import { openRoom, saveRoom, type Fault } from '../../core/room/open-room';
import type { Project } from '../../core/room/project';
import type { Host, HostOutcome, KeptRoom, MenuCommand, OpenedFile } from '../host/host';
import { bareRoom, EXAMPLES, exampleRoom, type ExampleId } from './examples';
import { fileOf, isUnsaved, projectOf, type Session } from './session';
import { hasUnsaved, type WorkState } from './work';

export interface Filing {
  readonly edition: Host['edition'];
  /** Bring back unsaved work, then keep it up to date; listens to the desktop menu. */
  readonly start: () => Promise<void>;
  readonly newRoom: () => void;
  readonly openExample: (id: ExampleId) => void;
  readonly open: () => Promise<void>;
  readonly save: () => Promise<void>;
  readonly saveAs: () => Promise<void>;
  readonly print: () => Promise<void>;
}

const KEEP_AFTER_MS = 400;
const SHOWN_FAULTS = 6;

/** `room.size.width: must be ...` lines of at most six faults. */
export function faultLines(faults: readonly Fault[]): readonly string[] {
  const shown = faults
    .slice(0, SHOWN_FAULTS)
    .map((fault) => (fault.path === '' ? fault.sentence : `${fault.path}: ${fault.sentence}`));
  const more = faults.length - shown.length;
  return more > 0 ? [...shown, `and ${more} more`] : shown;
}

const keptRoom = ({ project, file }: WorkState): KeptRoom => ({
  text: saveRoom(project),
  name: file.name,
  token: file.token,
});

const workOf = (project: Project, { name, token }: KeptRoom, saved: boolean): WorkState => ({
  project,
  file: { name, token, saved: saved ? project : null },
});

export function createFiling(
  host: Host,
  store: Pick<StoreApi<Session>, 'getState' | 'subscribe'>,
  /** Prepares the sheet for paper around a print. */
  onPaper: <T>(print: () => Promise<T>) => Promise<T>,
): Filing {
  const session = (): Session => store.getState();

  const failed = (title: string, sentence: string): void =>
    session().notify({ tone: 'bad', title, lines: [sentence] });

  const take = (outcome: HostOutcome<OpenedFile>): void => {
    if (outcome.kind === 'cancelled') return;
    if (outcome.kind === 'failed') {
      failed('The file was not opened', outcome.sentence);
      return;
    }
    const { name, text, token } = outcome.value;
    const opened = openRoom(text);
    if (!opened.ok) {
      session().notify({
        tone: 'bad',
        title: `"${name}" was not opened; your room is untouched`,
        lines: faultLines(opened.faults),
      });
      return;
    }
    session().notify(null);
    session().load(
      { project: opened.project, file: { name, token, saved: opened.project } },
      `open ${name}`,
    );
  };

  const write = async (askPlace: boolean): Promise<void> => {
    const project = projectOf(session());
    const file = fileOf(session());
    const outcome = await host.save(saveRoom(project), file.name, askPlace ? null : file.token);
    if (outcome.kind === 'failed') failed('The room was not saved', outcome.sentence);
    if (outcome.kind !== 'done') return;
    session().markSaved({ ...outcome.value, saved: project });
    session().notify({ tone: 'good', title: `Saved as ${outcome.value.name}`, lines: [] });
    await keep();
  };

  const keep = (): Promise<void> => {
    const { past, present } = session().work;
    const { file } = present.state;
    const before = past.findLast(({ state }) => state.file !== file && hasUnsaved(state));
    return host.keepAutosave({
      ...keptRoom(present.state),
      savedAtMs: Date.now(),
      unsaved: isUnsaved(session()),
      before: before ? keptRoom(before.state) : null,
    });
  };

  const recover = async (): Promise<void> => {
    const kept = await host.readAutosave();
    if (!kept) return;
    const opened = openRoom(kept.text);
    if (!opened.ok) {
      session().notify({
        tone: 'bad',
        title: 'The kept work could not be read; here is the example room instead',
        lines: faultLines(opened.faults),
      });
      return;
    }
    session().restore(workOf(opened.project, kept, !kept.unsaved), replaced(kept.before));
    if (kept.unsaved) {
      session().notify({
        tone: 'good',
        title: `Your unsaved work on ${kept.name} is back`,
        lines: [`It was kept on ${new Date(kept.savedAtMs).toLocaleString()}.`],
      });
    }
  };

  /** Unsaved work that the kept room had replaced, where it can still be read. */
  const replaced = (before: KeptRoom | null): WorkState | null => {
    const opened = before && openRoom(before.text);
    return before && opened?.ok ? workOf(opened.project, before, false) : null;
  };

  const watch = (): void => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const flush = (): void => {
      clearTimeout(timer);
      void keep();
    };
    store.subscribe((now, before) => {
      if (now.work.present === before.work.present) return;
      clearTimeout(timer);
      timer = setTimeout(flush, KEEP_AFTER_MS);
    });
    window.addEventListener('pagehide', flush);
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') flush();
    });
  };

  const filing: Filing = {
    edition: host.edition,
    start: async () => {
      host.onMenuCommand((command) => runCommand(command));
      await recover();
      watch();
    },
    newRoom: () => session().load(bareRoom(), 'new room'),
    openExample: (id) => {
      const title = EXAMPLES.find((example) => example.id === id)?.title ?? id;
      session().load(exampleRoom(id), `example ${title}`);
    },
    open: async () => take(await host.open()),
    save: () => write(false),
    saveAs: () => write(true),
    print: async () => {
      const outcome = await onPaper(() => host.print());
      if (outcome.kind === 'failed') failed('The sheet was not printed', outcome.sentence);
    },
  };

  const runCommand = (command: MenuCommand): void => {
    const actions: Readonly<Record<MenuCommand, () => unknown>> = {
      new: filing.newRoom,
      open: filing.open,
      save: filing.save,
      'save-as': filing.saveAs,
      undo: session().undo,
      redo: session().redo,
      print: filing.print,
    };
    actions[command]();
  };

  return filing;
}
