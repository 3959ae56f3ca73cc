import { describe, expect, it } from 'vitest';
import { escapedInJson, onOneLine, pathText } from '../../../../core/room/fault';
import { openRoom } from '../../../../core/room/open-room';
import { exampleText } from '../../support/rooms';

type Json = Record<string, unknown> | unknown[];
const isNest = (value: unknown): value is Json => typeof value === 'object' && value !== null;

/** Every place in a file, as the keys that lead there. */
function placesIn(value: unknown, keys: readonly (string | number)[] = []): (string | number)[][] {
  if (!isNest(value)) return [[...keys]];
  const inside = Array.isArray(value)
    ? value.flatMap((item, n) => placesIn(item, [...keys, n]))
    : Object.entries(value).flatMap(([key, item]) => placesIn(item, [...keys, key]));
  return keys.length === 0 ? inside : [[...keys], ...inside];
}

function withValue(text: string, keys: readonly (string | number)[], value: unknown): string {
  const root = JSON.parse(text) as Json;
  let at = root as Record<string | number, unknown>;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  at[keys.at(-1) ?? ''] = value;
  return JSON.stringify(root);
}

/** Every field that has a rule of its own and is not in an example. */
const MORE = {
  seating: { rows: [{ id: 'front', y: 3 }], reference: { row: 'front', seat: 1 } },
  speakers: {
    placed: [
      { channel: 'M+030', position: [1, 1, 1], aim: { azimuthDeg: 0, elevationDeg: 0 } },
      { channel: 'M-030', position: [1, 1, 1], aim: { seat: { row: 'front', seat: 1 } } },
    ],
  },
};

describe('what is wrong with a field', () => {
  it('is said in a sentence of the program’s own, whatever the file says there', () => {
    const text = JSON.stringify({
      ...(JSON.parse(exampleText('under-the-ducts')) as Json),
      ...MORE,
    });
    const odd: string[] = [];
    for (const keys of placesIn(JSON.parse(text))) {
      for (const value of [5, -1e9, 'x y', '', null, true, [], {}, [1, 2]]) {
        const opened = openRoom(withValue(text, keys, value));
        if (opened.ok) continue;
        for (const { path, sentence } of opened.faults) {
          if (!/^[A-Z"a-z].*[.]$/s.test(sentence) || /invalid|expected|zod/i.test(sentence)) {
            odd.push(`${path}: ${sentence}`);
          }
        }
      }
    }
    expect([...new Set(odd)]).toEqual([]);
  });

  it('names the row that is asked for', () => {
    const file = { ...MORE, seating: { ...MORE.seating, reference: { row: 5, seat: 1 } } };
    const text = JSON.stringify({
      format: 'roomwright-room',
      version: 1,
      room: { size: { width: 4, length: 5, height: 3 } },
      ...file,
    });
    const opened = openRoom(text);
    expect(opened.ok ? [] : opened.faults).toEqual([
      {
        path: 'seating.reference.row',
        sentence: 'must be the id of a row, or empty where there are no rows; the file says 5.',
      },
    ]);
  });

  it('has a place of sane length, however long the name in the file', () => {
    expect(pathText(['room', 'k'.repeat(400_000)]).length).toBeLessThan(200);
  });
});

describe('text from a file', () => {
  it('keeps to its line and to its direction', () => {
    expect(onOneLine('a\u001b[31m\u0007\r\nb\u009bc\u2028d')).toBe('a [31m   b c d');
    expect(onOneLine('\u202eab\u2066c\u200f\u061cd\u2069')).toBe('abcd');
    expect(onOneLine('Größe 2 × ½″')).toBe('Größe 2 × ½″');
  });

  it('is the same in JSON, by escapes', () => {
    const value = { name: 'a\u009b\u202eb\u2028\u0007' };
    const text = escapedInJson(JSON.stringify(value));
    expect(text).toMatch(/^[\x20-\x7e]*$/);
    expect(JSON.parse(text)).toEqual(value);
  });
});
