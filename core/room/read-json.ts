/**
 * From bytes to plain data, suspicious of everything: size, encoding, broken JSON, depth, and keys
 * that could reach into an object's prototype.
 */

import { pathText, type Fault } from './fault';

/** The WHATWG decoder is part of every place where this code runs. */
declare const TextDecoder: new (
  label: string,
  options: { readonly fatal: boolean },
) => { decode(bytes: Uint8Array): string };

/** A room file is some kilobytes; what is larger is something else. */
export const MAX_ROOM_BYTES = 5_000_000;
const MAX_DEPTH = 40;
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const tooLarge = (bytes: number): Fault => ({
  path: '',
  sentence: `The file has ${(bytes / 1e6).toFixed(1)} MB; a room file has at most ${MAX_ROOM_BYTES / 1e6} MB. Choose a file that ends in .room.json.`,
});

const refuse = <T>(path: string, sentence: string): Read<T> => ({
  ok: false,
  faults: [{ path, sentence }],
});

/** UTF-8 text of a file's bytes, or why it is not text. */
export function decodeUtf8(bytes: Uint8Array): Read<string> {
  if (bytes.length > MAX_ROOM_BYTES) return { ok: false, faults: [tooLarge(bytes.length)] };
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return refuse('', 'The file is not text (UTF-8). Choose a file that ends in .room.json.');
  }
}

/** The JSON object in `text`, or where it breaks. */
export function readJsonObject(text: string): Read<Readonly<Record<string, unknown>>> {
  if (text.length > MAX_ROOM_BYTES) return { ok: false, faults: [tooLarge(text.length)] };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return refuse('', brokenSentence(text, error));
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse(
      '',
      'The file holds no room: it must be one JSON object with format, version and room.',
    );
  }
  const fault = findForbidden(value);
  return fault
    ? { ok: false, faults: [fault] }
    : { ok: true, value: value as Record<string, unknown> };
}

function brokenSentence(text: string, error: unknown): string {
  if (text.trim() === '') return 'The file is empty.';
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
  const at = position === undefined ? text.length : Number(position);
  if (at >= text.trimEnd().length) {
    return 'The file breaks off before its end: it was not copied or saved completely. Use the copy beside it that ends in .bak, if there is one.';
  }
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  return `The file is not JSON: it cannot be read at line ${line}, column ${column}.`;
}

/** First key that is not allowed, or a nest too deep to be a room; walks without recursion. */
function findForbidden(root: object): Fault | null {
  const open: { value: object; keys: readonly PropertyKey[] }[] = [{ value: root, keys: [] }];
  for (let next = open.pop(); next; next = open.pop()) {
    const { value, keys } = next;
    if (keys.length > MAX_DEPTH) {
      return {
        path: pathText(keys.slice(0, 3)),
        sentence: `is nested more than ${MAX_DEPTH} deep.`,
      };
    }
    for (const key of Object.keys(value)) {
      const path = [...keys, Array.isArray(value) ? Number(key) : key];
      if (FORBIDDEN_KEYS.has(key)) {
        return {
          path: pathText(path),
          sentence: `is a name that a room file may not use. Remove it.`,
        };
      }
      const child = (value as Record<string, unknown>)[key];
      if (typeof child === 'object' && child !== null) open.push({ value: child, keys: path });
    }
  }
  return null;
}
