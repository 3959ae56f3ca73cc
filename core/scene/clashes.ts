/** What a box runs into, and by how much: one answer for searches, findings, remedies and drags. */

import { distanceToBoxM, overlapM, planOverlapM, TOUCH_M, type Box } from './box';
import { WALK_M, type Body, type OpeningBody, type SeatBody, type Sweep } from './bodies';
import { practice } from '../room/practice/practice';

/** Ears no nearer to a cabinet than this, m. */
export const HEAD_CLEARANCE_M = practice('head-clearance');

/** A box that is to stand or hang somewhere. */
export interface Visitor {
  readonly box: Box;
  /** It stands, so that people would have to walk round it. */
  readonly isOnFloor: boolean;
  /** Flush with its face: a leaf passes before it. */
  readonly isFlush: boolean;
  /** Meant to be behind the picture. */
  readonly isBehindPicture: boolean;
}

export type ClashKind =
  | Exclude<Body['kind'], 'seat'>
  /** Where a leaf swings; where one walks through an opening. */
  | 'swing'
  | 'way'
  /** On the floor that a seat and its legs need; too near to the ears of the person in it. */
  | 'seat'
  | 'head';

export interface Clash {
  readonly kind: ClashKind;
  readonly body: Body;
  /** How deep it runs in, m; for a head the distance, for an aisle the width that is left. */
  readonly valueM: number;
  /** Least for a head and an aisle, most for all others. */
  readonly limitM: number;
}

/** One clash after the other in the order of the bodies, so that who asks for one need not wait for all. */
export function* clashes(visitor: Visitor, bodies: readonly Body[]): Generator<Clash, undefined> {
  for (const body of bodies) {
    switch (body.kind) {
      case 'door':
      case 'window':
      case 'passage':
        yield* withOpening(visitor, body);
        break;
      case 'seat':
        yield* withSeat(visitor, body);
        break;
      case 'aisle': {
        const leftM = visitor.isOnFloor ? leftInAisleM(visitor.box, body.box) : Infinity;
        if (leftM < WALK_M - TOUCH_M)
          yield { kind: 'aisle', body, valueM: Math.max(0, leftM), limitM: WALK_M };
        break;
      }
      case 'screen':
        if (!visitor.isBehindPicture) yield* overlap(body.kind, visitor.box, body, body.box);
        break;
      default:
        yield* overlap(body.kind, visitor.box, body, body.box);
    }
  }
  return undefined;
}

/** True where the box runs into none of them. */
export const isClear = (visitor: Visitor, bodies: readonly Body[]): boolean =>
  clashes(visitor, bodies).next().done === true;

function* overlap(kind: ClashKind, box: Box, body: Body, other: Box): Generator<Clash> {
  const valueM = overlapM(box, other);
  if (valueM > 0) yield { kind, body, valueM, limitM: 0 };
}

function* withOpening(visitor: Visitor, body: OpeningBody): Generator<Clash> {
  const { box, isOnFloor, isFlush } = visitor;
  const { before } = body;
  yield* overlap(body.kind, box, body, body.box);
  if (before?.kind === 'swing' && !isFlush) {
    const valueM = inSwingM(box, before);
    if (valueM > 0) yield { kind: 'swing', body, valueM, limitM: 0 };
  }
  if (before?.kind === 'way' && isOnFloor) yield* overlap('way', box, body, before.box);
}

/** How deep a box stands in the quarter circle of a leaf, m. */
function inSwingM(box: Box, { box: sweep, hinge, leafM }: Sweep): number {
  if (overlapM(box, sweep) === 0) return 0;
  const near = (axis: 0 | 1): number =>
    Math.min(
      Math.max(hinge[axis], box.min[axis], sweep.min[axis]),
      box.max[axis],
      sweep.max[axis],
    ) - hinge[axis];
  const depth = leafM - Math.hypot(near(0), near(1));
  return depth > TOUCH_M ? depth : 0;
}

/** What hangs keeps off the head alone; what stands also off the seat, and off the person seen from above. */
function* withSeat({ box, isOnFloor }: Visitor, body: SeatBody): Generator<Clash> {
  const { ears } = body.person;
  const valueM = distanceToBoxM(box, ears);
  if (valueM < HEAD_CLEARANCE_M) {
    yield { kind: 'head', body, valueM, limitM: HEAD_CLEARANCE_M };
    return;
  }
  if (!isOnFloor) return;
  const overheadM = distanceToBoxM(box, [ears[0], ears[1], box.min[2]]);
  const depth = Math.max(planOverlapM(box, body.box), HEAD_CLEARANCE_M - TOUCH_M - overheadM);
  if (depth > 0) yield { kind: 'seat', body, valueM: depth, limitM: 0 };
}

/** The wider of the two ways that a box leaves between it and the ends of an aisle, m. */
function leftInAisleM(box: Box, aisle: Box): number {
  if (planOverlapM(box, aisle) === 0) return Infinity;
  return Math.max(box.min[0] - aisle.min[0], aisle.max[0] - box.max[0]);
}
