/** What is wrong with a file: the place in it and a sentence that says what to do. */
export interface Fault {
  /** Path in the file such as `room.size.width`; empty for the file as a whole. */
  readonly path: string;
  readonly sentence: string;
}

/**
 * Text that stays on its line and says what it shows: control characters and line separators become
 * spaces, and the marks that turn the direction of reading are dropped.
 */
export function onOneLine(text: string): string {
  return text
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, ' ')
    .replace(/[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '');
}

/** The same in JSON text, where such characters stay what they are but are written as escapes. */
export function escapedInJson(json: string): string {
  return json.replace(
    /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** Longest place that is told; what comes from a person is far shorter. */
const LONGEST_PATH = 160;

/** `room.solids[2].min` from the keys that lead there. */
export function pathText(keys: readonly PropertyKey[]): string {
  const path = keys.reduce<string>(
    (text, key) =>
      typeof key === 'number'
        ? `${text}[${key}]`
        : text === ''
          ? String(key)
          : `${text}.${String(key)}`,
    '',
  );
  return onOneLine(path.length > LONGEST_PATH ? `${path.slice(0, LONGEST_PATH)}...` : path);
}

/** A value as a person would point at it: short, quoted where it is text. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return describeList(value);
  if (typeof value === 'object') return 'a group of fields';
  if (typeof value === 'string')
    return `"${onOneLine(value.length > 24 ? `${value.slice(0, 24)}...` : value)}"`;
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : 'something else';
}

/** A short list of plain values in full, any other by its length. */
function describeList(list: readonly unknown[]): string {
  const plain = list.every((item) => typeof item !== 'object' || item === null);
  return plain && list.length <= 4
    ? `[${list.map(describe).join(', ')}]`
    : `a list of ${list.length}`;
}
