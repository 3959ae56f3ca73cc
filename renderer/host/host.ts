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

export interface OpenedFile {
  /** File name without its folder, for the title block. */
  readonly name: string;
  readonly text: string;
  /** Null where the host cannot write back to the same file. */
  readonly token: FileToken | null;
}

export interface SavedFile {
  readonly name: string;
  readonly token: FileToken | null;
}

export interface RecentFile {
  readonly name: string;
  readonly token: FileToken;
}

/** A room by its text and the file it belongs to. */
export interface KeptRoom {
  readonly text: string;
  readonly name: string;
  readonly token: FileToken | null;
}

export interface AutosaveRecord extends KeptRoom {
  readonly savedAtMs: number;
  /** True where the text was not in the file when it was kept. */
  readonly unsaved: boolean;
  /** Unsaved work that this room has replaced: opening another room must not lose it. */
  readonly before: KeptRoom | null;
}

/** What the desktop menu (or its keyboard shortcut) asks the window to do. */
export const MENU_COMMANDS = ['new', 'open', 'save', 'save-as', 'undo', 'redo', 'print'] as const;
export type MenuCommand = (typeof MENU_COMMANDS)[number];

export interface Host {
  readonly edition: 'desktop' | 'browser';
  /** Ask the person for a room file and read it. Files over `MAX_FILE_BYTES` are refused unread. */
  open(): Promise<HostOutcome<OpenedFile>>;
  /** Read again a file known by its token (a recent one). */
  reopen(token: FileToken): Promise<HostOutcome<OpenedFile>>;
  /** Write `text` to the file behind `token`; asks for a place where `token` is null. */
  save(
    text: string,
    suggestedName: string,
    token: FileToken | null,
  ): Promise<HostOutcome<SavedFile>>;
  /** Newest first; empty where the host keeps none. */
  recent(): Promise<readonly RecentFile[]>;
  print(): Promise<HostOutcome<null>>;
  /** Keep the present work; called after edits, never asks. */
  keepAutosave(record: AutosaveRecord): Promise<void>;
  readAutosave(): Promise<AutosaveRecord | null>;
  /** Menu commands of the desktop program; the browser edition never calls back. Returns the unsubscriber. */
  onMenuCommand(listener: (command: MenuCommand) => void): () => void;
}

/** Files over this many bytes are refused unread. */
export { MAX_ROOM_BYTES as MAX_FILE_BYTES } from '../../core/room/read-json';
