/**
 * Finishes: absorption coefficients by octave, each row with its source, how it is known and how it is
 * built. The built-in rows are data (resources/finishes); a project may add its own.
 */

import type { OctaveHz } from '../quantity/bands';
import type { LengthUnits } from '../quantity/length';
import type { FacePlace, Finish } from './finish';
import { readLibrary } from './finish-data';
import type { CustomFinish, Project } from './project';

export type { Finish, FacePlace, FinishMount } from './finish';

/** Every built-in finish: what was measured by category, then what shops sell. */
export const FINISHES: readonly Finish[] = readLibrary();

const BY_ID: ReadonlyMap<string, Finish> = new Map(FINISHES.map((finish) => [finish.id, finish]));

const ANY_PLACE: readonly FacePlace[] = ['floor', 'wall', 'ceiling'];

/** A finish of the person's own, as the library has its rows. */
export function ownFinish(finish: CustomFinish): Finish {
  const { depthM = 0, source } = finish;
  const name = finish.name || finish.id;
  return {
    ...finish,
    name,
    names: { metric: name, imperial: name },
    category: 'own',
    mounting: 'as tested',
    mount: 'own',
    depthM,
    suits: ANY_PLACE,
    sources: { metric: source, imperial: source },
    howKnown: 'own',
  };
}

/** The finishes a project may name: the built-in ones and its own. Own ones win. */
export function finishLookup(
  project: Pick<Project, 'finishesCustom'>,
): (id: string) => Finish | undefined {
  const own = new Map<string, Finish>(
    project.finishesCustom.map((finish) => [finish.id, ownFinish(finish)]),
  );
  return (id) => own.get(id) ?? BY_ID.get(id);
}

/** Name of `finish` to stand within quotation marks: inches are told in letters. */
export const quotableName = (finish: Finish, units: LengthUnits): string =>
  finishName(finish, units).replaceAll('"', ' in');

/** Name of `finish` with its sizes in `units`. */
export const finishName = (finish: Finish, units: LengthUnits): string => finish.names[units];

/** Coefficient of `finish` in a band, or null where its source gives none. */
export function absorptionAt(finish: Finish, bandHz: OctaveHz): number | null {
  return finish.absorption[`${bandHz}`] ?? null;
}

/** The known id that is spelled most like `id`, to help a typing error along. */
export function nearestFinishId(id: string, project: Pick<Project, 'finishesCustom'>): string {
  const known = [...project.finishesCustom.map((finish) => finish.id), ...BY_ID.keys()];
  let best = { id: known[0] ?? '', distance: Infinity };
  for (const candidate of known) {
    const distance = editDistance(id, candidate);
    if (distance < best.distance) best = { id: candidate, distance };
  }
  return best.id;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, (previous[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    previous = row;
  }
  return previous[b.length] ?? 0;
}
