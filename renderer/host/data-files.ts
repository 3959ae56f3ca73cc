/** Files beside rooms: what is exported, and data that is opened, by pickers or carried. */

import { fileNameEnding } from '../../core/room/file-name';
import { chooseFile, download } from './carried-files';
import { isAbort, writeHandle, type FileAccess } from './file-access';
import { failed, openFailure, saveFailure } from './file-text';
import {
  DATA_KINDS,
  EXPORT_ENDINGS,
  MAX_EXPORT_BYTES,
  whyTooMuch,
  type DataKind,
  type Host,
  type HostOutcome,
  type OpenedData,
} from './host';

const CANCELLED = { kind: 'cancelled' } as const;

/** `access` is null where the browser has no pickers. */
export function dataFiles(access: FileAccess | null): Pick<Host, 'exportBytes' | 'openData'> {
  return {
    async exportBytes(suggestedName, type, bytes) {
      if (bytes.byteLength > MAX_EXPORT_BYTES) return failed(tooMuchToExport());
      const name = fileNameEnding(suggestedName, `.${EXPORT_ENDINGS[type]}`);
      if (access === null) {
        download(new Blob([Uint8Array.from(bytes)], { type }), name);
        return { kind: 'done', value: name };
      }
      try {
        const handle = await access.showSaveFilePicker({
          suggestedName: name,
          types: [{ description: name, accept: { [type]: [`.${EXPORT_ENDINGS[type]}`] } }],
        });
        await writeHandle(handle, Uint8Array.from(bytes));
        return { kind: 'done', value: handle.name };
      } catch (error) {
        return isAbort(error) ? CANCELLED : saveFailure(name, error);
      }
    },
    async openData(kind) {
      const { title } = DATA_KINDS[kind];
      try {
        const file = await (access === null
          ? chooseFile(endingsOf(kind).join())
          : pick(access, kind));
        return file === null ? CANCELLED : await read(file, kind);
      } catch (error) {
        return isAbort(error) ? CANCELLED : openFailure(title, error);
      }
    },
  };
}

const tooMuchToExport = (): string =>
  `Could not save: that is more than ${MAX_EXPORT_BYTES / 1_000_000} MB. Leave something out and try again.`;

const endingsOf = (kind: DataKind): readonly `.${string}`[] =>
  DATA_KINDS[kind].endings.map((ending) => `.${ending}` as const);

async function pick(access: FileAccess, kind: DataKind): Promise<File | null> {
  const [handle] = await access.showOpenFilePicker({
    multiple: false,
    types: [
      {
        description: DATA_KINDS[kind].title,
        accept: { 'application/octet-stream': endingsOf(kind) },
      },
    ],
  });
  return handle ? handle.getFile() : null;
}

async function read(file: File, kind: DataKind): Promise<HostOutcome<OpenedData>> {
  if (file.size > DATA_KINDS[kind].mostBytes)
    return failed(`Could not open "${file.name}": ${whyTooMuch(kind)}`);
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return { kind: 'done', value: { name: file.name, bytes } };
  } catch (error) {
    return openFailure(file.name, error);
  }
}
