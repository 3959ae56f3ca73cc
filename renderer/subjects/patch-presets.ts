/** What is usually set into a face, ready to be put there. */

import { freeId } from '../../core/room/free-id';
import { faceBounds, nearestFreeRect, obstaclesOn } from '../../core/room/free-rect';
import type { Face, Patch, Project } from '../../core/room/project';

export interface PatchPreset {
  readonly name: string;
  readonly about: string;
  readonly face: Face;
  /** Along the face and up it, m. */
  readonly size: readonly [number, number];
  readonly aboveFloorM: number;
  readonly finish: string;
}

export const PATCH_PRESETS: readonly PatchPreset[] = [
  {
    name: 'door',
    about: 'Door leaf of 0.81 x 2.03 m (32 x 80 in), solid wood',
    face: 'back',
    size: [0.81, 2.03],
    aboveFloorM: 0,
    finish: 'door-solid',
  },
  {
    name: 'window',
    about: 'Window of 0.9 x 0.6 m at 1.2 m, ordinary glass',
    face: 'right',
    size: [0.9, 0.6],
    aboveFloorM: 1.2,
    finish: 'glass-window',
  },
  {
    name: 'opening',
    about: 'Passage of 0.9 x 2.03 m without a door, to the rest of the basement',
    face: 'back',
    size: [0.9, 2.03],
    aboveFloorM: 0,
    finish: 'opening',
  },
  {
    name: 'panel',
    about: 'Panel of 0.6 x 1.2 m (2 x 4 ft), 50 mm glass fibre',
    face: 'left',
    size: [0.6, 1.2],
    aboveFloorM: 0.6,
    finish: 'gf-50-rigid',
  },
];

/**
 * The preset as a patch in the middle of its face or as near to it as is clear; on the plain middle
 * where nothing is.
 */
export function presetPatch(project: Project, preset: PatchPreset): Patch {
  const { room } = project;
  const id = freeId(
    preset.name,
    room.patches.map((patch) => patch.id),
  );
  const bounds = faceBounds(room, preset.face) ?? [0, 0, 1, 1];
  const [width, height] = [
    Math.min(preset.size[0], bounds[2]),
    Math.min(preset.size[1], bounds[3]),
  ];
  const u0 = Math.round(((bounds[2] - width) / 2) * 200) / 200;
  const v0 = Math.min(preset.aboveFloorM, bounds[3] - height);
  const wanted = [u0, v0, u0 + width, v0 + height] as const;
  const rect = nearestFreeRect(wanted, bounds, obstaclesOn(room, preset.face, null)) ?? wanted;
  return { id, face: preset.face, rect, finish: preset.finish };
}
