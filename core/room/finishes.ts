/**
 * Finishes: absorption coefficients by octave, each row with its source and how it is known. The
 * built-in rows are data (resources/finishes); a project may add its own.
 */

import library from '../../resources/finishes/finishes.json';
import type { OctaveHz } from '../quantity/bands';
import type { AbsorptionByBand, Project } from './project';

export interface Finish {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly mounting: string;
  readonly absorption: AbsorptionByBand;
  readonly source: string;
  /** `transcription`: the figures were read in a copy of the source; `own`: typed in by the person. */
  readonly howKnown: 'transcription' | 'definition' | 'own';
}

/** Every built-in finish, grouped by category in the order of the file. */
export const FINISHES = library.finishes as readonly Finish[];

const BY_ID: ReadonlyMap<string, Finish> = new Map(FINISHES.map((finish) => [finish.id, finish]));

/** The finishes a project may name: the built-in ones and its own. Own ones win. */
export function finishLookup(
  project: Pick<Project, 'finishesCustom'>,
): (id: string) => Finish | undefined {
  const own = new Map<string, Finish>(
    project.finishesCustom.map((finish) => [
      finish.id,
      { ...finish, category: 'own', mounting: 'as tested', howKnown: 'own' },
    ]),
  );
  return (id) => own.get(id) ?? BY_ID.get(id);
}

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
