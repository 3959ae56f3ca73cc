/** What is usually set into a face, ready to be put there, in whole centimetres or whole inches. */

import { faceOf } from '../../core/room/built-face';
import { METRES_PER_INCH, roundLength, type LengthUnits } from '../../core/quantity/length';
import { freeId } from '../../core/room/free-id';
import { nearestFreeRect, obstaclesOn } from '../../core/room/free-rect';
import type { Rect } from '../../core/room/patched-area';
import type { Face, Patch, PatchKind, Project } from '../../core/room/project';
import { practice } from '../../core/room/practice/practice';

export interface PatchPreset {
  readonly kind: PatchKind;
  /** Part of the building, or treatment of its sound. */
  readonly belongsTo: 'building' | 'treatment';
  readonly about: string;
  readonly face: Face;
  /** Along the face and up it, m. */
  readonly size: readonly [number, number];
  readonly aboveFloorM: number;
  /** Its place along the face is a whole number of these, m. */
  readonly stepM: number;
  readonly finish: string;
}

interface Sizes {
  readonly stepM: number;
  readonly unit: string;
  readonly door: readonly [number, number];
  readonly window: readonly [number, number];
  readonly sill: number;
  readonly passage: readonly [number, number];
  readonly panel: readonly [number, number];
  readonly panelThick: string;
  readonly panelAt: number;
}

const SIZES: Readonly<Record<LengthUnits, Sizes>> = {
  metric: {
    stepM: 0.01,
    unit: 'cm',
    ...practice('usual-openings').metric,
    panel: practice('usual-panel').metric.size,
    panelThick: '50 mm',
    panelAt: practice('usual-panel').metric.aboveFloor,
  },
  imperial: {
    stepM: METRES_PER_INCH,
    unit: 'in',
    ...practice('usual-openings').imperial,
    panel: practice('usual-panel').imperial.size,
    panelThick: '2 in',
    panelAt: practice('usual-panel').imperial.aboveFloor,
  },
};

function presetsIn(sizes: Sizes): readonly PatchPreset[] {
  const { stepM, unit, door, window, sill, passage, panel, panelThick, panelAt } = sizes;
  const m = (steps: number): number => roundLength(steps * stepM);
  const size = (pair: readonly [number, number]): readonly [number, number] => [
    m(pair[0]),
    m(pair[1]),
  ];
  const text = (pair: readonly [number, number]): string => `${pair[0]} x ${pair[1]} ${unit}`;
  return [
    {
      kind: 'door',
      belongsTo: 'building',
      about: `Door leaf of ${text(door)}, solid wood`,
      face: 'back',
      size: size(door),
      aboveFloorM: 0,
      stepM,
      finish: 'door-solid',
    },
    {
      kind: 'window',
      belongsTo: 'building',
      about: `Window of ${text(window)}, its sill at ${sill} ${unit}, ordinary glass`,
      face: 'right',
      size: size(window),
      aboveFloorM: m(sill),
      stepM,
      finish: 'glass-window',
    },
    {
      kind: 'passage',
      belongsTo: 'building',
      about: `Passage of ${text(passage)} without a door, to the rest of the basement`,
      face: 'back',
      size: size(passage),
      aboveFloorM: 0,
      stepM,
      finish: 'opening',
    },
    {
      kind: 'panel',
      belongsTo: 'treatment',
      about: `Panel of ${text(panel)}, ${panelThick} of glass fibre`,
      face: 'left',
      size: size(panel),
      aboveFloorM: m(panelAt),
      stepM,
      finish: 'gf-50-rigid',
    },
  ];
}

const PRESETS: Readonly<Record<LengthUnits, readonly PatchPreset[]>> = {
  metric: presetsIn(SIZES.metric),
  imperial: presetsIn(SIZES.imperial),
};

/** The presets in whole figures of `units`. */
export const patchPresets = (units: LengthUnits): readonly PatchPreset[] => PRESETS[units];

/**
 * The preset as a patch in the middle of its face or as near to it as is clear; on the plain middle
 * where nothing is.
 */
export function presetPatch(project: Project, preset: PatchPreset): Patch {
  const { room } = project;
  const id = freeId(
    preset.kind,
    room.patches.map((patch) => patch.id),
  );
  const bounds = faceOf(room, preset.face)?.rect ?? [0, 0, 1, 1];
  const [width, height] = [
    Math.min(preset.size[0], bounds[2]),
    Math.min(preset.size[1], bounds[3]),
  ];
  const { stepM } = preset;
  const u0 = Math.floor((bounds[2] - width) / 2 / stepM) * stepM;
  const v0 = Math.min(preset.aboveFloorM, bounds[3] - height);
  const wanted: Rect = [u0, v0, u0 + width, v0 + height];
  const rect = nearestFreeRect(wanted, bounds, obstaclesOn(room, preset.face, null)) ?? wanted;
  return {
    id,
    kind: preset.kind,
    face: preset.face,
    rect: rect.map(roundLength) as unknown as Rect,
    finish: preset.finish,
  };
}
