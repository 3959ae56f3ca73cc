/**
 * What is in the room and may not be run into: fittings, doors and windows with the floor before them,
 * the picture, subwoofers, seats with their people, and the ways past the rows. Loudspeakers are bodies
 * too: `core/speakers/obstacles.ts` adds them, since their layout says which of them are there.
 */

import { faceOf } from '../room/built-face';
import { boxBefore, leafOf } from '../room/openings';
import { isWay, PATCH_KIND } from '../room/patch-kinds';
import type { Patch, Project } from '../room/project';
import { screenRect } from '../room/screen';
import type { Box } from './box';
import { aislesOf, peopleOf, type Person } from './people';
import { subwooferBox } from './subwoofer-box';
import { practice } from '../room/practice/practice';

/** How far the casing of a door or a window stands before the wall, m. */
export const CASING_M = practice('casing-depth');
/** How far a screen and its frame stand before the wall, m. */
const SCREEN_DEPTH_M = practice('screen-depth');
/** Least width that one person walks through, and the step taken through a door, m. */
export const WALK_M = practice('walk-width');

interface Thing {
  /** As the file names it: an id, a channel, `row seat` of a person. */
  readonly id: string;
  /** What it takes of the room. */
  readonly box: Box;
}

/** What the leaf of a door sweeps over: the quarter circle about its hinge, within `box`. */
export interface Sweep {
  readonly kind: 'swing';
  readonly box: Box;
  /** In plan, m. */
  readonly hinge: readonly [number, number];
  readonly leafM: number;
}

/** The floor that one needs to walk through where no leaf swings in. */
export interface Step {
  readonly kind: 'way';
  readonly box: Box;
}

/** A door, window or passage: its casing is `box`. */
export interface OpeningBody extends Thing {
  readonly kind: 'door' | 'window' | 'passage';
  /** What has to stay clear before it; null of a window, and of a hatch in floor or ceiling. */
  readonly before: Sweep | Step | null;
}

export interface SeatBody extends Thing {
  readonly kind: 'seat';
  readonly person: Person;
}

export interface SpeakerBody extends Thing {
  readonly kind: 'speaker';
  /** True of one that is to come with a larger layout. */
  readonly isLater: boolean;
}

export type Body =
  | (Thing & { readonly kind: 'solid' | 'screen' | 'subwoofer' | 'aisle' })
  | OpeningBody
  | SeatBody
  | SpeakerBody;

/**
 * Every body but the loudspeakers, in this order: fittings, openings, the picture, subwoofers (those of
 * `except` left out), seats, ways past the rows.
 */
export function bodiesOf(project: Project, except: readonly string[] = []): readonly Body[] {
  const { room, speakers } = project;
  const { leftX, rightX, bottomZ, topZ } = screenRect(project);
  const picture: Box = { min: [leftX, 0, bottomZ], max: [rightX, SCREEN_DEPTH_M, topZ] };
  return [
    ...room.solids.map(({ id, min, max }): Body => ({ kind: 'solid', id, box: { min, max } })),
    ...openingsOf(project),
    { kind: 'screen', id: 'screen', box: picture },
    ...speakers.subwoofers
      .filter(({ id }) => !except.includes(id))
      .map((sub): Body => ({ kind: 'subwoofer', id: sub.id, box: subwooferBox(project, sub).box })),
    ...peopleOf(project).map((person): Body => {
      const { row, seat, footprint } = person;
      return { kind: 'seat', id: `${row} ${seat}`, box: footprint, person };
    }),
    ...aislesOf(project).map(({ row, box }): Body => ({ kind: 'aisle', id: row, box })),
  ];
}

/** Doors, windows and passages, each with what has to stay clear before it. */
export function openingsOf({ room }: Pick<Project, 'room'>): readonly OpeningBody[] {
  return room.patches.flatMap((patch): readonly OpeningBody[] => {
    const { kind } = patch;
    const plane = PATCH_KIND[kind].isOpening ? faceOf(room, patch.face) : null;
    if (!plane || kind === 'screen' || kind === 'panel' || kind === 'other') return [];
    const box = boxBefore(plane, patch.rect, CASING_M);
    return [{ kind, id: patch.id, box, before: clearBefore(room, patch) }];
  });
}

function clearBefore(room: Project['room'], patch: Patch): Sweep | Step | null {
  const plane = isWay(patch) ? faceOf(room, patch.face) : null;
  if (!plane || plane.side === 'floor' || plane.side === 'ceiling') return null;
  const leaf = leafOf(room, patch);
  return leaf?.sweep
    ? { kind: 'swing', box: leaf.sweep, hinge: leaf.hinge, leafM: leaf.widthM }
    : { kind: 'way', box: boxBefore(plane, patch.rect, WALK_M) };
}
