/** Handles of the fittings: a tag to move each, and grips on the faces of the chosen one to stretch it. */

import { carpenterStepM } from '../../../core/quantity/carpenter-step';
import { roundLength } from '../../../core/quantity/length';
import { FACE_NORMALS, solidSideName } from '../../../core/room/faces';
import { LEAST_EXTENT_M } from '../../../core/room/fitting-presets';
import { movedSolid, stretchedSolid } from '../../../core/room/move-solid';
import { farCorner, mapPoint } from '../../../core/room/point';
import { FACES, type Point, type Solid } from '../../../core/room/project';
import { changeFittings, withSolid } from '../../state/change-fittings';
import { removeThing } from '../../state/remove-thing';
import { selectedId } from '../../state/selection';
import { DragHandle } from '../../drawing/DragHandle';
import { middleOf } from '../../../core/drawing/label-places';
import { DRAG_NORMAL, isMarked, NUDGE_AXES, type LabelContext } from '../../drawing/label-context';
import { RANKS } from '../../../core/drawing/label-requests';
import type { PlacedLabel } from '../../drawing/Labels';
import { alongAxis, onPlane } from '../../drawing/stage';
import type { Gesture } from '../../state/gesture';

export function fittingLabels(context: LabelContext): readonly PlacedLabel[] {
  const { solids } = context.project.room;
  const chosen = solids.find((solid) => solid.id === selectedId(context.session.selected, 'solid'));
  return [
    ...solids.map((solid) => tag(context, solid)),
    ...(chosen ? gripsOf(context, chosen) : []),
  ];
}

function tag(context: LabelContext, solid: Solid): PlacedLabel {
  const { project, units, view, stage, hold, session } = context;
  const thing = { kind: 'solid', id: solid.id } as const;
  const marked = isMarked(context, thing);
  const middle = middleOf(solid.min, solid.max);
  const move = (from: Solid, by: Point, fine: boolean, gesture: Gesture): void => {
    const moved = movedSolid(from, by, project.room, carpenterStepM(units, fine));
    changeFittings(withSolid(project.room.solids, moved), `place of ${solid.id}`, gesture);
  };
  return {
    key: `fitting-${solid.id}`,
    at: middle,
    mayShift: true,
    ...(marked ? { rank: RANKS.chosen } : {}),
    node: (
      <DragHandle
        className={marked ? 'row-chip fitting-chip marked' : 'row-chip fitting-chip'}
        label={`${solid.id}: drag to move, arrow keys step`}
        stage={stage}
        onStart={() => {
          hold(true);
          session.select(thing);
        }}
        onEnd={() => hold(false)}
        onRemove={() => removeThing({ kind: 'solid', id: solid.id })}
        onPress={() => session.toggle(thing)}
        onDrag={(ray, startRay, fine, gesture) => {
          const from = gesture.base.room.solids.find((known) => known.id === solid.id);
          if (!from) return;
          const at = middleOf(from.min, from.max);
          const now = onPlane(ray, at, DRAG_NORMAL[view]);
          const then = onPlane(startRay, at, DRAG_NORMAL[view]);
          if (!now || !then) return;
          const by = mapPoint(now, (value, axis) =>
            axis === DRAG_NORMAL[view] ? 0 : value - then[axis],
          );
          move(from, by, fine, gesture);
        }}
        onNudge={(right, up, fine, gesture) => {
          const [axisRight, signRight, axisUp, signUp] = NUDGE_AXES[view];
          const stepM = carpenterStepM(units, fine);
          const by: [number, number, number] = [0, 0, 0];
          by[axisRight] += right * signRight * stepM;
          by[axisUp] += up * signUp * stepM;
          const nudged = {
            ...solid,
            min: shifted(solid.min, by),
            max: shifted(solid.max, by),
          };
          if (isWithin(nudged, context)) {
            changeFittings(withSolid(project.room.solids, nudged), `place of ${solid.id}`, gesture);
          }
        }}
      >
        {solid.kind}
      </DragHandle>
    ),
  };
}

const shifted = (at: Point, by: Point): Point =>
  mapPoint(at, (value, axis) => roundLength(value + by[axis]));

/** An arrow key moves exactly one step, so it does not snap; it only stays in the shell. */
function isWithin(solid: Solid, { project }: LabelContext): boolean {
  const { width, length, height } = project.room.size;
  return (
    solid.min.every((at) => at >= 0) &&
    solid.max[0] <= width &&
    solid.max[1] <= length &&
    solid.max[2] <= height
  );
}

function gripsOf(context: LabelContext, solid: Solid): readonly PlacedLabel[] {
  const { project, units, view, stage, hold } = context;
  return FACES.filter(
    (face) => view === 'room' || FACE_NORMALS[face].axis !== DRAG_NORMAL[view],
  ).map((face): PlacedLabel => {
    const { axis, side } = FACE_NORMALS[face];
    const at: [number, number, number] = [...middleOf(solid.min, solid.max)];
    at[axis] = side === 1 ? solid.max[axis] : solid.min[axis];
    const pull = (from: Solid, to: number, fine: boolean, gesture: Gesture): void => {
      const stepM = carpenterStepM(units, fine);
      const pulled = stretchedSolid(from, axis, side, to, project.room, stepM);
      changeFittings(withSolid(project.room.solids, pulled), `size of ${solid.id}`, gesture);
    };
    return {
      key: `fitting-grip-${solid.id}-${face}`,
      at,
      outwardFrom: middleOf(solid.min, solid.max),
      rank: RANKS.grip,
      node: (
        <DragHandle
          className={`grip fitting-grip fitting-grip-${face}`}
          label={`${solid.id}, ${solidSideName(face)}: drag to change its size, arrow keys step`}
          stage={stage}
          onStart={() => {
            hold(true);
          }}
          onEnd={() => hold(false)}
          onRemove={() => removeThing({ kind: 'solid', id: solid.id })}
          onDrag={(ray, startRay, fine, gesture) => {
            const from = gesture.base.room.solids.find((known) => known.id === solid.id);
            const now = alongAxis(ray, at, axis);
            const then = alongAxis(startRay, at, axis);
            if (!from || now === null || then === null) return;
            const start = side === 1 ? from.max[axis] : from.min[axis];
            pull(from, start + now - then, fine, gesture);
          }}
          onNudge={(right, up, fine, gesture) => {
            const stepM = carpenterStepM(units, fine);
            const out = (right !== 0 ? right : up) * stepM;
            const far = farCorner(project.room.size)[axis];
            const to = roundLength(Math.min(Math.max(at[axis] + out, 0), far));
            const put = (corner: Point): Point =>
              mapPoint(corner, (value, n) => (n === axis ? to : value));
            const next: Solid =
              side === 1 ? { ...solid, max: put(solid.max) } : { ...solid, min: put(solid.min) };
            if (next.max[axis] - next.min[axis] < LEAST_EXTENT_M) return;
            changeFittings(withSolid(project.room.solids, next), `size of ${solid.id}`, gesture);
          }}
        />
      ),
    };
  });
}
