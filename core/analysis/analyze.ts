/** One call: Project in, everything the window and the batch command show out. Pure and quick. */

import { densityKgM3 } from '../air/medium';
import type { Decay } from '../decay/decay';
import { contextOf } from '../findings/context';
import type { Finding } from '../findings/finding';
import { findingsOf } from '../findings/findings';
import { LISTED_TO_HZ, type AxialGap, type PileUp } from '../modes/axial-spacing';
import { expectedModeCount, modesPerThirdOctave, type BandCount } from '../modes/mode-count';
import type { ModalDecay } from '../modes/modal-decay';
import type { ModeOrder, ShellMode } from '../modes/shell-modes';
import type { LengthUnits } from '../quantity/length';
import type { Project } from '../room/project';
import { criteriaOf, type Criteria } from '../proportions/criteria';
import { seatsOf, type Seat } from '../room/seats';
import type { Surface } from '../room/space';
import type { SpeakersResult, SpeakerResult } from '../speakers/judge';
import { modalDecayOf } from './modal-room';

/** A mode as built. */
export interface RoomModeRow {
  readonly frequencyHz: number;
  /** Order of the shell mode that it is most like; null where it is mixed. */
  readonly likeShell: ModeOrder | null;
  /** Frequency less that of the shell mode, Hz; null where it is mixed. */
  readonly shiftHz: number | null;
  /** Estimate of its own error, percent. */
  readonly errorPercent: number;
}

export interface ModesResult {
  /** Modes of the plain shell, rising, to 200 Hz. */
  readonly shell: readonly ShellMode[];
  readonly schroederHz: number | null;
  /** Criteria on size and proportions, by name. */
  readonly spacing: Criteria;
  readonly gaps: readonly AxialGap[];
  readonly pileUps: readonly PileUp[];
  readonly thirdOctaves: readonly BandCount[];
  /** Mean count below 200 Hz by the formula, beside the listed one. */
  readonly expectedCount: number;
  /** False where solids fill part of the shell: `shell` does not know them, `shaped` does. */
  readonly exactShape: boolean;
  /** Modes of the free space with its fittings, rising, to 200 Hz; only where they were asked for. */
  readonly shaped?: readonly RoomModeRow[];
  /** Estimate of the largest relative error among them, percent. */
  readonly shapedErrorPercent?: number;
}

export interface Analysis {
  readonly air: { readonly speedOfSoundMS: number; readonly densityKgM3: number };
  readonly geometry: {
    readonly volumeM3: number;
    readonly surfaceM2: number;
    readonly surfaces: readonly Surface[];
  };
  readonly modes: ModesResult;
  /** With the decay of each mode of the shell below the Schroeder frequency. */
  readonly decay: Decay & { readonly modal: readonly ModalDecay[] };
  readonly layout: SpeakersResult['layout'];
  readonly listening: SpeakersResult['listening'];
  readonly speakers: readonly SpeakerResult[];
  /** Loudspeakers of the layout to come. */
  readonly later: SpeakersResult['later'];
  readonly seats: readonly Seat[];
  readonly findings: readonly Finding[];
}

/** Analyse `project` as it stands; `units` are those that findings speak in. */
export function analyze(project: Project, units: LengthUnits = 'metric'): Analysis {
  const { size, solids } = project.room;
  const context = contextOf(project, units);
  const { space, speedMS, decay, speakers, modes, spacing } = context;
  return {
    air: { speedOfSoundMS: speedMS, densityKgM3: densityKgM3(project.air) },
    geometry: space,
    modes: {
      shell: modes.filter((mode) => mode.frequencyHz <= LISTED_TO_HZ),
      schroederHz: context.schroederHz,
      spacing: criteriaOf({ size, speedMS, modes, spacing, midS: decay.midS }),
      gaps: spacing.gaps,
      pileUps: spacing.pileUps,
      thirdOctaves: modesPerThirdOctave(modes),
      expectedCount: expectedModeCount(size, LISTED_TO_HZ, speedMS),
      exactShape: solids.length === 0,
    },
    decay: { ...decay, modal: modalDecayOf(project, space, modes, context.schroederHz) },
    layout: speakers.layout,
    listening: speakers.listening,
    speakers: speakers.speakers,
    later: speakers.later,
    seats: seatsOf(project),
    findings: findingsOf(context),
  };
}
