import { plainFileName } from '../../core/room/file-name';
import { isAbort, mayUse, ROOM_FILES, writeHandle, type FileAccess } from './file-access';
import { failed, fileText, openFailure, refusalToSave, saveFailure } from './file-text';
import type {
  FileStamp,
  FileToken,
  Host,
  HostOutcome,
  OpenedFile,
  SavedFile,
  SaveOptions,
  SaveOutcome,
} from './host';
import { openDropped } from './carried-files';
import { keepFile, keptFiles } from './recent-in-browser';

type FileFunctions = Pick<Host, 'open' | 'openDropped' | 'reopen' | 'save' | 'recent'>;

const CANCELLED = { kind: 'cancelled' } as const;

/** Files by the browser's pickers: a file that was chosen once can be written again in place. */
export function pickedFiles(access: FileAccess): FileFunctions {
  const handles = new Map<FileToken, FileSystemFileHandle>();
  /** What each file looked like when this page last read or wrote it. */
  const stamps = new Map<FileToken, FileStamp>();

  /** A handle of this visit, or of an earlier one that the browser has kept. */
  async function handleOf(token: FileToken): Promise<FileSystemFileHandle | null> {
    const here = handles.get(token);
    if (here !== undefined) return here;
    const kept = (await keptFiles()).find((file) => file.token === token)?.handle ?? null;
    if (kept !== null) handles.set(token, kept);
    return kept;
  }

  /** The same file keeps its token, so that the list of recent files shows it once. */
  async function tokenOf(handle: FileSystemFileHandle): Promise<FileToken> {
    const known = [
      ...[...handles].map(([token, other]) => ({ token, handle: other })),
      ...(await keptFiles()),
    ];
    for (const file of known) {
      if (await handle.isSameEntry(file.handle).catch(() => false)) return file.token;
    }
    return crypto.randomUUID();
  }

  async function remember(handle: FileSystemFileHandle): Promise<FileToken> {
    const token = await tokenOf(handle);
    handles.set(token, handle);
    await keepFile({ token, name: handle.name, handle });
    return token;
  }

  async function read(handle: FileSystemFileHandle): Promise<HostOutcome<OpenedFile>> {
    try {
      const file = await handle.getFile();
      const text = await fileText(file);
      if (text.kind !== 'done') return text;
      const token = await remember(handle);
      const stamp = stampOf(file);
      stamps.set(token, stamp);
      return { kind: 'done', value: { name: handle.name, text: text.value, token, stamp } };
    } catch (error) {
      return openFailure(handle.name, error);
    }
  }

  async function write(
    handle: FileSystemFileHandle,
    text: string,
  ): Promise<HostOutcome<SavedFile>> {
    try {
      if (!(await mayUse(handle, 'readwrite'))) return saveFailure(handle.name, refused());
      await writeHandle(handle, text);
      const token = await remember(handle);
      const stamp = stampOf(await handle.getFile());
      stamps.set(token, stamp);
      return { kind: 'done', value: { name: handle.name, token, stamp } };
    } catch (error) {
      return saveFailure(handle.name, error);
    }
  }

  /** In place, unless the file is not what it was when the room came from it or went to it. */
  async function writeAgain(
    handle: FileSystemFileHandle,
    token: FileToken,
    text: string,
    options: SaveOptions,
  ): Promise<SaveOutcome> {
    const known = stamps.get(token) ?? options.stamp;
    if (known !== null && !options.replace && (await isOther(handle, known)))
      return { kind: 'changed' };
    return write(handle, text);
  }

  return {
    async openDropped(dropped) {
      // Asked for at once: what was dropped can be looked at only while the event is handled.
      const handle = droppedHandle(dropped);
      const file = openDropped(dropped);
      const found = await handle;
      return found === null ? file : read(found);
    },
    async open() {
      const picked = await pick('open a file', () =>
        access.showOpenFilePicker({ multiple: false, types: [ROOM_FILES] }),
      );
      if (picked.kind !== 'done') return picked;
      const [handle] = picked.value;
      return handle === undefined ? CANCELLED : read(handle);
    },
    async reopen(token) {
      const handle = await handleOf(token);
      if (handle === null) return failed('The file is not known any more. Look for it with Open.');
      try {
        if (!(await mayUse(handle, 'read'))) return openFailure(handle.name, refused());
      } catch (error) {
        return openFailure(handle.name, error);
      }
      return read(handle);
    },
    async save(text, suggestedName, token, options = { stamp: null, replace: false }) {
      const refusal = refusalToSave(text);
      if (refusal !== null) return refusal;
      if (token !== null) {
        const known = await handleOf(token);
        if (known !== null) return writeAgain(known, token, text, options);
      }
      const picked = await pick('save the room', () =>
        access.showSaveFilePicker({
          suggestedName: plainFileName(suggestedName),
          types: [ROOM_FILES],
        }),
      );
      return picked.kind === 'done' ? write(picked.value, text) : picked;
    },
    async recent() {
      return (await keptFiles()).map(({ name, token }) => ({ name, token }));
    },
  };
}

const stampOf = (file: File): FileStamp => ({
  modifiedMs: file.lastModified,
  sizeBytes: file.size,
});

/** False where the file cannot be looked at: the writing then says why. */
async function isOther(handle: FileSystemFileHandle, known: FileStamp): Promise<boolean> {
  try {
    if (!(await mayUse(handle, 'readwrite'))) return false;
    const now = stampOf(await handle.getFile());
    return now.modifiedMs !== known.modifiedMs || now.sizeBytes !== known.sizeBytes;
  } catch {
    return false;
  }
}

/** The handle of what was dropped, so that it can be saved in place; null where the browser gives none. */
async function droppedHandle(dropped: DataTransfer): Promise<FileSystemFileHandle | null> {
  const item = dropped.items[0] as
    (DataTransferItem & { getAsFileSystemHandle?(): Promise<FileSystemHandle | null> }) | undefined;
  const found = await item?.getAsFileSystemHandle?.().catch(() => null);
  return found?.kind === 'file' ? (found as FileSystemFileHandle) : null;
}

async function pick<T>(what: string, show: () => Promise<T>): Promise<HostOutcome<T>> {
  try {
    return { kind: 'done', value: await show() };
  } catch (error) {
    if (isAbort(error)) return CANCELLED;
    const reason = error instanceof Error ? error.message : String(error);
    return failed(
      `Could not ${what}: the browser did not ask (${reason}). Try again by its button.`,
    );
  }
}

function refused(): DOMException {
  return new DOMException('permission was not given', 'NotAllowedError');
}
