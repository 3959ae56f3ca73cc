/** Reading plain data whose shape is not sure: what is not as expected reads as nothing. */

/** A list longer than the longest of a room file has more wrong with it than its names. */
const MOST_ITEMS = 200;
/** Likewise a name longer than any that a room file may hold. */
const MOST_CHARACTERS = 80;

/** What stands at `path`, such as `room.solids`; undefined where nothing does. */
export function atPath(root: unknown, path: string): unknown {
  return path.split('.').reduce((value: unknown, key) => fieldOf(value, key), root);
}

/** The list at `path`, empty where there is none; at most its first 200 items. */
export function listAt(root: unknown, path: string): readonly unknown[] {
  const value = atPath(root, path);
  return Array.isArray(value) ? value.slice(0, MOST_ITEMS) : [];
}

/** The text in a field of `group`; null where there is none, or it is too long for a name. */
export function textIn(group: unknown, field: string): string | null {
  const value = fieldOf(group, field);
  return typeof value === 'string' && value.length <= MOST_CHARACTERS ? value : null;
}

function fieldOf(group: unknown, field: string): unknown {
  return typeof group === 'object' && group !== null && Object.hasOwn(group, field)
    ? (group as Readonly<Record<string, unknown>>)[field]
    : undefined;
}
