/**
 * The flat views of a room. A view is one record: which way of the room goes right and up on the paper,
 * which way the eye looks, where the room is cut, and what stands under it as title. All figures in m.
 */

import type { Measures } from '../quantity/measures';
import type { Axis } from '../room/faces';
import { farCorner } from '../room/point';
import type { Project } from '../room/project';
import { referencePlace } from '../room/seats';
import { practice } from '../room/practice/practice';

/** A direction along one of the room's axes. */
export interface Way {
  readonly axis: Axis;
  readonly sign: 1 | -1;
}

export const FLAT_VIEW_IDS = [
  'plan',
  'section',
  'front',
  'elevation-front',
  'elevation-back',
  'elevation-left',
  'elevation-right',
  'ceiling',
] as const;
export type FlatViewId = (typeof FLAT_VIEW_IDS)[number];

export interface FlatView {
  readonly id: FlatViewId;
  /** Title on the sheet. */
  readonly title: string;
  /** As it stands in a sentence. */
  readonly name: string;
  /** What goes right and up on the paper, and which way the eye looks through it. */
  readonly right: Way;
  readonly up: Way;
  readonly looks: Way;
  /** Where the room is cut, along the axis that the eye looks along, m. */
  readonly cutAt: (project: Project) => number;
  /** What is between the eye and the cut: dashed, as what hangs overhead in a plan, or left out. */
  readonly beforeCut: 'dashed' | 'left out';
  /** Whether seats, and the rays to the ears, are drawn: before a wall they would hide it. */
  readonly people: boolean;
  /** Where it is cut, in words. */
  readonly note: (project: Project, measures: Measures) => string;
}

/** Plans are cut at this height, m. */
export const PLAN_CUT_M = practice('plan-cut');

const BEHIND: Way = { axis: 1, sign: 1 };
const RIGHT: Way = { axis: 0, sign: 1 };
const UP: Way = { axis: 2, sign: 1 };
const against = ({ axis, sign }: Way): Way => ({ axis, sign: sign === 1 ? -1 : 1 });

const planCutM = ({ room }: Project): number => Math.min(PLAN_CUT_M, room.size.height / 2);
const middleM = ({ room }: Project, axis: Axis): number => farCorner(room.size)[axis] / 2;

/** Within the shell, or its middle where the place is outside it. */
function within(project: Project, axis: Axis, at: number | undefined): number {
  const far = farCorner(project.room.size)[axis];
  return at !== undefined && at > 0 && at < far ? at : far / 2;
}

/** The long section goes through the reference place (our own convention), so that it shows its sight line. */
const longCutM = (project: Project): number =>
  within(project, 0, referencePlace(project)?.position[0]);

/** The cross section goes through the last row, so that it shows its riser (our own convention). */
const crossCutM = (project: Project): number => {
  const { rows } = project.seating;
  return within(project, 1, rows.length === 0 ? undefined : Math.max(...rows.map(({ y }) => y)));
};

const fromFloor = (atM: number, { length }: Measures): string =>
  `cut ${length(atM)} above the floor`;

/** A wall seen from the middle of the room. */
const elevation = (id: FlatViewId, title: string, right: Way, looks: Way): FlatView => ({
  id,
  title: `Elevation of the ${title}`,
  name: `elevation of the ${title}`,
  right,
  up: UP,
  looks,
  cutAt: (project) => middleM(project, looks.axis),
  beforeCut: 'left out',
  people: false,
  note: () => 'seen from the middle of the room',
});

export const FLAT_VIEWS: Readonly<Record<FlatViewId, FlatView>> = {
  // The plan lies as the long section stands, screen wall on the left: the room's corner of origin
  // comes bottom left, and a room longer than wide fills the sheet.
  plan: {
    id: 'plan',
    title: 'Plan',
    name: 'plan',
    right: BEHIND,
    up: RIGHT,
    looks: against(UP),
    cutAt: planCutM,
    beforeCut: 'dashed',
    people: true,
    note: (project, measures) => fromFloor(planCutM(project), measures),
  },
  section: {
    id: 'section',
    title: 'Long section',
    name: 'long section',
    right: BEHIND,
    up: UP,
    looks: RIGHT,
    cutAt: longCutM,
    beforeCut: 'dashed',
    people: true,
    note: (project, { length }) => `cut ${length(longCutM(project))} from the left wall`,
  },
  front: {
    id: 'front',
    title: 'Cross section',
    name: 'cross section to the screen',
    right: RIGHT,
    up: UP,
    looks: against(BEHIND),
    cutAt: crossCutM,
    beforeCut: 'dashed',
    people: true,
    note: (project, { length }) => `cut ${length(crossCutM(project))} from the screen wall`,
  },
  'elevation-front': elevation('elevation-front', 'screen wall', RIGHT, against(BEHIND)),
  'elevation-back': elevation('elevation-back', 'back wall', against(RIGHT), BEHIND),
  'elevation-left': elevation('elevation-left', 'left wall', against(BEHIND), against(RIGHT)),
  'elevation-right': elevation('elevation-right', 'right wall', BEHIND, RIGHT),
  // As a mirror on the floor shows it: laid over the plan, each thing is above its place.
  ceiling: {
    id: 'ceiling',
    title: 'Reflected ceiling plan',
    name: 'reflected ceiling plan',
    right: BEHIND,
    up: RIGHT,
    looks: UP,
    cutAt: planCutM,
    beforeCut: 'left out',
    people: false,
    note: (project, measures) => fromFloor(planCutM(project), measures),
  },
};
