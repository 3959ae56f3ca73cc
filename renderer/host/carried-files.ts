import { plainFileName } from '../../core/room/file-name';
import { fileText, openFailure, refusalToSave } from './file-text';
import type { Host, HostOutcome, OpenedFile, SavedFile } from './host';

type FileFunctions = Pick<Host, 'open' | 'openDropped' | 'reopen' | 'save' | 'recent'>;

/** Long enough for every browser to have taken a download over. */
const KEEP_DOWNLOAD_MS = 60_000;

/**
 * Files where the browser has no pickers to write with: opening uploads a copy into the page, saving
 * downloads one. No file can be written again in place, so there are no tokens.
 */
export function carriedFiles(): FileFunctions {
  return {
    async open() {
      const file = await chooseFile('.json,application/json');
      return file === null ? { kind: 'cancelled' } : readCarried(file);
    },
    openDropped,
    reopen() {
      const sentence = 'This browser cannot open a file again by itself. Look for it with Open.';
      return Promise.resolve({ kind: 'failed', sentence });
    },
    save(text, suggestedName) {
      const name = plainFileName(suggestedName);
      return Promise.resolve(refusalToSave(text) ?? downloadRoom(text, name));
    },
    recent: () => Promise.resolve([]),
  };
}

/** A copy of the file's text; the file itself cannot be written again. */
async function readCarried(file: File): Promise<HostOutcome<OpenedFile>> {
  try {
    const text = await fileText(file);
    if (text.kind !== 'done') return text;
    const value = { name: file.name, text: text.value, token: null, stamp: null };
    return { kind: 'done', value };
  } catch (error) {
    return openFailure(file.name, error);
  }
}

/** The first file that was dropped; what is no file is passed over. */
export function openDropped(dropped: DataTransfer): Promise<HostOutcome<OpenedFile>> {
  const file = dropped.files[0];
  return file === undefined ? Promise.resolve({ kind: 'cancelled' }) : readCarried(file);
}

/** Ask for one file; `accept` as a file input has it. Null where the person calls it off. */
export function chooseFile(accept: string): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });
}

function downloadRoom(text: string, name: string): HostOutcome<SavedFile> {
  download(new Blob([text], { type: 'application/octet-stream' }), name);
  return { kind: 'done', value: { name, token: null, stamp: null } };
}

/** Hand `content` to the browser's downloads. */
export function download(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEEP_DOWNLOAD_MS);
}
