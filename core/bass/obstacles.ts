/** Why the box of a subwoofer cannot stand at a place: one answer for search, drag and remedy alike. */

import type { Point, Project } from '../room/project';
import { isInTheOpen, outsideShellM } from '../room/space';
import { bodiesOf, type Body } from '../scene/bodies';
import { planOverlapM, TOUCH_M, type Box } from '../scene/box';
import { clashes, type Clash, type Visitor } from '../scene/clashes';
import { hidesPicture } from '../scene/hidden-picture';
import { peopleOf } from '../scene/people';
import { standsLevel } from '../scene/stand';
import { boxOfSize } from '../scene/subwoofer-box';
import { speakerBodies } from '../speakers/obstacles';

export type Obstacle =
  /** It would stand in a solid of this id, or over the edge of it. */
  | { readonly kind: 'fitting'; readonly id: string }
  /** Part of it would be outside the shell. */
  | { readonly kind: 'outside' }
  /** It would stand where the leaf of this patch swings, or where one walks through it. */
  | { readonly kind: 'door'; readonly id: string }
  /** It would cover part of it. */
  | { readonly kind: 'window'; readonly id: string }
  /** It would rise in front of the picture. */
  | { readonly kind: 'picture' }
  | { readonly kind: 'subwoofer'; readonly id: string }
  | { readonly kind: 'seat'; readonly row: string; readonly seat: number }
  /** It would leave no way to walk past the end of this row. */
  | { readonly kind: 'walkway'; readonly row: string }
  /** It would run into the box of this channel, or what it stands on. */
  | { readonly kind: 'speaker'; readonly channel: string }
  /** The same of one that is to come with a larger layout. */
  | { readonly kind: 'planned'; readonly channel: string };

/** What is in the way of a box with its middle at a place; null where nothing is. */
export type InTheWay = (position: Point) => Obstacle | null;

/**
 * The first of fitting, shell, door or window, picture, subwoofer, seat, walkway, loudspeaker. `others`
 * are the subwoofers that stay where they are.
 */
export function inTheWay(
  project: Project,
  sizeM: Point,
  others: Project['speakers']['subwoofers'] = [],
): InTheWay {
  const { room } = project;
  const among = { ...project, speakers: { ...project.speakers, subwoofers: others } };
  const bodies = bodiesOf(among);
  const solids = bodies.filter(({ kind }) => kind === 'solid');
  const rest = [...bodies.filter(({ kind }) => kind !== 'solid'), ...speakerBodies(project)];
  const people = peopleOf(project);

  return (position) => {
    const box = boxOfSize(project, position, sizeM);
    const visitor: Visitor = { box, isOnFloor: true, isFlush: false, isBehindPicture: false };
    const solid = firstOf(visitor, solids)?.body ?? edgeUnder(project, box);
    if (solid) return { kind: 'fitting', id: solid.id };
    const out = outsideShellM(room.size, box.min, box.max);
    if (out > TOUCH_M || !isInTheOpen(position, room)) return { kind: 'outside' };
    const clash = firstOf(visitor, rest);
    if (clash && !isAfterPicture(clash)) return asObstacle(clash);
    if (hidesPicture(box, project, people)) return { kind: 'picture' };
    return clash && asObstacle(clash);
  };
}

const firstOf = (visitor: Visitor, bodies: readonly Body[]): Clash | null =>
  clashes(visitor, bodies).next().value ?? null;

const isAfterPicture = ({ body }: Clash): boolean =>
  ['subwoofer', 'seat', 'aisle', 'speaker'].includes(body.kind);

function asObstacle({ body }: Clash): Obstacle {
  switch (body.kind) {
    case 'solid':
      return { kind: 'fitting', id: body.id };
    case 'door':
    case 'passage':
      return { kind: 'door', id: body.id };
    case 'window':
    case 'subwoofer':
      return { kind: body.kind, id: body.id };
    case 'screen':
      return { kind: 'picture' };
    case 'seat':
      return { kind: 'seat', row: body.person.row, seat: body.person.seat };
    case 'aisle':
      return { kind: 'walkway', row: body.id };
    case 'speaker':
      return { kind: body.isLater ? 'planned' : 'speaker', channel: body.id };
  }
}

/** The same of one place, with the subwoofers `others` where they are. */
export function obstacleOf(
  project: Project,
  position: Point,
  sizeM: Point,
  others: Project['speakers']['subwoofers'] = [],
): Obstacle | null {
  return inTheWay(project, sizeM, others)(position);
}

/** The stage or riser whose edge lies under the box. */
function edgeUnder({ room }: Project, box: Box): { readonly id: string } | undefined {
  if (standsLevel({ room }, box)) return undefined;
  return room.solids.find(
    (solid) =>
      (solid.kind === 'stage' || solid.kind === 'riser') &&
      planOverlapM(box, solid) > 0 &&
      !holdsInPlan(solid, box),
  );
}

const holdsInPlan = ({ min, max }: Box, box: Box): boolean =>
  box.min[0] >= min[0] && box.min[1] >= min[1] && box.max[0] <= max[0] && box.max[1] <= max[1];
