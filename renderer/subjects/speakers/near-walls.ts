/** What the near faces do to the chosen loudspeaker at the seat looked at, asked of core once a change. */

import { useMemo } from 'react';
import {
  boundaryCurve,
  faceNotches,
  type BoundaryCurve,
  type FaceNotch,
} from '../../../core/reflections/boundary';
import { reflectingRoom } from '../../../core/reflections/image-sources';
import { MINDED_HZ, notchRemedy, type NotchRemedy } from '../../../core/reflections/notch-remedy';
import { finishLookup } from '../../../core/room/finishes';
import type { ListeningPlace } from '../../../core/room/seats';
import { useShownSeat } from '../../state/shown-seat';
import { useAnalysis, useProject } from '../../state/session';
import { useChosenSpeaker, type ChosenSpeaker } from './chosen-speaker';

export interface Walls {
  readonly speaker: ChosenSpeaker;
  readonly seat: ListeningPlace;
  /** Null where loudspeaker or seat is outside the free space. */
  readonly found: {
    readonly notches: readonly WallNotch[];
    readonly curve: BoundaryCurve;
  } | null;
}

export interface WallNotch extends FaceNotch {
  /** True where the face takes part in the curve. */
  readonly inCurve: boolean;
  readonly remedy: NotchRemedy | null;
}

/** Null where no loudspeaker or no seat has a place. */
export function useWalls(): Walls | null {
  const project = useProject();
  const { speedOfSoundMS: speedMS } = useAnalysis().air;
  const speaker = useChosenSpeaker();
  const seat = useShownSeat();
  const found = useMemo((): Walls['found'] => {
    if (!speaker || !seat) return null;
    const { room } = project;
    const input = {
      reflecting: reflectingRoom(room),
      source: speaker.position,
      receiver: seat.position,
      speedMS,
      finish: finishLookup(project),
    };
    const curve = boundaryCurve(input);
    const notches = faceNotches(input);
    if (!curve || !notches) return null;
    return {
      curve,
      notches: notches.map((notch) => ({
        ...notch,
        inCurve: curve.faces.some(({ face }) => face === notch.hit.face),
        remedy: notchRemedy(notch, input.source, input.receiver, room.size, speedMS),
      })),
    };
  }, [project, speedMS, speaker, seat]);
  return speaker && seat ? { speaker, seat, found } : null;
}

/** The notch shown where none is chosen: the deepest where notches are minded, else the first. */
export function worstNotch(notches: readonly WallNotch[]): WallNotch | null {
  const [low, high] = MINDED_HZ;
  const minded = notches.filter(
    ({ notchHz, inCurve }) => inCurve && notchHz !== null && notchHz >= low && notchHz <= high,
  );
  return minded.sort((a, b) => a.depthDb - b.depthDb)[0] ?? notches[0] ?? null;
}
