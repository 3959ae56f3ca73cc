import path from 'node:path';
import { decodeUtf8, MAX_ROOM_BYTES } from '../../core/room/read-json';
import type {
  FileStamp,
  FileToken,
  HostOutcome,
  OpenedFile,
  SavedFile,
  SaveOptions,
} from '../../renderer/host/host';
import { writeAtomically } from '../files/atomic-write';
import { errorCode } from '../files/error-code';
import { notText, openFailure, saveFailure, tooLarge } from '../files/file-sentences';
import { readLimited, readStamp } from '../files/read-limited';
import type { HostHandlers } from '../ipc/channels';
import type { AutosaveFile } from './autosave-file';
import type { PathTokens } from './path-tokens';
import type { RecentFiles } from './recent-files';
import { roomFileName } from '../../core/room/file-name';

/** What the person is asked; null or false where they call it off. */
export interface FileQuestions {
  roomToOpen(): Promise<string | null>;
  placeForRoom(suggestedName: string): Promise<string | null>;
  /** The file was changed by something else since it was read here: write over it all the same? */
  writeOverChanged(name: string): Promise<boolean>;
}

export interface RoomFilesParts {
  readonly tokens: PathTokens;
  readonly recents: RecentFiles;
  readonly autosave: AutosaveFile;
  readonly ask: FileQuestions;
}

const CANCELLED = { kind: 'cancelled' } as const;
const SAVE_REMEDY = 'Choose another place with Save as.';

/** Everything the window may do with files, by dialogs and tokens; no path comes from the window. */
export class RoomFiles implements Omit<HostHandlers, 'print' | 'exportBytes' | 'openData'> {
  /** What each file looked like when it was last read or written here. */
  private readonly stamps = new Map<string, FileStamp>();

  constructor(private readonly parts: RoomFilesParts) {}

  async open(): Promise<HostOutcome<OpenedFile>> {
    const file = await this.parts.ask.roomToOpen();
    return file === null ? CANCELLED : this.read(file);
  }

  async reopen(token: FileToken): Promise<HostOutcome<OpenedFile>> {
    const file = this.parts.tokens.pathOf(token);
    return file === null ? unknownToken('open') : this.read(file);
  }

  async save(
    text: string,
    suggestedName: string,
    token: FileToken | null,
    options?: SaveOptions,
  ): Promise<HostOutcome<SavedFile>> {
    if (Buffer.byteLength(text, 'utf8') > MAX_ROOM_BYTES) return failed(tooLargeToSave());
    if (token === null) return this.saveAs(text, suggestedName);
    const file = this.parts.tokens.pathOf(token);
    if (file === null) return unknownToken('save');
    if (await this.wasChangedElsewhere(file, options?.stamp ?? null)) {
      if (!(await this.parts.ask.writeOverChanged(path.basename(file)))) return CANCELLED;
    }
    return this.write(file, text);
  }

  async recent(): Promise<readonly { name: string; token: FileToken }[]> {
    const files = await this.parts.recents.list();
    return files.map((file) => ({
      name: path.basename(file),
      token: this.parts.tokens.tokenFor(file),
    }));
  }

  keepAutosave: HostHandlers['keepAutosave'] = (record) => this.parts.autosave.keep(record);

  readAutosave: HostHandlers['readAutosave'] = () => this.parts.autosave.read();

  forgetUnreadable: HostHandlers['forgetUnreadable'] = (id) => this.parts.autosave.forget(id);

  private async saveAs(text: string, suggestedName: string): Promise<HostOutcome<SavedFile>> {
    const chosen = await this.parts.ask.placeForRoom(roomFileName(suggestedName));
    if (chosen === null) return CANCELLED;
    if (path.extname(chosen) !== '') return this.write(chosen, text);
    // The dialog asked about the name without its extension; nothing may be replaced unasked.
    const file = `${chosen}.room.json`;
    if (await exists(file)) {
      if (!(await this.parts.ask.writeOverChanged(path.basename(file)))) return CANCELLED;
    }
    return this.write(file, text);
  }

  private async read(file: string): Promise<HostOutcome<OpenedFile>> {
    try {
      const found = await readLimited(file, MAX_ROOM_BYTES);
      if (found.kind === 'too-large') {
        return failed(tooLarge(file, found.sizeBytes));
      }
      if (found.kind === 'not-a-file') return failed(openFailure(file, isFolder()));
      const text = decodeUtf8(found.bytes);
      if (!text.ok) return failed(notText(file));
      const { stamp } = found;
      this.stamps.set(file, stamp);
      await this.parts.recents.add(file);
      const token = this.parts.tokens.tokenFor(file);
      const name = path.basename(file);
      return { kind: 'done', value: { name, text: text.value, token, stamp } };
    } catch (error) {
      if (errorCode(error) === 'ENOENT') await this.parts.recents.remove(file);
      return failed(openFailure(file, error));
    }
  }

  private async write(file: string, text: string): Promise<HostOutcome<SavedFile>> {
    try {
      await writeAtomically(file, text, { backup: true });
      const stamp = await readStamp(file);
      this.stamps.set(file, stamp);
      await this.parts.recents.add(file);
      const token = this.parts.tokens.tokenFor(file);
      return { kind: 'done', value: { name: path.basename(file), token, stamp } };
    } catch (error) {
      return failed(saveFailure(file, error, SAVE_REMEDY));
    }
  }

  /** `kept` is what the file looked like to the run before, where this one has not looked yet. */
  private async wasChangedElsewhere(file: string, kept: FileStamp | null): Promise<boolean> {
    const known = this.stamps.get(file) ?? kept;
    if (known === null) return false;
    try {
      const now = await readStamp(file);
      return now.modifiedMs !== known.modifiedMs || now.sizeBytes !== known.sizeBytes;
    } catch {
      return false;
    }
  }
}

async function exists(file: string): Promise<boolean> {
  return readStamp(file).then(
    () => true,
    () => false,
  );
}

function isFolder(): Error {
  return Object.assign(new Error('not a file'), { code: 'EISDIR' });
}

function tooLargeToSave(): string {
  return (
    `Could not save: the room has grown over ${MAX_ROOM_BYTES / 1_000_000} MB, which is more than ` +
    'a room file may have. Remove what was added last with Undo and save again.'
  );
}

function unknownToken(verb: 'open' | 'save'): HostOutcome<never> {
  const remedy = verb === 'open' ? 'Look for it with Open.' : SAVE_REMEDY;
  return failed(`Could not ${verb} the file: it is not known in this run. ${remedy}`);
}

function failed(sentence: string): HostOutcome<never> {
  return { kind: 'failed', sentence };
}
