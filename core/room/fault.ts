/** What is wrong with a file: the place in it and a sentence that says what to do. */
export interface Fault {
  /** Path in the file such as `room.size.width`; empty for the file as a whole. */
  readonly path: string;
  readonly sentence: string;
}

/** Text that stays on its line: control characters and line separators become spaces. */
export function onOneLine(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, ' ');
}

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
  return onOneLine(path);
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
