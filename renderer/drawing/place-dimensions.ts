/**
 * The chosen thing by tape measure: dimension lines from the left wall, the screen wall and the floor to
 * the point that its fields are measured to, two in each view, and what a figure typed there does.
 */

import { measuredAxes, placeLine, type PlaceLine } from '../../core/drawing/dimensions';
import { FLAT_VIEWS } from '../../core/drawing/views';
import { faceOf } from '../../core/room/built-face';
import type { Axis } from '../../core/room/faces';
import { faceAxes, patchSide, solidOfFace } from '../../core/room/faces';
import { fittingFields } from '../../core/room/fitting-fields';
import { roundLength } from '../../core/quantity/length';
import { farCorner, mapPoint } from '../../core/room/point';
import type { Patch, Point, Project } from '../../core/room/project';
import { rowCentreX } from '../../core/room/seats';
import { changeFittings, withSolid } from '../state/change-fittings';
import { changePatch } from '../state/change-patches';
import { idOf, type Selected } from '../state/selection';
import { useSession, type View } from '../state/session';
import type { Gesture } from '../state/gesture';

export interface PlaceDimension extends PlaceLine {
  /** Names the figure, for example `column-1 from the left wall`. */
  readonly label: string;
  readonly valueM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly set: (valueM: number, gesture: Gesture | null) => void;
}

/** The axes that are measured in each view: along the page, and up it. */
export const axesIn = (view: View): readonly [Axis, Axis] =>
  view === 'room' ? [0, 1] : measuredAxes(FLAT_VIEWS[view]);

const FROM = ['from the left wall', 'from the screen wall', 'above the floor'] as const;

interface Measured {
  readonly name: string;
  readonly at: Point;
  /** Figures along the axes that can be typed; an axis that is left out is not measured. */
  readonly figures: Partial<Record<Axis, Pick<PlaceDimension, 'lowM' | 'highM' | 'set'>>>;
}

/** The two dimensions of the thing in a view; fewer where one of them is nothing, or is not its to choose. */
export function placeDimensions(
  project: Project,
  thing: Selected | null,
  view: View,
): readonly PlaceDimension[] {
  const measured = thing && measuredThing(project, thing);
  if (!measured) return [];
  const { at, name, figures } = measured;
  return axesIn(view).flatMap((axis) => {
    const figure = figures[axis];
    if (!figure) return [];
    return [
      { ...placeLine(at, axis), label: `${name} ${FROM[axis]}`, valueM: at[axis], ...figure },
    ];
  });
}

function measuredThing(project: Project, thing: Selected): Measured | null {
  const id = idOf(thing);
  const { room, speakers, seating } = project;
  const far = farCorner(room.size);
  const { change } = useSession.getState();
  /** What is moved as a whole by its place. */
  const movable = (name: string, at: Point, put: (to: Point, gesture: Gesture | null) => void) => {
    const along = (axis: Axis): Measured['figures'][Axis] => ({
      lowM: 0,
      highM: far[axis],
      set: (valueM, gesture) =>
        put(
          mapPoint(at, (value, n) => (n === axis ? valueM : value)),
          gesture,
        ),
    });
    return { name, at, figures: { 0: along(0), 1: along(1), 2: along(2) } } as Measured;
  };
  switch (thing.kind) {
    case 'solid': {
      const solid = room.solids.find((known) => known.id === id);
      if (!solid) return null;
      const fields = fittingFields(solid, room.size).filter((field) => field.of === 'place');
      return {
        name: id,
        at: solid.min,
        figures: Object.fromEntries(
          fields.map(({ axis, lowM, highM, set }) => [
            axis,
            {
              lowM,
              highM,
              set: (valueM: number, gesture: Gesture | null) =>
                void changeFittings(withSolid(room.solids, set(valueM)), id, gesture),
            },
          ]),
        ),
      };
    }
    case 'patch': {
      const patch = room.patches.find((known) => known.id === id);
      return patch ? measuredPatch(project, patch) : null;
    }
    case 'subwoofer': {
      const sub = speakers.subwoofers.find((known) => known.id === id);
      return (
        (sub &&
          movable(id, sub.position, (position, gesture) =>
            change({ kind: 'subwoofer', id, position }, gesture),
          )) ??
        null
      );
    }
    case 'speaker': {
      const speaker = speakers.placed.find((known) => known.channel === id);
      const { analysis } = useSession.getState();
      const name = analysis.layout?.channels.find(({ label }) => label === id)?.short ?? id;
      return (
        (speaker &&
          movable(name, speaker.position, (position, gesture) =>
            change({ kind: 'speaker', channel: id, position }, gesture),
          )) ??
        null
      );
    }
    case 'row': {
      const row = seating.rows.find((known) => known.id === id);
      if (!row) return null;
      const earsM = row.riserM + row.earHeightM;
      return {
        name: `Row ${seating.rows.indexOf(row) + 1}, ears`,
        at: [rowCentreX(row, room.size.width), row.y, earsM],
        figures: {
          1: {
            lowM: 0,
            highM: far[1],
            set: (y, gesture) => change({ kind: 'row', id, change: { y } }, gesture),
          },
          2: {
            lowM: roundLength(row.riserM + EAR_LIMITS_M[0]),
            highM: roundLength(row.riserM + EAR_LIMITS_M[1]),
            set: (z, gesture) =>
              change(
                { kind: 'row', id, change: { earHeightM: roundLength(z - row.riserM) } },
                gesture,
              ),
          },
        },
      };
    }
  }
}

/** Ears above the row's own floor, m: as the field of it takes them. */
const EAR_LIMITS_M = [0.3, 2.5] as const;

function measuredPatch({ room }: Project, patch: Patch): Measured | null {
  const plane = faceOf(room, patch.face);
  if (!plane || solidOfFace(patch.face) !== null) return null;
  const [u, v] = faceAxes(patchSide(patch.face));
  const far = farCorner(room.size);
  const [u0, v0, u1, v1] = patch.rect;
  const at: [number, number, number] = [plane.at, plane.at, plane.at];
  at[u] = u0;
  at[v] = v0;
  const move = (du: number, dv: number, gesture: Gesture | null): void => {
    const [a, b, c, d] = [u0 + du, v0 + dv, u1 + du, v1 + dv].map(roundLength);
    const rect = [a ?? 0, b ?? 0, c ?? 0, d ?? 0] as const;
    changePatch({ ...patch, rect }, `place of ${patch.id}`, gesture);
  };
  return {
    name: patch.id,
    at,
    figures: {
      [u]: { lowM: 0, highM: far[u], set: (to: number, g: Gesture | null) => move(to - u0, 0, g) },
      [v]: { lowM: 0, highM: far[v], set: (to: number, g: Gesture | null) => move(0, to - v0, g) },
    },
  };
}
