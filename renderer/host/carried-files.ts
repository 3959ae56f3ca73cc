import { fileText, openFailure, refusalToSave } from './file-text';
import type { Host, HostOutcome, OpenedFile, SavedFile } from './host';

type FileFunctions = Pick<Host, 'open' | 'reopen' | 'save' | 'recent'>;

/** Long enough for every browser to have taken a download over. */
const KEEP_DOWNLOAD_MS = 60_000;

/**
 * Files where the browser has no pickers to write with: opening uploads a copy into the page, saving
 * downloads one. No file can be written again in place, so there are no tokens.
 */
export function carriedFiles(): FileFunctions {
  return {
    async open(): Promise<HostOutcome<OpenedFile>> {
      const file = await chooseFile();
      if (file === null) return { kind: 'cancelled' };
      try {
        const text = await fileText(file);
        if (text.kind !== 'done') return text;
        return { kind: 'done', value: { name: file.name, text: text.value, token: null } };
      } catch (error) {
        return openFailure(file.name, error);
      }
    },
    reopen() {
      const sentence = 'This browser cannot open a file again by itself. Look for it with Open.';
      return Promise.resolve({ kind: 'failed', sentence });
    },
    save(text, suggestedName) {
      return Promise.resolve(refusalToSave(text) ?? download(text, suggestedName));
    },
    recent: () => Promise.resolve([]),
  };
}

function chooseFile(): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });
}

function download(text: string, name: string): HostOutcome<SavedFile> {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEEP_DOWNLOAD_MS);
  return { kind: 'done', value: { name, token: null } };
}
