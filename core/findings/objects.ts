/** People and seats of a kind that the program has no figures for. */

import { ITEMS, itemOf } from '../decay/objects';
import type { FindingContext } from './context';
import type { Finding } from './finding';

/** What an unknown item is proposed to be: the one row for people that was read in its source. */
const PROPOSED_ITEM = 'person-seated';

export function objectFindings({ project }: FindingContext): readonly Finding[] {
  const { objects } = project;
  return objects
    .filter(({ item, count }) => count > 0 && itemOf(item) === undefined)
    .map(({ id, item, count }) => ({
      id: `unknown-item:${id}`,
      severity: 'fault',
      subject: 'decay',
      where: `${count} x ${item}`,
      message: `There is no item "${item}" in the library, so these ${count} do not absorb here. Known items: ${ITEMS.map((known) => known.id).join(', ')}.`,
      figureName: 'not counted',
      value: count,
      limit: 0,
      unit: '',
      source: 'library of items',
      remedies: [
        {
          text: `Take them for "${itemOf(PROPOSED_ITEM)?.name ?? PROPOSED_ITEM}".`,
          edit: {
            kind: 'objects',
            objects: objects.map((object) =>
              object.id === id ? { ...object, item: PROPOSED_ITEM } : object,
            ),
          },
        },
        {
          text: 'Take them out.',
          edit: { kind: 'objects', objects: objects.filter((object) => object.id !== id) },
        },
      ],
    }));
}
