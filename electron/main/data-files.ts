import path from 'node:path';
import { fileNameEnding } from '../../core/room/file-name';
import {
  DATA_KINDS,
  EXPORT_ENDINGS,
  whyTooMuch,
  type DataKind,
  type ExportType,
  type HostOutcome,
  type OpenedData,
} from '../../renderer/host/host';
import { writeAtomically } from '../files/atomic-write';
import { dataOpenFailure, saveFailure } from '../files/file-sentences';
import { readLimited, readStamp } from '../files/read-limited';
import type { HostHandlers } from '../ipc/channels';

/** What the person is asked; null or false where they call it off. */
export interface DataQuestions {
  placeForExport(suggestedName: string, type: ExportType): Promise<string | null>;
  dataToOpen(kind: DataKind): Promise<string | null>;
  writeOverChanged(name: string): Promise<boolean>;
}

const CANCELLED = { kind: 'cancelled' } as const;
const REMEDY = 'Choose another place.';

/** Files beside rooms. Each is asked for by a dialog; no path comes from the window or goes to it. */
export class DataFiles implements Pick<HostHandlers, 'exportBytes' | 'openData'> {
  constructor(private readonly ask: DataQuestions) {}

  async exportBytes(
    suggestedName: string,
    type: ExportType,
    bytes: Uint8Array,
  ): Promise<HostOutcome<string>> {
    const ending = `.${EXPORT_ENDINGS[type]}` as const;
    const offered = fileNameEnding(suggestedName, ending);
    const chosen = await this.ask.placeForExport(offered, type);
    if (chosen === null) return CANCELLED;
    const file = path.extname(chosen) === '' ? `${chosen}${ending}` : chosen;
    // The dialog asked about the name without its ending; nothing may be replaced unasked.
    if (
      file !== chosen &&
      (await exists(file)) &&
      !(await this.ask.writeOverChanged(path.basename(file)))
    )
      return CANCELLED;
    try {
      await writeAtomically(file, bytes, { backup: true });
      return { kind: 'done', value: path.basename(file) };
    } catch (error) {
      return { kind: 'failed', sentence: saveFailure(file, error, REMEDY) };
    }
  }

  async openData(kind: DataKind): Promise<HostOutcome<OpenedData>> {
    const file = await this.ask.dataToOpen(kind);
    if (file === null) return CANCELLED;
    const { mostBytes } = DATA_KINDS[kind];
    try {
      const found = await readLimited(file, mostBytes);
      if (found.kind === 'too-large')
        return {
          kind: 'failed',
          sentence: `Could not open "${path.basename(file)}": ${whyTooMuch(kind)}`,
        };
      if (found.kind === 'not-a-file')
        return { kind: 'failed', sentence: dataOpenFailure(file, null) };
      return {
        kind: 'done',
        value: { name: path.basename(file), bytes: Uint8Array.from(found.bytes) },
      };
    } catch (error) {
      return { kind: 'failed', sentence: dataOpenFailure(file, error) };
    }
  }
}

const exists = (file: string): Promise<boolean> =>
  readStamp(file).then(
    () => true,
    () => false,
  );
