/** How long the modes of a field ring, for the pressure that they make: from what is on every face. */

import { faceMet } from '../scene/faces';
import { decayOfMode } from '../modes/modal-decay';
import { DEFAULT_DECAY_S, type Damping } from '../response/path';
import type { ShellField } from '../response/field';
import type { FreeSpace } from '../room/space';
import { coverageOfFaces } from '../room-modes/on-faces';
import type { RoomModes } from '../room-modes/room-modes';
import { modalRoom, type Sounding } from './modal-room';

export interface FieldDamping {
  readonly damping: Damping & { readonly modesS: Float64Array };
  /** Modes for which a face has no figure at all, so that `DEFAULT_DECAY_S` stands in. */
  readonly defaulted: number;
}

/** Decay of the plain shell's modes, in the field's order. */
export function shellDamping(project: Sounding, space: FreeSpace, field: ShellField): FieldDamping {
  const room = modalRoom(project, space);
  return dampingOf(field.frequenciesHz, room, (n) =>
    room.faces.map(({ axis, areaM2 }) => ((field.orders[n]?.[axis] ?? 0) > 0 ? 2 : 1) * areaM2),
  );
}

/**
 * Decay of the modes as built: each mode's own pressure on each face, where the shell's formula has 2 or
 * 1. A patch shares in its face by its area.
 */
export function builtDamping(project: Sounding, space: FreeSpace, shape: RoomModes): FieldDamping {
  const room = modalRoom(project, space);
  const names = [...new Set(space.surfaces.map((surface) => surface.face))];
  const numberOf = new Map(names.map((name, n) => [name, n]));
  const coverage = coverageOfFaces(
    shape,
    (middle, axis, side) =>
      numberOf.get(faceMet(project.room, middle, axis, side, shape.sliverM) ?? '') ?? null,
    names.length,
  );
  const faceArea = names.map((name) =>
    space.surfaces.reduce((sum, s) => sum + (s.face === name ? s.areaM2 : 0), 0),
  );
  const shares = space.surfaces.map((surface) => {
    const face = numberOf.get(surface.face) ?? 0;
    return { face, share: surface.areaM2 / (faceArea[face] ?? 1) };
  });
  return dampingOf(shape.frequenciesHz, room, (n) =>
    shares.map(({ face, share }) => share * (coverage[face]?.[n] ?? 0)),
  );
}

function dampingOf(
  frequenciesHz: Float64Array,
  room: ReturnType<typeof modalRoom>,
  coverageOf: (mode: number) => readonly number[],
): FieldDamping {
  let defaulted = 0;
  const modesS = frequenciesHz.map((frequencyHz, n) => {
    const found = decayOfMode({ frequencyHz, coverageM2: coverageOf(n) }, room);
    if (!found) defaulted += 1;
    return found?.decayS ?? DEFAULT_DECAY_S;
  });
  // The mode at zero has the same pressure everywhere: of each face it meets the whole area.
  const coverageM2 = room.faces.map((face) => face.areaM2);
  const zeroS = (frequencyHz: number): number =>
    decayOfMode({ frequencyHz, coverageM2 }, room)?.decayS ?? DEFAULT_DECAY_S;
  return { damping: { modesS, zeroS }, defaulted };
}
