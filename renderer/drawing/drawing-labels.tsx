/** Every label and handle of the drawing, with its place in the room. */

import type { RefObject } from 'react';
import type { Ray } from 'three';
import type { Analysis } from '../../core/analysis/analyze';
import type { FindingPlace } from '../../core/findings/finding';
import {
  carpenterStepM,
  formatLength,
  snapLength,
  type LengthUnits,
} from '../../core/quantity/length';
import type { Edit } from '../../core/room/edits';
import { type Point, type Project, type Side, SIZE_LIMITS_M } from '../../core/room/project';
import { rowCentreX } from '../../core/room/seats';
import { screenRect } from '../../core/room/screen';
import { USUAL_BOX_M } from '../../core/speakers/box';
import type { View } from '../state/session';
import { DimensionFigure, SIDE_NAMES } from './DimensionFigure';
import { middleOf, type DimensionLine } from './dimension-lines';
import { DragHandle } from './DragHandle';
import type { PlacedLabel } from './Labels';
import { alongAxis, onPlane, type Stage } from './stage';

export interface LabelContext {
  /** What carries handles of its own, and so needs no name plates. */
  readonly handles: 'fittings' | 'subwoofers' | null;
  readonly project: Project;
  readonly analysis: Analysis;
  readonly units: LengthUnits;
  readonly view: View;
  readonly dimensions: readonly DimensionLine[];
  readonly stage: RefObject<Stage | null>;
  readonly channel: string | null;
  readonly place: FindingPlace | null;
  readonly change: (edit: Edit, gesture?: string | null) => void;
  readonly chooseChannel: (channel: string | null) => void;
  readonly hold: (held: boolean) => void;
  /** The project as it was when the drag under way began. */
  readonly started: { current: Project };
}

const AXES: Readonly<Record<Side, 0 | 1 | 2>> = { width: 0, length: 1, height: 2 };

export function drawingLabels(context: LabelContext): readonly PlacedLabel[] {
  return [
    ...context.dimensions.flatMap((dimension) => sideLabels(context, dimension)),
    ...rowLabels(context),
    ...context.analysis.speakers.map((speaker) => speakerLabel(context, speaker.channel)),
    ...namePlates(context),
  ];
}

const clamp = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(Math.max(value, low), high);

/** Take hold: the drag measures from the room as it is now. */
export function takeHold({ hold, started, project }: LabelContext): () => void {
  return () => {
    started.current = project;
    hold(true);
  };
}

function sideLabels(context: LabelContext, dimension: DimensionLine): readonly PlacedLabel[] {
  const { project, units, stage, change, hold, started, place } = context;
  const { side, from, to } = dimension;
  const axis = AXES[side];
  const { size } = project.room;
  const resize = (value: number, gesture: string): void =>
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
          onStart={takeHold(context)}
          onEnd={() => hold(false)}
          onDrag={(ray, startRay, fine, gesture) => {
            const now = alongAxis(ray, to, axis);
            const then = alongAxis(startRay, to, axis);
            if (now === null || then === null) return;
            const wanted = started.current.room.size[side] + now - then;
            resize(snapLength(wanted, carpenterStepM(units, fine)), gesture);
          }}
          onNudge={(right, up, fine) => {
            const stepM = carpenterStepM(units, fine);
            const direction = right !== 0 ? right : up;
            resize(snapLength(size[side] + direction * stepM, stepM), `nudge-${side}`);
          }}
        >
          <span className="for-readers">{SIDE_NAMES[side]}</span>
        </DragHandle>
      ),
    },
  ];
}

/** The plane in which a loudspeaker is dragged: level in the room and plan, upright in the sections. */
const DRAG_NORMAL: Readonly<Record<View, 0 | 1 | 2>> = { room: 2, plan: 2, section: 0, front: 1 };

export function dragPlace(
  { view, units, project }: LabelContext,
  start: Point,
  ray: Ray,
  startRay: Ray,
  fine: boolean,
): Point | null {
  const normal = DRAG_NORMAL[view];
  const now = onPlane(ray, start, normal);
  const then = onPlane(startRay, start, normal);
  if (!now || !then) return null;
  const stepM = carpenterStepM(units, fine);
  const to: [number, number, number] = [...start];
  start.forEach((at, axis) => {
    if (axis === normal) return;
    to[axis] = snapLength(at + (now[axis] ?? 0) - (then[axis] ?? 0), stepM);
  });
  return clampToShell(to, project);
}

/** The place, moved onto the shell where it lies outside. */
export function clampToShell([x, y, z]: Point, { room }: Project): Point {
  const { width, length, height } = room.size;
  return [clamp(x, [0, width]), clamp(y, [0, length]), clamp(z, [0, height])];
}

/** Room axes that the arrow keys move along in each view: to the right, and up. */
export const NUDGE_AXES: Readonly<Record<View, readonly [number, number, number, number]>> = {
  room: [0, 1, 1, -1],
  plan: [1, 1, 0, 1],
  section: [1, 1, 2, 1],
  front: [0, 1, 2, 1],
};

/** Nearer to a wall than its box and this, a dragged loudspeaker hangs on it, m. */
const PULL_M = 0.08;

/** The place, moved so that the box's back lies against the wall that it has come near to. */
function againstWall(at: Point, label: string, { project, view }: LabelContext): Point {
  const placed = project.speakers.placed.find((speaker) => speaker.channel === label);
  const { width, length } = project.room.size;
  const mount = placed?.mount;
  if (mount === 'stand' || mount === 'ceiling' || view === 'front') return at;
  const depthM = mount === 'in-wall' ? 0 : (placed?.boxM ?? USUAL_BOX_M)[2];
  const pulled = (value: number, far: number): number =>
    value < depthM + PULL_M ? depthM : value > far - depthM - PULL_M ? far - depthM : value;
  const x = pulled(at[0], width);
  if (x !== at[0]) return [x, at[1], at[2]];
  return [at[0], pulled(at[1], length), at[2]];
}

/** Lettering goes outward in plan; in sections the farther of two that coincide goes below. */
function besideSpeaker({ view, analysis, project }: LabelContext, position: Point): Point {
  const [x, y, z] = position;
  const ears = analysis.listening;
  if (view === 'plan' && ears) return [ears[0], ears[1], z];
  const below =
    (view === 'section' && x > project.room.size.width / 2 + 0.05) ||
    (view === 'front' && ears !== null && y < ears[1] && Math.abs(x - ears[0]) > 0.05);
  return [x, y, z + (below ? 0.1 : -0.1)];
}

function speakerLabel(context: LabelContext, label: string): PlacedLabel {
  const { project, analysis, units, view, stage, change, hold, started, channel, place } = context;
  const speaker = analysis.speakers.find((candidate) => candidate.channel === label);
  const known = analysis.layout?.channels.find((candidate) => candidate.label === label);
  const position = speaker?.position ?? [0, 0, 0];
  const marked = channel === label || (place?.kind === 'speaker' && place.channel === label);
  const name = known?.name ?? label;
  const inRange = speaker?.inRange ?? false;
  return {
    key: `speaker-${label}`,
    at: position,
    awayFrom: besideSpeaker(context, position),
    mayShift: true,
    node: (
      <DragHandle
        className={`speaker-chip${inRange ? '' : ' outside'}${marked ? ' marked' : ''}`}
        label={`${name}, azimuth ${speaker?.azimuthDeg.toFixed(1) ?? ''}, elevation ${speaker?.elevationDeg.toFixed(1) ?? ''} degrees, ${inRange ? 'within' : 'outside'} its window: drag, or arrow keys`}
        stage={stage}
        onStart={takeHold(context)}
        onEnd={() => hold(false)}
        onPress={() => context.chooseChannel(label)}
        onDrag={(ray, startRay, fine, gesture) => {
          const start = started.current.speakers.placed.find((s) => s.channel === label)?.position;
          const to = start ? dragPlace(context, start, ray, startRay, fine) : null;
          if (to) {
            const at = fine ? to : againstWall(to, label, context);
            change({ kind: 'speaker', channel: label, position: at }, gesture);
          }
        }}
        onNudge={(right, up, fine) => {
          const [axisRight, signRight, axisUp, signUp] = NUDGE_AXES[view];
          const stepM = carpenterStepM(units, fine);
          const next: [number, number, number] = [...position];
          next[axisRight] = snapLength((next[axisRight] ?? 0) + right * signRight * stepM, stepM);
          next[axisUp] = snapLength((next[axisUp] ?? 0) + up * signUp * stepM, stepM);
          const to = clampToShell(next, project);
          change({ kind: 'speaker', channel: label, position: to }, `nudge-${label}`);
        }}
      >
        {inRange ? null : <span aria-hidden="true">▲ </span>}
        <b>{known?.short ?? label}</b> {speaker ? `${Math.round(speaker.azimuthDeg) || 0}°` : ''}
        {speaker && Math.abs(speaker.elevationDeg) >= 0.5 ? (
          <small>
            {' '}
            {`${speaker.elevationDeg > 0 ? '↑' : '↓'}${Math.abs(speaker.elevationDeg).toFixed(0)}°`}
          </small>
        ) : null}
      </DragHandle>
    ),
  };
}

function rowLabels(context: LabelContext): readonly PlacedLabel[] {
  const { project, units, view, stage, change, hold, started, place } = context;
  const { size } = project.room;
  if (view === 'front') return [];
  return project.seating.rows.map((row, i) => {
    const outermost = rowCentreX(row, size.width) - ((row.seats - 1) / 2) * row.pitchM;
    const at: Point =
      view === 'section'
        ? [size.width / 2, row.y, -0.15]
        : [outermost - 0.38, row.y - 0.1, row.riserM + 0.45];
    // Beside the outermost seat, away from it, so that no head is covered.
    const awayFrom: Point | null = view === 'section' ? null : [outermost, row.y - 0.1, at[2]];
    const moveTo = (y: number, gesture: string): void =>
      change({ kind: 'row', id: row.id, change: { y: clamp(y, [0, size.length]) } }, gesture);
    return {
      key: `row-${row.id}`,
      at,
      ...(awayFrom ? { awayFrom } : {}),
      mayShift: true,
      node: (
        <DragHandle
          className={`row-chip row-chip-${view}${place?.kind === 'row' && place.row === row.id ? ' marked' : ''}`}
          label={`Row ${i + 1}, ears ${formatLength(row.y, units)} from the screen wall: drag, or arrow keys`}
          stage={stage}
          onStart={takeHold(context)}
          onEnd={() => hold(false)}
          onDrag={(ray, startRay, fine, gesture) => {
            const now = alongAxis(ray, at, 1);
            const then = alongAxis(startRay, at, 1);
            const start = started.current.seating.rows.find((r) => r.id === row.id)?.y;
            if (now === null || then === null || start === undefined) return;
            moveTo(snapLength(start + now - then, carpenterStepM(units, fine)), gesture);
          }}
          onNudge={(right, up, fine) => {
            const stepM = carpenterStepM(units, fine);
            const back = view === 'room' ? -up : right;
            moveTo(snapLength(row.y + back * stepM, stepM), `nudge-${row.id}`);
          }}
        >
          Row {i + 1}
          {view === 'room' ? null : ` · ${formatLength(row.y, units)}`}
        </DragHandle>
      ),
    };
  });
}

/** Names of what cannot be dragged yet. */
function namePlates({
  project,
  units,
  view,
  place,
  handles,
}: LabelContext): readonly PlacedLabel[] {
  const rect = screenRect(project);
  const plate = (key: string, at: Point, text: string, marked: boolean): PlacedLabel => ({
    key,
    at,
    yields: !marked,
    node: <span className={marked ? 'name-plate marked' : 'name-plate'}>{text}</span>,
  });
  const screen: Point =
    view === 'section'
      ? [0, 0.05, rect.topZ + 0.1]
      : view === 'plan'
        ? [rect.rightX - 0.15, -0.4, rect.topZ]
        : [(rect.leftX + rect.rightX) / 2, 0.05, rect.topZ - 0.16];
  return [
    plate(
      'screen',
      screen,
      `Screen ${formatLength(project.screen.widthM, units)}`,
      place?.kind === 'screen',
    ),
    ...(handles === 'fittings' ? [] : project.room.solids).map((solid) =>
      plate(
        `solid-${solid.id}`,
        middleOf(solid.min, solid.max),
        solid.kind,
        place?.kind === 'solid' && place.id === solid.id,
      ),
    ),
    ...(handles === 'subwoofers' ? [] : project.speakers.subwoofers).map((sub) =>
      plate(
        `sub-${sub.id}`,
        sub.position,
        'Sub',
        place?.kind === 'subwoofer' && place.id === sub.id,
      ),
    ),
  ];
}
