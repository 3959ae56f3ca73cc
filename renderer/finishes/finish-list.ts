/** The finishes to choose from for one part of the room, in the order that the person asks for. */

import { finishEffect, type FinishEffect } from '../../core/decay/finish-effect';
import type { Analysis } from '../../core/analysis/analyze';
import type { LengthUnits } from '../../core/quantity/length';
import { findFinishes } from '../../core/room/finish-search';
import {
  FINISHES,
  finishName,
  ownFinish,
  type FacePlace,
  type Finish,
} from '../../core/room/finishes';
import { roleOf, solidOfFace } from '../../core/room/faces';
import type { Project } from '../../core/room/project';
import type { Surface } from '../../core/room/space';

/** What takes the finish: a shell face, a fitting with all its faces, or a patch. */
export type FinishSpot =
  | { readonly kind: 'face'; readonly face: string }
  | { readonly kind: 'solid'; readonly id: string }
  | { readonly kind: 'patch'; readonly id: string; readonly face: string };

export type FinishOrder = 'help' | 'name';

export interface FinishRow {
  readonly finish: Finish;
  readonly name: string;
  /** Null where a judged octave has no figure. */
  readonly effect: FinishEffect | null;
}

export interface FinishGroup {
  readonly title: string;
  readonly rows: readonly FinishRow[];
}

export interface FinishListInput {
  readonly project: Project;
  readonly analysis: Pick<Analysis, 'decay' | 'geometry' | 'air'>;
  readonly spot: FinishSpot;
  readonly units: LengthUnits;
  readonly query: string;
  readonly order: FinishOrder;
}

/** Whether a surface belongs to the spot. */
function takes(spot: FinishSpot): (surface: Surface) => boolean {
  switch (spot.kind) {
    case 'face':
      return ({ face, patch }) => face === spot.face && patch === null;
    case 'solid':
      return ({ face, patch }) => solidOfFace(face) === spot.id && patch === null;
    case 'patch':
      return ({ patch }) => patch === spot.id;
  }
}

const PLACE_NAMES: Readonly<Record<FacePlace, string>> = {
  floor: 'floors',
  wall: 'walls',
  ceiling: 'ceilings',
};

/** What the finish is made for, where that is another place than the spot; null where it suits. */
export function madeFor(finish: Finish, spot: FinishSpot): string | null {
  if (spot.kind === 'solid' || finish.suits.includes(roleOf(spot.face))) return null;
  return `made for ${finish.suits.map((place) => PLACE_NAMES[place]).join(' and ')}`;
}

/** The groups that have something: one's own, what shops sell in one's sizes, the rest, what does not suit. */
export function finishList(input: FinishListInput): readonly FinishGroup[] {
  const { project, analysis, spot, units, query, order } = input;
  const room = {
    decay: analysis.decay,
    geometry: analysis.geometry,
    speedMS: analysis.air.speedOfSoundMS,
  };
  const own = project.finishesCustom.map(ownFinish);
  const ownIds = new Set(own.map(({ id }) => id));
  const found = findFinishes(query, [...own, ...FINISHES.filter(({ id }) => !ownIds.has(id))]);
  const market = units === 'metric' ? 'metric' : 'north-american';
  const groupOf = (finish: Finish): number => {
    if (madeFor(finish, spot) !== null) return 5;
    if (finish.category === 'Glass and doors' && spot.kind !== 'patch') return 4;
    if (finish.category === 'own') return 0;
    if (finish.shop !== true) return 2;
    return finish.builds === undefined || finish.builds === market ? 1 : 3;
  };
  const groups: FinishRow[][] = [[], [], [], [], [], []];
  const part = takes(spot);
  for (const finish of found) {
    const row = {
      finish,
      name: finishName(finish, units),
      effect: finishEffect(room, part, finish),
    };
    groups[groupOf(finish)]?.push(row);
  }
  const byName = (a: FinishRow, b: FinishRow): number => a.name.localeCompare(b.name, 'en');
  const help = (row: FinishRow): number => row.effect?.nearerS ?? -Infinity;
  const compare = (a: FinishRow, b: FinishRow): number =>
    order === 'name' || Math.abs(help(a) - help(b)) < 0.005 ? byName(a, b) : help(b) - help(a);
  const other = market === 'metric' ? 'in North American sizes' : 'in metric sizes';
  return [
    'My own',
    'Sold in shops',
    'Others, as tested',
    `Sold in shops ${other}`,
    'Doors, windows, openings',
    'For other faces',
  ]
    .map((title, i) => ({ title, rows: (groups[i] ?? []).sort(compare) }))
    .filter(({ rows }) => rows.length > 0);
}

/** What the finish does to the target, in words: `0.31 s nearer`. */
export function effectText(effect: FinishEffect | null, nowS: number): string {
  if (effect === null) return 'no figure';
  if (effect.outsideS < 0.005)
    return nowS < 0.005 ? 'stays within the target' : 'within the target';
  const by = Math.abs(effect.nearerS).toFixed(2);
  if (by === '0.00') return 'no change';
  return effect.nearerS > 0 ? `${by} s nearer` : `${by} s farther`;
}
