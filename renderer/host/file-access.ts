/**
 * The File System Access functions as far as they are used here. The pickers and the permission
 * questions are missing from the language's own DOM types, and from some browsers.
 */

interface PickerType {
  readonly description: string;
  readonly accept: Readonly<Record<string, readonly string[]>>;
}

export interface FileAccess {
  showOpenFilePicker(options: {
    readonly multiple: false;
    readonly types: readonly PickerType[];
  }): Promise<readonly FileSystemFileHandle[]>;
  showSaveFilePicker(options: {
    readonly suggestedName: string;
    readonly types?: readonly PickerType[];
  }): Promise<FileSystemFileHandle>;
}

type AccessMode = { readonly mode: 'read' | 'readwrite' };

interface AskableHandle {
  queryPermission?(descriptor: AccessMode): Promise<PermissionState>;
  requestPermission?(descriptor: AccessMode): Promise<PermissionState>;
}

export const ROOM_FILES: PickerType = {
  description: 'Rooms',
  accept: { 'application/json': ['.json'] },
};

/** The browser's pickers, or null where it has none. */
export function fileAccess(): FileAccess | null {
  return 'showOpenFilePicker' in window && 'showSaveFilePicker' in window
    ? (window as unknown as FileAccess)
    : null;
}

/** Whether the file may be used; the browser asks the person where it has not done so since it was loaded. */
export async function mayUse(
  handle: FileSystemFileHandle,
  mode: AccessMode['mode'],
): Promise<boolean> {
  const askable: AskableHandle = handle as AskableHandle;
  const state = await askable.queryPermission?.({ mode });
  if (state === undefined || state === 'granted') return true;
  return (await askable.requestPermission?.({ mode })) === 'granted';
}

/** Replace the file's content: the browser writes beside it and swaps on closing. */
export async function writeHandle(
  handle: FileSystemFileHandle,
  content: string | Uint8Array<ArrayBuffer>,
): Promise<void> {
  const writable = await handle.createWritable();
  try {
    await writable.write(content);
    await writable.close();
  } catch (error) {
    await writable.abort().catch(() => undefined);
    throw error;
  }
}

/** Pickers report by this error that the person called them off. */
export function isAbort(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}
