/**
 * From version 1 of the room file to version 2, in which a patch says what it is and a subwoofer may say
 * how large its box is. Version 1 went by the beginning of a patch's id, and called "panel" all that was
 * no door, window or passage, so that is what they become; its finish played no part in that. It assumed
 * a usual box for every subwoofer, as version 2 does where none is given. Fields of these names had no
 * meaning in version 1: they are kept under another one.
 */

import type { RawRoom } from './raw-room';
import type { PatchKind } from './project';

/** What version 1 took a patch of this id for. */
export function kindInVersion1(id: string): PatchKind {
  if (id.startsWith('door')) return 'door';
  if (id.startsWith('window')) return 'window';
  return /^(passage|opening)/.test(id) ? 'passage' : 'panel';
}

export function withKinds(raw: RawRoom): RawRoom {
  return inGroup(inGroup(raw, 'room', 'patches', withKind), 'speakers', 'subwoofers', (sub) =>
    putAside(sub, 'boxM'),
  );
}

function withKind(patch: RawRoom): RawRoom {
  const { id } = patch;
  const kept = putAside(patch, 'kind');
  return typeof id === 'string' ? { ...kept, kind: kindInVersion1(id) } : kept;
}

/** `item` with what it has in `field` under a name that no version knows. */
function putAside(item: RawRoom, field: string): RawRoom {
  if (!Object.hasOwn(item, field)) return item;
  const { [field]: value, ...rest } = item;
  return { ...rest, [`${field}InVersion1`]: value };
}

/** `raw` with each item of a list in one of its groups changed; what has another shape stays as it is. */
function inGroup(
  raw: RawRoom,
  group: string,
  list: string,
  change: (item: RawRoom) => RawRoom,
): RawRoom {
  const parts = raw[group];
  const items = isGroup(parts) ? parts[list] : undefined;
  if (!isGroup(parts) || !Array.isArray(items)) return raw;
  const changed = items.map((item: unknown) => (isGroup(item) ? change(item) : item));
  return { ...raw, [group]: { ...parts, [list]: changed } };
}

const isGroup = (value: unknown): value is RawRoom =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
