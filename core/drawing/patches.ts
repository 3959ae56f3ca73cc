/**
 * Doors, windows, passages and panels. Seen from the front: an outline with one diagonal. Seen on edge:
 * an opening breaks the line of its wall, a panel is a strip before it; a door's leaf and the quarter
 * circle of its swing are drawn in the plan.
 */

import { faceOf, type BuiltFace } from '../room/built-face';
import { FACE_NORMALS, faceAxes, solidOfFace, type Axis } from '../room/faces';
import { boxBefore } from '../room/openings';
import { isOpening, PATCH_KIND } from '../room/patch-kinds';
import type { Patch, Project } from '../room/project';
import { positionOf, type Body } from './bodies';
import { cornersOf, type Look, type Mark, type PaperRect, type Tone } from './marks';
import { depthsOf, hiddenAxis, linesOnPaper, rectOnPaper } from './on-paper';
import { leafLines, patchOutline } from './space-lines';
import type { FlatView } from './views';
import { practice } from '../room/practice/practice';

/** Drawn depth of an opening in its wall, and of a panel before it, m. */
const WALL_M = practice('drawn-opening-depth');
const PANEL_M = practice('drawn-panel-depth');

export interface PatchDrawing {
  /** What is seen from the front, among the bodies. */
  readonly bodies: readonly Body[];
  /** What is drawn over the line of the shell. */
  readonly over: readonly Mark[];
}

export function drawnPatches(
  view: FlatView,
  project: Project,
  cutM: number,
  chosen: string | null,
): PatchDrawing {
  const drawn = project.room.patches.map((patch) => {
    const plane = faceOf(project.room, patch.face);
    if (!plane) return { bodies: [], over: [] };
    const tone: Tone = patch.id === chosen ? 'accent' : 'ink-soft';
    const over = leaf(view, project, patch, tone);
    const { axis } = FACE_NORMALS[plane.side];
    if (axis === hiddenAxis(view)) {
      return { bodies: fromFront(view, project, patch, plane, tone), over };
    }
    return { bodies: [], over: [...onEdge(view, patch, plane, cutM, tone), ...over] };
  });
  return {
    bodies: drawn.flatMap(({ bodies }) => bodies),
    over: drawn.flatMap(({ over }) => over),
  };
}

/** On a face that turns to the eye; dashed on one that turns away, which is before the cut or hidden. */
function fromFront(
  view: FlatView,
  { room }: Project,
  patch: Patch,
  plane: BuiltFace,
  tone: Tone,
): readonly Body[] {
  const turnsAway = view.looks.sign === plane.inward;
  const look: Look = { tone, weight: 'seen', ...(turnsAway ? { dashed: true } : {}) };
  const [nearM, farM] = depthsOf(view, boxBefore(plane, patch.rect, 0.01));
  return [
    {
      // A patch on the face of a solid lies over it.
      nearM: nearM - 1e-3,
      placeM: farM,
      marks: linesOnPaper(view, 'patches', patchOutline(room, patch), look),
    },
  ];
}

function onEdge(
  view: FlatView,
  patch: Patch,
  plane: BuiltFace,
  cutM: number,
  tone: Tone,
): readonly Mark[] {
  const opens = isOpening(patch) && solidOfFace(patch.face) === null;
  const box = boxBefore(plane, patch.rect, opens ? -WALL_M : PANEL_M);
  const sorted = {
    min: box.min.map((at, n) => Math.min(at, box.max[n] ?? at)) as unknown as typeof box.min,
    max: box.max.map((at, n) => Math.max(at, box.min[n] ?? at)) as unknown as typeof box.max,
  };
  const position = positionOf(view, cutM, sorted);
  if (position === 'before' && view.beforeCut === 'left out') return [];
  const rect = rectOnPaper(view, sorted);
  const layer = 'patches';
  const isCut = position === 'cut';
  // An opening that is not cut lies behind the line of its wall.
  if (opens && !isCut && view.beforeCut === 'left out') return [];
  const edge: Mark = {
    kind: 'lines',
    layer,
    paths: [cornersOf(rect)],
    closed: true,
    tone,
    weight: 'seen',
    ...(isCut ? {} : { dashed: true }),
  };
  if (!isCut) return [edge];
  const { onEdge } = PATCH_KIND[patch.kind];
  return [
    { kind: 'fill', layer, points: cornersOf(rect), tone: 'raised' },
    edge,
    ...(onEdge === 'pane' ? [pane(view, rect, FACE_NORMALS[plane.side].axis, tone)] : []),
    ...(onEdge === 'sill' ? [sill(view, patch, plane, tone)].flat() : []),
  ];
}

/** The glass of a window, in the middle of its wall. */
function pane(view: FlatView, { min, max }: PaperRect, normal: Axis, tone: Tone): Mark {
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const upright = view.right.axis === normal;
  return {
    kind: 'lines',
    layer: 'patches',
    paths: [
      upright
        ? [
            [x, min[1]],
            [x, max[1]],
          ]
        : [
            [min[0], y],
            [max[0], y],
          ],
    ],
    tone,
    weight: 'light',
  };
}

/** A passage has nothing in it: its line is dashed. */
function sill(view: FlatView, patch: Patch, plane: BuiltFace, tone: Tone): readonly Mark[] {
  const { min, max } = boxBefore(plane, patch.rect, 0);
  const along = faceAxes(plane.side).find((axis) => axis !== hiddenAxis(view));
  if (along === undefined) return [];
  return linesOnPaper(view, 'patches', [[min, max]], { tone, weight: 'light', dashed: true });
}

function leaf(view: FlatView, { room }: Project, patch: Patch, tone: Tone): readonly Mark[] {
  if (view.id !== 'plan') return [];
  const [open, ...arc] = leafLines(room, patch);
  return [
    ...(open ? linesOnPaper(view, 'patches', [open], { tone, weight: 'seen' }) : []),
    ...linesOnPaper(view, 'patches', arc, { tone, weight: 'light' }),
  ];
}
