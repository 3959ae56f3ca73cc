/** Fittings that leave no room, cut it up, stick out of it, or leave layers too thin to matter. */

import { LEAST_EXTENT_M } from '../room/fitting-presets';
import type { Measures } from '../quantity/measures';
import { farCorner, mapPoint } from '../room/point';
import type { Project, Room, Solid } from '../room/project';
import { outsideShellM } from '../room/space';
import { airGrid, SLIVER_M, type MovedFace, type RoomModesRefusal } from '../room-modes/grid';
import type { FindingContext } from './context';
import type { Draft, Finding, Remedy } from './finding';

export function fittingFindings({
  project,
  lengthText,
  measures,
}: FindingContext): readonly Draft[] {
  const { size, solids } = project.room;
  if (solids.length === 0) return [];
  const gridded = airGrid(size, solids);
  return [
    ...(gridded.ok ? slivers(project, gridded.grid.moved, measures) : []),
    ...(gridded.ok ? [] : [refusalFinding(gridded.refusal)]),
    ...solids.flatMap((solid) => stickingOut(project, solid, lengthText)),
  ];
}

const FAULT = {
  severity: 'fault',
  subject: 'fittings',
  where: 'fittings',
  source: 'geometry',
} as const;

/** What a refusal of the modes as built means for the person. */
export function refusalFinding(refusal: RoomModesRefusal): Finding {
  switch (refusal.reason) {
    case 'no-air':
      return {
        ...FAULT,
        id: 'no-free-space',
        message: 'The fittings fill the whole shell: no room is left.',
        figureName: 'free space left',
        value: 0,
        limit: null,
        unit: 'm',
        remedies: [{ text: 'Make the fitting that fills the room smaller, or take it away.' }],
      };
    case 'separate-parts':
      return {
        ...FAULT,
        id: 'space-in-parts',
        message: `The fittings cut the room into ${refusal.parts} parts that no air joins: its modes as built are those of ${refusal.parts} rooms, and are not computed.`,
        figureName: 'parts of the room',
        value: refusal.parts,
        limit: 1,
        unit: '',
        remedies: [
          {
            text: 'Leave a passage between the parts, or draw only the part that you sit in as the shell.',
          },
        ],
      };
    case 'too-large':
      return {
        ...FAULT,
        id: 'modes-too-large',
        severity: 'warning',
        message: `${refusal.because === 'size' ? 'The room is too large for the modes as built, whatever stands in it' : 'The fittings have too many faces at different places for the modes as built'}: ${refusal.count.toLocaleString('en')} ${refusal.what} where ${refusal.most.toLocaleString('en')} can be taken. The modes shown are those of the plain shell.`,
        figureName: refusal.what,
        value: refusal.count,
        limit: refusal.most,
        unit: '',
        source: 'limit of this version',
        remedies: [
          {
            text:
              refusal.because === 'size'
                ? 'Go by the modes of the plain shell, or draw only the part of the building that is the room.'
                : 'Draw neighbouring boxes as one, and line up faces that are nearly level.',
          },
        ],
      };
    case 'not-converged':
      return {
        ...FAULT,
        id: 'modes-not-settled',
        severity: 'warning',
        message: 'The modes as built did not settle; those shown are of the plain shell.',
        figureName: '',
        value: null,
        limit: null,
        unit: '',
        source: 'limit of this version',
        remedies: [{ text: 'Move one of the fittings by a step.' }],
      };
  }
}

/** The modes as built are those of a simpler room: `sliverM` is how far faces were moved together, m. */
export function simplifiedFinding(
  sliverM: number,
  errorPercent: number,
  { about }: Measures,
): Finding {
  return {
    ...FAULT,
    id: 'modes-simplified',
    severity: 'note',
    message: `The fittings have faces at so many places that those within ${about(sliverM)} of each other count as one in the modes as built, which are then within ${errorPercent.toFixed(1)} %. Volume and areas stay exact.`,
    figureName: 'moved in the modes',
    value: sliverM,
    limit: SLIVER_M,
    unit: 'm',
    source: 'limit of this version',
    remedies: [{ text: 'Line faces up that are nearly level, or draw neighbours as one box.' }],
  };
}

/** Faces that were moved in the modes: one finding for each fitting, with the drawing put right. */
function slivers(
  project: Project,
  moved: readonly MovedFace[],
  { about, length: lengthText }: Measures,
): readonly Finding[] {
  // Neighbours meet in the middle, so all are put right at once.
  const solids = project.room.solids.map((solid, n) =>
    moved.filter((face) => face.solid === n).reduce(lined, solid),
  );
  return project.room.solids.flatMap((solid, n): readonly Finding[] => {
    const faces = moved.filter((face) => face.solid === n);
    if (faces.length === 0) return [];
    const most = faces.reduce((far, face) => Math.max(far, Math.abs(face.toM - face.fromM)), 0);
    return [
      {
        id: `sliver:${solid.id}`,
        severity: 'note',
        subject: 'fittings',
        where: `${solid.kind} ${solid.id}`,
        message: `It leaves or is a layer thinner than ${about(SLIVER_M)}: in the modes its face counts ${lengthText(most)} from where it is drawn. Volume and areas stay exact.`,
        figureName: 'moved in the modes',
        value: most,
        limit: SLIVER_M,
        unit: 'm',
        source: 'limit of this version',
        remedies: [
          solids.every(isBody)
            ? {
                text: 'Line faces up that nearly touch.',
                edit: { kind: 'solids', solids, what: 'line up fittings' },
              }
            : { text: `Take it away, or make it at least ${about(LEAST_EXTENT_M)} thick.` },
        ],
        place: { kind: 'solid', id: solid.id },
      },
    ];
  });
}

/** False for what lining up would leave flat. */
const isBody = ({ min, max }: Solid): boolean =>
  min.every((at, axis) => (max[axis] ?? at) - at > SLIVER_M / 2);

/** The solid with one face where it was moved to. */
function lined(solid: Solid, { axis, fromM, toM }: MovedFace): Solid {
  const low = Math.abs(solid.min[axis] - fromM) <= Math.abs(solid.max[axis] - fromM);
  const put = (point: Solid['min']): Solid['min'] => {
    const next: [number, number, number] = [...point];
    next[axis] = Number(toM.toFixed(5));
    return next;
  };
  return low ? { ...solid, min: put(solid.min) } : { ...solid, max: put(solid.max) };
}

function stickingOut(
  { room }: Project,
  solid: Solid,
  lengthText: FindingContext['lengthText'],
): readonly Finding[] {
  const out = outsideShellM(room.size, solid.min, solid.max);
  if (out <= 0.0005) return [];
  return [
    {
      id: `solid-outside:${solid.id}`,
      severity: 'warning',
      subject: 'fittings',
      where: `${solid.kind} ${solid.id}`,
      message: `It sticks ${lengthText(out)} out of the shell; only the part inside counts.`,
      figureName: 'sticks out',
      value: out,
      limit: 0,
      unit: 'm',
      source: 'geometry',
      remedies: cutToRoom(room, solid),
      place: { kind: 'solid', id: solid.id },
    },
  ];
}

/** The part of the fitting that is in the room, where that is thick enough to be one. */
function cutToRoom(room: Room, solid: Solid): readonly Remedy[] {
  const far = farCorner(room.size);
  const within = (point: Solid['min']): Solid['min'] =>
    mapPoint(point, (at, axis) => Math.min(Math.max(at, 0), far[axis]));
  const cut = { ...solid, min: within(solid.min), max: within(solid.max) };
  const isBody = cut.min.every((at, axis) => (cut.max[axis] ?? at) - at >= LEAST_EXTENT_M);
  if (!isBody) return [{ text: 'Make the room larger again, or take the fitting away.' }];
  const solids = room.solids.map((one) => (one.id === solid.id ? cut : one));
  return [
    {
      text: 'Cut off what sticks out.',
      edit: { kind: 'solids', solids, what: `size of ${solid.id}` },
    },
  ];
}
