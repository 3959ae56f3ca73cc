import { isAbort, mayUse, ROOM_FILES, writeHandle, type FileAccess } from './file-access';
import { failed, fileText, openFailure, refusalToSave, saveFailure } from './file-text';
import type { FileToken, Host, HostOutcome, OpenedFile, SavedFile } from './host';
import { keepFile, keptFiles } from './kept-in-browser';

type FileFunctions = Pick<Host, 'open' | 'reopen' | 'save' | 'recent'>;

const CANCELLED = { kind: 'cancelled' } as const;

/** Files by the browser's pickers: a file that was chosen once can be written again in place. */
export function pickedFiles(access: FileAccess): FileFunctions {
  const handles = new Map<FileToken, FileSystemFileHandle>();

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
      const text = await fileText(await handle.getFile());
      if (text.kind !== 'done') return text;
      const token = await remember(handle);
      return { kind: 'done', value: { name: handle.name, text: text.value, token } };
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
      return { kind: 'done', value: { name: handle.name, token: await remember(handle) } };
    } catch (error) {
      return saveFailure(handle.name, error);
    }
  }

  return {
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
    async save(text, suggestedName, token) {
      const refusal = refusalToSave(text);
      if (refusal !== null) return refusal;
      if (token !== null) {
        const known = await handleOf(token);
        if (known !== null) return write(known, text);
      }
      const picked = await pick('save the room', () =>
        access.showSaveFilePicker({ suggestedName, types: [ROOM_FILES] }),
      );
      return picked.kind === 'done' ? write(picked.value, text) : picked;
    },
    async recent() {
      return (await keptFiles()).map(({ name, token }) => ({ name, token }));
    },
  };
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
