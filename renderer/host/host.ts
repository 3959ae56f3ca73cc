/**
 * The one interface at which the window and the machine meet. Two implementations: the desktop one
 * behind the preload bridge, and the browser one (file pickers where they exist, download and
 * upload where not). Everything is asynchronous, nothing throws: a failure is a sentence to show.
 */

/** Stands for a file that the host has opened or saved; opaque to the window. */
export type FileToken = string;

export type HostOutcome<T> =
  | { readonly kind: 'done'; readonly value: T }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly sentence: string };

/** Tells a file's content from a later one: it changes when any program replaces or edits the file. */
export interface FileStamp {
  readonly modifiedMs: number;
  readonly sizeBytes: number;
}

export interface SavedFile {
  readonly name: string;
  /** Null where the host cannot write back to the same file. */
  readonly token: FileToken | null;
  /** Of the file as it was read or written; null where the host cannot look at it again. */
  readonly stamp: FileStamp | null;
}

/** `name` is without its folder, for the title block. */
export interface OpenedFile extends SavedFile {
  readonly text: string;
}

export interface SaveOptions {
  /** What the file looked like when the room last came from it or went to it. */
  readonly stamp: FileStamp | null;
  /** True where the person has said that a file changed elsewhere may be replaced. */
  readonly replace: boolean;
}

/** `changed`: the file is not what was opened or saved here any more; nothing was written. */
export type SaveOutcome = HostOutcome<SavedFile> | { readonly kind: 'changed' };

export interface RecentFile {
  readonly name: string;
  readonly token: FileToken;
}

/** A room by its text and the file it belongs to. */
export interface KeptRoom {
  readonly text: string;
  readonly name: string;
  readonly token: FileToken | null;
  readonly stamp: FileStamp | null;
}

export interface AutosaveRecord extends KeptRoom {
  readonly savedAtMs: number;
  /** True where the text was not in the file when it was kept. */
  readonly unsaved: boolean;
  /** Unsaved work that this room has replaced: opening another room must not lose it. */
  readonly before: KeptRoom | null;
}

/** Kept work that no reader understands: what there is of it, and what it was called. */
export interface UnreadableWork {
  /** Names it to `forgetUnreadable`. */
  readonly id: string;
  readonly name: string;
  readonly text: string;
}

export interface KeptWork {
  /** The newest work that opens. */
  readonly record: AutosaveRecord | null;
  /** Stays where it is until it is forgotten. */
  readonly unreadable: readonly UnreadableWork[];
}

/** What the desktop menu (or its keyboard shortcut) asks the window to do. */
export const MENU_COMMANDS = ['new', 'open', 'save', 'save-as', 'undo', 'redo', 'print'] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** What can be put into a file beside a room, by its ending. */
export const EXPORT_ENDINGS = {
  'application/pdf': 'pdf',
  'image/svg+xml': 'svg',
  'text/csv': 'csv',
} as const;
export type ExportType = keyof typeof EXPORT_ENDINGS;
export const EXPORT_TYPES = Object.keys(EXPORT_ENDINGS) as ExportType[];

/** More than a sheet of many pages takes; a mistake is larger. */
export const MAX_EXPORT_BYTES = 100_000_000;

/** Data that can be opened beside rooms. A file over the limit of its kind is refused unread. */
export const DATA_KINDS = {
  'measured-decay': { title: 'Measured decay', endings: ['csv', 'txt'], mostBytes: 5_000_000 },
  recording: { title: 'Recording', endings: ['wav'], mostBytes: 100_000_000 },
} as const satisfies Readonly<
  Record<string, { title: string; endings: readonly string[]; mostBytes: number }>
>;
export type DataKind = keyof typeof DATA_KINDS;
export const DATA_KIND_NAMES = Object.keys(DATA_KINDS) as DataKind[];

/** Why a file of data is refused unread. */
export const whyTooMuch = (kind: DataKind): string =>
  `a file of this kind (${DATA_KINDS[kind].title.toLowerCase()}) has ${DATA_KINDS[kind].mostBytes / 1_000_000} MB at most. Choose a shorter one.`;

/** The bytes of a file as it is: who asked for it reads them. `name` is without its folder. */
export interface OpenedData {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Host {
  readonly edition: 'desktop' | 'browser';
  /** Ask the person for a room file and read it. Files over `MAX_ROOM_BYTES` are refused unread. */
  open(): Promise<HostOutcome<OpenedFile>>;
  /** Read again a file known by its token (a recent one). */
  reopen(token: FileToken): Promise<HostOutcome<OpenedFile>>;
  /** Read the file that was dropped on the window; to be called while the event is handled. */
  openDropped(dropped: DataTransfer): Promise<HostOutcome<OpenedFile>>;
  /** Write `text` to the file behind `token`; asks for a place where `token` is null. */
  save(
    text: string,
    suggestedName: string,
    token: FileToken | null,
    options?: SaveOptions,
  ): Promise<SaveOutcome>;
  /** Put `bytes` into a file of `type`, at a place that the person is asked for. Gives the file's name. */
  exportBytes(
    suggestedName: string,
    type: ExportType,
    bytes: Uint8Array,
  ): Promise<HostOutcome<string>>;
  /** Ask the person for a file of data of `kind` and read it. */
  openData(kind: DataKind): Promise<HostOutcome<OpenedData>>;
  /** Newest first; empty where the host keeps none. */
  recent(): Promise<readonly RecentFile[]>;
  print(): Promise<HostOutcome<null>>;
  /** Keep the present work; called after edits, never asks. Says so where it could not be kept. */
  keepAutosave(record: AutosaveRecord): Promise<HostOutcome<null>>;
  readAutosave(): Promise<KeptWork>;
  /** Drop kept work that could not be read, once the person has it elsewhere. */
  forgetUnreadable(id: string): Promise<void>;
  /** Menu commands of the desktop program; the browser edition never calls back. Returns the unsubscriber. */
  onMenuCommand(listener: (command: MenuCommand) => void): () => void;
}
