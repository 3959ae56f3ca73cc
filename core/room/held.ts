/**
 * Holding what an edit has made within the ranges that a room file takes, so that it can be opened again
 * whatever moved it: a wall that came nearer, a hand, a remedy. What is not a number stays as it is: the
 * reader refuses it, and says where.
 */

import { roundLength } from '../quantity/length';
import { AXES, type Axis } from './faces';
import { mapPoint } from './point';
import {
  AIR_LIMITS,
  BOX_SIDE_LIMITS_M,
  PLACE_LIMITS_M,
  ROW_LIMITS,
  SCREEN_LIMITS,
  SIZE_LIMITS_M,
  SUBWOOFER_LIMITS,
} from './limits';
import type { Patch, PlacedSpeaker, Point, Project, Solid, Subwoofer } from './project';

type Limits = readonly [number, number];

/** Thinnest that a box or a patch may become, m: the grain that lengths are rounded to. */
const LEAST_SPAN_M = 1e-5;

const within = (value: number, [low, high]: Limits): number => Math.min(Math.max(value, low), high);

/** `before` with the fields of `change`; the very same object where all of them are as they were. */
function changed<T extends object>(before: T, change: Partial<T>): T {
  const now: T = { ...before, ...change };
  const fields = Object.keys(change) as (keyof T)[];
  return fields.every((field) => Object.is(before[field], now[field])) ? before : now;
}

/** `list` with each item held; the very same list where all of them are. */
function heldList<T>(list: readonly T[], hold: (item: T) => T): readonly T[] {
  const held = list.map(hold);
  return held.every((item, i) => Object.is(item, list[i])) ? list : held;
}

/** `point` with each coordinate held within `limits`. */
function heldPoint(point: Point, limits: Limits = PLACE_LIMITS_M): Point {
  const held = mapPoint(point, (value) => within(value, limits));
  return held.every((value, axis) => Object.is(value, point[axis])) ? point : held;
}

/** A span within the limits of places whose ends never meet: it keeps its length where it can. */
export function heldSpan(low: number, high: number): readonly [number, number] {
  const [least, most] = PLACE_LIMITS_M;
  const shift = Math.max(least - low, 0) - Math.max(high - most, 0);
  const from = within(low + shift, [least, most - LEAST_SPAN_M]);
  const to = within(high + shift, [least, most]);
  // Lengths stand on a grid of the same grain, so that the least span survives being rounded.
  return from < to ? [from, to] : [from, roundLength(from + LEAST_SPAN_M)];
}

function heldSolid(solid: Solid): Solid {
  const span = (axis: Axis): readonly [number, number] =>
    heldSpan(solid.min[axis], solid.max[axis]);
  const spans = [span(0), span(1), span(2)] as const;
  const same = AXES.every(
    (axis) =>
      Object.is(spans[axis][0], solid.min[axis]) && Object.is(spans[axis][1], solid.max[axis]),
  );
  const corner = (end: 0 | 1): Point => [spans[0][end], spans[1][end], spans[2][end]];
  return same ? solid : { ...solid, min: corner(0), max: corner(1) };
}

function heldPatch(patch: Patch): Patch {
  const [u0, v0, u1, v1] = patch.rect;
  const [left, right] = heldSpan(u0, u1);
  const [low, high] = heldSpan(v0, v1);
  const rect = [left, low, right, high] as const;
  return rect.every((value, i) => Object.is(value, patch.rect[i])) ? patch : { ...patch, rect };
}

/** `group` with each figure that `limits` names held within them. */
function heldFields<T extends object>(group: T, limits: Readonly<Record<string, Limits>>): T {
  const known = group as Readonly<Record<string, unknown>>;
  const out = Object.entries(limits).flatMap(([field, range]) => {
    const value = known[field];
    return typeof value === 'number' && !Object.is(within(value, range), value)
      ? [[field, within(value, range)] as const]
      : [];
  });
  return out.length === 0 ? group : { ...group, ...Object.fromEntries(out) };
}

const heldSpeaker = (speaker: PlacedSpeaker): PlacedSpeaker =>
  changed(speaker, placeAndBox(speaker));

/** Where a loudspeaker or subwoofer is and how large its box is, where the file says so. */
const placeAndBox = ({
  position,
  boxM,
}: Pick<Subwoofer, 'position' | 'boxM'>): Pick<Subwoofer, 'position' | 'boxM'> => ({
  position: heldPoint(position),
  ...(boxM === undefined ? {} : { boxM: heldPoint(boxM, BOX_SIDE_LIMITS_M) }),
});

const { delayMs, levelDb } = SUBWOOFER_LIMITS;

const heldSubwoofer = (sub: Subwoofer): Subwoofer =>
  changed(heldFields(sub, { delayMs, levelDb }), placeAndBox(sub));

/** `project` with every figure that has a range in the file held within it; itself where all are. */
export function heldProject(project: Project): Project {
  const { room, seating, screen, air, projector, speakers } = project;
  return changed(project, {
    room: changed(room, {
      size: heldFields(room.size, SIZE_LIMITS_M),
      solids: heldList(room.solids, heldSolid),
      patches: heldList(room.patches, heldPatch),
    }),
    seating: changed(seating, {
      rows: heldList(seating.rows, (row) => heldFields(row, ROW_LIMITS)),
    }),
    screen: heldFields(screen, SCREEN_LIMITS),
    air: heldFields(air, AIR_LIMITS),
    ...(projector
      ? { projector: changed(projector, { position: heldPoint(projector.position) }) }
      : {}),
    speakers: changed(speakers, {
      placed: heldList(speakers.placed, heldSpeaker),
      subwoofers: heldList(speakers.subwoofers, heldSubwoofer),
    }),
  });
}
