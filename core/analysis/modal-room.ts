/** The modes' own decay: what the decay knows of the faces, in the plain figures that modes take. */

import { energyAttenuationPerM } from '../air/attenuation';
import { speedOfSoundMS } from '../air/medium';
import { itemOf } from '../decay/objects';
import { modalDecay, type ModalDecay, type ModalRoom, type Spectrum } from '../modes/modal-decay';
import type { ShellMode } from '../modes/shell-modes';
import { exactOctaveHz, OCTAVES_HZ } from '../quantity/bands';
import { FACE_NORMALS, patchSide } from '../room/faces';
import { finishLookup } from '../room/finishes';
import type { AbsorptionByBand, Project } from '../room/project';
import type { FreeSpace } from '../room/space';

/** Modes to here have a decay of their own at most, Hz; above the Schroeder frequency the octaves do. */
export const MODAL_TO_HZ = 200;

/** The parts of a project that the decay of its modes depends on. */
export type Sounding = Pick<Project, 'room' | 'air' | 'objects' | 'finishesCustom'>;

/** What the modes meet: every surface of `space` in its order, the objects and the air. */
export function modalRoom(project: Sounding, space: FreeSpace): ModalRoom {
  const lookup = finishLookup(project);
  return {
    volumeM3: space.volumeM3,
    speedMS: speedOfSoundMS(project.air.temperatureC),
    faces: space.surfaces.map((surface) => ({
      axis: FACE_NORMALS[patchSide(surface.face)].axis,
      areaM2: surface.areaM2,
      absorption: spectrum(lookup(surface.finish)?.absorption ?? {}, 1),
    })),
    objects: project.objects.flatMap(({ item, count }) => {
      const known = itemOf(item);
      return known && count > 0 ? [spectrum(known.absorptionM2, count)] : [];
    }),
    airPerM: (frequencyHz) => energyAttenuationPerM(frequencyHz, project.air),
  };
}

/** Decay of each of `modes` below the Schroeder frequency (`MODAL_TO_HZ` where it is unknown). */
export function modalDecayOf(
  project: Project,
  space: FreeSpace,
  modes: readonly ShellMode[],
  schroederHz: number | null,
): readonly ModalDecay[] {
  const limitHz = Math.min(MODAL_TO_HZ, schroederHz ?? MODAL_TO_HZ);
  return modalDecay(
    modes.filter((mode) => mode.frequencyHz <= limitHz),
    modalRoom(project, space),
  );
}

function spectrum(absorption: AbsorptionByBand, times: number): Spectrum {
  return OCTAVES_HZ.flatMap((hz) => {
    const value = absorption[`${hz}`];
    return value === undefined ? [] : [[exactOctaveHz(hz), times * value] as const];
  });
}
