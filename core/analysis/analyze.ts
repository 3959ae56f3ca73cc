/** One call: Project in, everything the window and the batch command show out. Pure and quick. */

import { densityKgM3, speedOfSoundMS } from '../air/medium';
import { decayOf, type Decay } from '../decay/decay';
import type { Finding } from '../findings/finding';
import { findingsOf } from '../findings/findings';
import {
  AXIAL_RULE_SOURCE,
  axialModes,
  axialSpacing,
  CLOSEST_AXIAL_HZ,
  LISTED_TO_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type AxialGap,
  type PileUp,
} from '../modes/axial-spacing';
import {
  expectedModeCount,
  modesPerThirdOctave,
  THIRD_OCTAVE_REACH_HZ,
  type BandCount,
} from '../modes/mode-count';
import { schroederHz } from '../modes/schroeder';
import { shellModes, type ShellMode } from '../modes/shell-modes';
import { carpenterStepM, formatLength, type LengthUnits } from '../quantity/length';
import type { Project } from '../room/project';
import { seatsOf, type Seat } from '../room/seats';
import { freeSpace, type Surface } from '../room/space';
import { judgeSpeakers, type SpeakersResult, type SpeakerResult } from '../speakers/judge';

/** One criterion with its verdict; value null where the room gives none. */
export interface Criterion {
  readonly value: number | null;
  readonly limit: number;
  readonly pass: boolean;
  readonly unit: string;
  readonly source: string;
}

export interface ModesResult {
  /** Modes of the plain shell, rising, to 200 Hz. */
  readonly shell: readonly ShellMode[];
  readonly schroederHz: number | null;
  readonly spacing: Readonly<Record<'axialClosest' | 'axialWidestGap', Criterion>>;
  readonly gaps: readonly AxialGap[];
  readonly pileUps: readonly PileUp[];
  readonly thirdOctaves: readonly BandCount[];
  /** Mean count below 200 Hz by the formula, beside the listed one. */
  readonly expectedCount: number;
  /** False where solids fill part of the shell: the list does not know them yet. */
  readonly exactShape: boolean;
}

export interface Analysis {
  readonly air: { readonly speedOfSoundMS: number; readonly densityKgM3: number };
  readonly geometry: {
    readonly volumeM3: number;
    readonly surfaceM2: number;
    readonly surfaces: readonly Surface[];
  };
  readonly modes: ModesResult;
  readonly decay: Decay;
  readonly layout: SpeakersResult['layout'];
  readonly listening: SpeakersResult['listening'];
  readonly speakers: readonly SpeakerResult[];
  readonly seats: readonly Seat[];
  readonly findings: readonly Finding[];
}

/** Analyse `project` as it stands; `units` are those that findings speak in. */
export function analyze(project: Project, units: LengthUnits = 'metric'): Analysis {
  const { size, solids } = project.room;
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const space = freeSpace(project.room);
  const decay = decayOf(project, space);
  const speakers = judgeSpeakers(project);
  const schroeder = decay.midS === null ? null : schroederHz(decay.midS, space.volumeM3);
  const modes = shellModes(size, speedMS, THIRD_OCTAVE_REACH_HZ);
  const spacing = axialSpacing(axialModes(size, speedMS), LISTED_TO_HZ);
  return {
    air: { speedOfSoundMS: speedMS, densityKgM3: densityKgM3(project.air) },
    geometry: space,
    modes: {
      shell: modes.filter((mode) => mode.frequencyHz <= LISTED_TO_HZ),
      schroederHz: schroeder,
      spacing: {
        axialClosest: {
          value: spacing.closestHz,
          limit: CLOSEST_AXIAL_HZ,
          pass: spacing.closestHz === null || spacing.closestHz >= CLOSEST_AXIAL_HZ,
          unit: 'Hz',
          source: AXIAL_RULE_SOURCE,
        },
        axialWidestGap: {
          value: spacing.widestHz,
          limit: WIDEST_AXIAL_GAP_HZ,
          pass: spacing.widestHz === null || spacing.widestHz <= WIDEST_AXIAL_GAP_HZ,
          unit: 'Hz',
          source: AXIAL_RULE_SOURCE,
        },
      },
      gaps: spacing.gaps,
      pileUps: spacing.pileUps,
      thirdOctaves: modesPerThirdOctave(modes),
      expectedCount: expectedModeCount(size, LISTED_TO_HZ, speedMS),
      exactShape: solids.length === 0,
    },
    decay,
    layout: speakers.layout,
    listening: speakers.listening,
    speakers: speakers.speakers,
    seats: seatsOf(project),
    findings: findingsOf({
      project,
      space,
      spacing,
      speedMS,
      schroederHz: schroeder,
      decay,
      speakers,
      remedyStepM: 2 * carpenterStepM(units),
      lengthText: (lengthM) => formatLength(lengthM, units),
    }),
  };
}
