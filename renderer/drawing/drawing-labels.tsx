/** Every label and handle of the drawing, with its place in the room. */

import { carpenterStepM, snapLength } from '../../core/quantity/carpenter-step';
import { formatLength } from '../../core/quantity/length';
import { SIZE_LIMITS_M } from '../../core/room/limits';
import type { Point, Side } from '../../core/room/project';
import { DimensionFigure, SIDE_NAMES } from './DimensionFigure';
import { middleOf, rowLabelWish, screenLabelWish } from '../../core/drawing/label-places';
import type { ShellDimension } from '../../core/drawing/dimensions';
import { DragHandle } from './DragHandle';
import { clamp, isMarked, type LabelContext } from './label-context';
import type { PlacedLabel } from './Labels';
import { speakerLabel } from './speaker-labels';
import { alongAxis } from './stage';
import type { Gesture } from '../state/gesture';

const AXES: Readonly<Record<Side, 0 | 1 | 2>> = { width: 0, length: 1, height: 2 };

export function drawingLabels(context: LabelContext): readonly PlacedLabel[] {
  return [
    ...context.dimensions.flatMap((dimension) => sideLabels(context, dimension)),
    ...rowLabels(context),
    ...context.analysis.speakers.map((speaker) => speakerLabel(context, speaker.channel)),
    ...namePlates(context),
  ];
}

function sideLabels(context: LabelContext, dimension: ShellDimension): readonly PlacedLabel[] {
  const { project, units, stage, change, hold, place } = context;
  const { side, from, to } = dimension;
  const axis = AXES[side];
  const { size } = project.room;
  const resize = (value: number, gesture: Gesture): void =>
    change({ kind: 'size', size: { ...size, [side]: clamp(value, SIZE_LIMITS_M[side]) } }, gesture);
  return [
    {
      key: `figure-${side}`,
      at: middleOf(from, to),
      node: <DimensionFigure side={side} marked={place?.kind === 'side' && place.side === side} />,
    },
    {
      key: `grip-${side}`,
      at: to,
      node: (
        <DragHandle
          className={`grip grip-${side}`}
          label={`Drag to change the ${side}; arrow keys step`}
          stage={stage}
          onStart={() => hold(true)}
          onEnd={() => hold(false)}
          onDrag={(ray, startRay, fine, gesture) => {
            const now = alongAxis(ray, to, axis);
            const then = alongAxis(startRay, to, axis);
            if (now === null || then === null) return;
            const wanted = gesture.base.room.size[side] + now - then;
            resize(snapLength(wanted, carpenterStepM(units, fine)), gesture);
          }}
          onNudge={(right, up, fine, gesture) => {
            const stepM = carpenterStepM(units, fine);
            const direction = right !== 0 ? right : up;
            resize(snapLength(size[side] + direction * stepM, stepM), gesture);
          }}
        >
          <span className="for-readers">{SIDE_NAMES[side]}</span>
        </DragHandle>
      ),
    },
  ];
}

function rowLabels(context: LabelContext): readonly PlacedLabel[] {
  const { project, units, view, stage, change, hold, session } = context;
  const { size } = project.room;
  return project.seating.rows.flatMap((row, i): readonly PlacedLabel[] => {
    const wish = rowLabelWish(project, row, view);
    if (!wish) return [];
    const { at } = wish;
    const thing = { kind: 'row', row: row.id } as const;
    const marked = isMarked(context, thing);
    const moveTo = (y: number, gesture: Gesture): void =>
      change({ kind: 'row', id: row.id, change: { y: clamp(y, [0, size.length]) } }, gesture);
    return [
      {
        key: `row-${row.id}`,
        ...wish,
        node: (
          <DragHandle
            className={`row-chip row-chip-${view}${marked ? ' marked' : ''}`}
            label={`Row ${i + 1}, ears ${formatLength(row.y, units)} from the screen wall: drag, or arrow keys`}
            stage={stage}
            onStart={() => {
              hold(true);
              session.select(thing);
            }}
            onEnd={() => hold(false)}
            onPress={() => session.toggle(thing)}
            onDrag={(ray, startRay, fine, gesture) => {
              const now = alongAxis(ray, at, 1);
              const then = alongAxis(startRay, at, 1);
              const start = gesture.base.seating.rows.find((r) => r.id === row.id)?.y;
              if (now === null || then === null || start === undefined) return;
              moveTo(snapLength(start + now - then, carpenterStepM(units, fine)), gesture);
            }}
            onNudge={(right, up, fine, gesture) => {
              const stepM = carpenterStepM(units, fine);
              const back = view === 'room' ? -up : right;
              moveTo(snapLength(row.y + back * stepM, stepM), gesture);
            }}
          >
            Row {i + 1}
            {view === 'room' ? null : ` · ${formatLength(row.y, units)}`}
          </DragHandle>
        ),
      },
    ];
  });
}

/** Names of what cannot be dragged yet. */
function namePlates({
  project,
  analysis,
  units,
  view,
  place,
  handles,
}: LabelContext): readonly PlacedLabel[] {
  const wish = screenLabelWish(project, view);
  const screenText = `Screen ${formatLength(project.screen.widthM, units)}`;
  const plate = (key: string, at: Point, text: string, marked: boolean): PlacedLabel => ({
    key,
    at,
    yields: !marked,
    node: <span className={marked ? 'name-plate marked' : 'name-plate'}>{text}</span>,
  });
  return [
    {
      ...plate('screen', wish.at, screenText, place?.kind === 'screen'),
      ...wish,
    },
    ...analysis.later.map(({ channel, short, position }) => ({
      ...plate(`later-${channel}`, position, `${short} later`, false),
      // An outline without its name says nothing.
      yields: false,
      mayShift: true,
    })),
    ...(handles.includes('solid') ? [] : project.room.solids).map((solid) =>
      plate(
        `solid-${solid.id}`,
        middleOf(solid.min, solid.max),
        solid.kind,
        place?.kind === 'solid' && place.id === solid.id,
      ),
    ),
    ...(handles.includes('subwoofer') ? [] : project.speakers.subwoofers).map((sub) =>
      plate(
        `sub-${sub.id}`,
        sub.position,
        sub.id,
        place?.kind === 'subwoofer' && place.id === sub.id,
      ),
    ),
  ];
}
