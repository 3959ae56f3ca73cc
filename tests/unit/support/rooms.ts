/** Rooms to test with: the examples that come with the program, and small ones made on the spot. */

import { readFileSync } from 'node:fs';
import { openRoom, type Fault } from '../../../core/room/open-room';
import type { Project } from '../../../core/room/project';

export const EXAMPLES = ['basement-bay', 'long-room', 'under-the-ducts'] as const;
export type Example = (typeof EXAMPLES)[number];

export type Fields = Readonly<Record<string, unknown>>;

export function exampleText(name: Example): string {
  const file = new URL(`../../../resources/examples/${name}.room.json`, import.meta.url);
  return readFileSync(file, 'utf8');
}

/** The project in `text`; a test whose room does not open fails with the faults. */
export function opened(text: string): Project {
  const result = openRoom(text);
  if (!result.ok) throw new Error(`The room does not open: ${JSON.stringify(result.faults)}`);
  return result.project;
}

export const example = (name: Example): Project => opened(exampleText(name));

/** A file's fields: 4 m wide, 5 m long, 3 m high, and what is given instead. */
export function fileOf(room: Fields = {}, rest: Fields = {}): Fields {
  return {
    format: 'roomwright-room',
    version: 1,
    room: { size: { width: 4, length: 5, height: 3 }, ...room },
    ...rest,
  };
}

/** The project of `fileOf`. */
export const roomOf = (room: Fields = {}, rest: Fields = {}): Project =>
  opened(JSON.stringify(fileOf(room, rest)));

/** The faults of a file that must not open. */
export function faultsOf(file: unknown): readonly Fault[] {
  const result = openRoom(typeof file === 'string' ? file : JSON.stringify(file));
  if (result.ok) throw new Error('The room opens, though it should be refused.');
  return result.faults;
}

/** The one element of a list that must have exactly one. */
export function only<T>(list: readonly T[]): T {
  const [first] = list;
  if (first === undefined || list.length !== 1) {
    throw new Error(`Expected one element, found ${list.length}.`);
  }
  return first;
}

/** `value`, which must be there. */
export function given<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('Expected a value, found none.');
  return value;
}

/** The value where a path of keys leads; it must exist. */
export function at(root: unknown, keys: readonly (string | number)[]): unknown {
  return keys.reduce<unknown>((value, key) => given(value as Fields | null)[key], root);
}

/** Places in `root` that hold NaN or an infinity, as paths. */
export function notFinite(root: unknown, path = ''): readonly string[] {
  if (typeof root === 'number') return Number.isFinite(root) ? [] : [`${path} is ${root}`];
  if (typeof root !== 'object' || root === null) return [];
  return Object.entries(root).flatMap(([key, value]) => notFinite(value, `${path}.${key}`));
}
