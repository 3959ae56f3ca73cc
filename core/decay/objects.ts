/**
 * People, chairs and the like: equivalent absorption area in m2 per item, added n times. The rows are
 * data (resources/items).
 */

import library from '../../resources/items/items.json';
import type { OctaveHz } from '../quantity/bands';
import type { AbsorptionByBand, RoomObject } from '../room/project';

export interface Item {
  readonly id: string;
  readonly name: string;
  /** Equivalent absorption area of one item by octave, m2. */
  readonly absorptionM2: AbsorptionByBand;
  readonly source: string;
  /** `transcription`: read in a copy of the source; `memory`: written down without one. */
  readonly howKnown: 'transcription' | 'memory';
}

export const ITEMS = library.items as readonly Item[];

const BY_ID: ReadonlyMap<string, Item> = new Map(ITEMS.map((item) => [item.id, item]));

export const itemOf = (id: string): Item | undefined => BY_ID.get(id);

export interface ObjectAbsorption {
  readonly id: string;
  readonly item: string;
  readonly count: number;
  /** Absorption of all of them, m2; null where the source has no figure in this band. */
  readonly areaM2: number | null;
}

/** Absorption of every known object in a band. An unknown item is left out: a finding tells of it. */
export function objectAbsorption(
  objects: readonly RoomObject[],
  bandHz: OctaveHz,
): { readonly areaM2: number | null; readonly objects: readonly ObjectAbsorption[] } {
  const rows = objects.flatMap(({ id, item, count }): readonly ObjectAbsorption[] => {
    const known = itemOf(item);
    if (!known || count === 0) return [];
    const each = known.absorptionM2[`${bandHz}`];
    return [{ id, item, count, areaM2: each === undefined ? null : count * each }];
  });
  const areaM2 = rows.reduce<number | null>(
    (sum, row) => (sum === null || row.areaM2 === null ? null : sum + row.areaM2),
    0,
  );
  return { areaM2, objects: rows };
}
