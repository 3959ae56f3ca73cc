/**
 * From bytes to plain data, suspicious of everything: size, encoding, broken JSON, depth, and keys
 * that could reach into an object's prototype.
 */

import { pathText, type Fault } from './fault';

/** The WHATWG decoder and encoder are part of every place where this code runs. */
declare const TextEncoder: new () => { encode(text: string): Uint8Array };
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

/** How many bytes a text has as UTF-8. */
export function utf8Bytes(text: string): number {
  return new TextEncoder().encode(text).length;
}

/** Why a file of so many bytes is not read; rounded up, so that it never seems to be within the limit. */
export function whyTooLarge(bytes: number): string {
  const megabytes = Math.ceil(bytes / 1e5) / 10;
  return `it has ${megabytes} MB and a room file has ${MAX_ROOM_BYTES / 1e6} MB at most. Choose a room file (.room.json).`;
}

/** Why bytes that are not UTF-8 are not read. */
export const WHY_NOT_TEXT =
  'it is not UTF-8 text. Choose a room file (.room.json), or save it as UTF-8 in the program that wrote it.';

const tooLarge = (bytes: number): Fault => ({
  path: '',
  sentence: `The file cannot be read: ${whyTooLarge(bytes)}`,
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
    return refuse('', `The file cannot be read: ${WHY_NOT_TEXT}`);
  }
}

/** The JSON object in `text`, or where it breaks. */
export function readJsonObject(text: string): Read<Readonly<Record<string, unknown>>> {
  // A character of text has three bytes at most.
  const bytes = text.length > MAX_ROOM_BYTES / 3 ? utf8Bytes(text) : text.length;
  if (bytes > MAX_ROOM_BYTES) return { ok: false, faults: [tooLarge(bytes)] };
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
  const message = error instanceof Error ? error.message : '';
  const position = /position (\d+)/.exec(message)?.[1];
  const at = position === undefined ? null : Number(position);
  const end = text.trimEnd().length;
  if (/unexpected end|unterminated/i.test(message) || (at !== null && at >= end)) {
    return 'The file breaks off before its end: it was not copied or saved completely. Use the copy beside it that ends in .bak, if there is one.';
  }
  if (at === null) return 'The file is not JSON. Choose a room file (.room.json).';
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  return `The file is not JSON: it cannot be read at line ${line}, column ${column}.`;
}

/**
 * First key that is not allowed, number that cannot be written again, or nest too deep to be a room;
 * walks without recursion. A minus zero, which a file cannot keep, becomes zero on the way.
 */
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
      if (typeof child === 'number' && !Number.isFinite(child)) {
        return {
          path: pathText(path),
          sentence: 'is a number too large to be kept. Write a smaller one, or remove it.',
        };
      }
      if (Object.is(child, -0)) (value as Record<string, unknown>)[key] = 0;
      if (typeof child === 'object' && child !== null) open.push({ value: child, keys: path });
    }
  }
  return null;
}
