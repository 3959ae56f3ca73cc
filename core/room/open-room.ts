/**
 * Opening and saving a room file. Opening goes step by step: bytes, text, JSON, version, then shape and
 * names; each step refuses with a place and a sentence, and nothing half-read ever gets out.
 */

import { pathText, type Fault } from './fault';
import { migrateRoom } from './migrate';
import { ROOM_FORMAT, type Project } from './project';
import { decodeUtf8, MAX_ROOM_BYTES, readJsonObject, utf8Bytes } from './read-json';
import { referenceFaults } from './references';
import { projectSchema } from './schema/project';

export type { Fault } from './fault';

export type OpenedRoom =
  | { readonly ok: true; readonly project: Project }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Text of a room file's bytes; refuses what is over 5 MB or not UTF-8. */
export function decodeRoomBytes(
  bytes: Uint8Array,
):
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly faults: readonly Fault[] } {
  const read = decodeUtf8(bytes);
  return read.ok ? { ok: true, text: read.value } : read;
}

/** A shorter text cannot grow over the limit, whatever is in it, by being written out with defaults. */
const SURELY_WRITTEN_CHARACTERS = MAX_ROOM_BYTES / 10;
const TOO_LARGE_TO_WRITE = `The file is within ${MAX_ROOM_BYTES / 1e6} MB, but written out by the program it would be more, and could not be saved. Take out fields that the program does not know.`;

/** The Project in a room file's text, complete with defaults, or all faults that were found. */
export function openRoom(text: string): OpenedRoom {
  const json = readJsonObject(text);
  if (!json.ok) return json;
  if (json.value['format'] !== ROOM_FORMAT) {
    return fail({
      path: 'format',
      sentence: `must be "${ROOM_FORMAT}": this is not a Roomwright room file.`,
    });
  }
  const migrated = migrateRoom(json.value);
  if (!migrated.ok) return fail(migrated.fault);
  const parsed = projectSchema.safeParse(migrated.raw);
  if (!parsed.success) {
    const shape = parsed.error.issues.map((issue): Fault => {
      return { path: pathText(issue.path), sentence: issue.message };
    });
    const told = new Set(shape.map((fault) => fault.path));
    const names = referenceFaults(migrated.raw).filter((fault) => !told.has(fault.path));
    return { ok: false, faults: [...shape, ...names] };
  }
  const project: Project = parsed.data;
  const faults = referenceFaults(project);
  if (faults.length > 0) return { ok: false, faults };
  // What is read must be possible to write: figures such as 1e20 grow when they are written out.
  if (text.length > SURELY_WRITTEN_CHARACTERS && utf8Bytes(saveRoom(project)) > MAX_ROOM_BYTES)
    return fail({ path: '', sentence: TOO_LARGE_TO_WRITE });
  return { ok: true, project };
}

/**
 * The file text of a project, ended by a line break: indented JSON, or without white space where it would
 * otherwise be more than a room file may have.
 */
export function saveRoom(project: Project): string {
  const indented = `${JSON.stringify(project, null, 2)}\n`;
  const fits = indented.length <= MAX_ROOM_BYTES / 3 || utf8Bytes(indented) <= MAX_ROOM_BYTES;
  return fits ? indented : `${JSON.stringify(project)}\n`;
}

const fail = (fault: Fault): OpenedRoom => ({ ok: false, faults: [fault] });
