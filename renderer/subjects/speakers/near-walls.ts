/** What the near faces do to the chosen loudspeaker at the seat looked at, asked of core once a change. */

import type { NearFaces, NearNotch } from '../../../core/analysis/near-faces';
import { NOTCH_BAND_HZ } from '../../../core/reflections/notch-remedy';
import type { ListeningPlace } from '../../../core/room/seats';
import { useShownSeat } from '../../state/shown-seat';
import { useResult } from '../../state/use-result';
import { useChosenSpeaker, type ChosenSpeaker } from './chosen-speaker';

export interface Walls {
  readonly speaker: ChosenSpeaker;
  readonly seat: ListeningPlace;
  /** Null where loudspeaker or seat is outside the free space. */
  readonly near: NearFaces | null;
}

/** Null where no loudspeaker or no seat has a place. */
export function useWalls(): Walls | null {
  const speaker = useChosenSpeaker();
  const seat = useShownSeat();
  const near = useResult(
    'nearFaces',
    speaker && seat ? { source: speaker.position, ears: seat.position } : null,
  );
  return speaker && seat ? { speaker, seat, near } : null;
}

/** The notch shown where none is chosen: the deepest where notches are minded, else the first. */
export function worstNotch(notches: readonly NearNotch[]): NearNotch | null {
  const [low, high] = NOTCH_BAND_HZ;
  const minded = notches.filter(
    ({ notchHz, inCurve }) => inCurve && notchHz !== null && notchHz >= low && notchHz <= high,
  );
  return minded.sort((a, b) => a.depthDb - b.depthDb)[0] ?? notches[0] ?? null;
}
