/** What a finish would do to the decay if part of the room took it, by the formulas that judge it. */

import type { Finish } from '../room/finishes';
import type { Surface } from '../room/space';
import { bandWith, type RoomSize } from './band-with';
import type { Decay, DecayBand } from './decay';
import { METHODS } from './methods';
import { JUDGED_BY, verdictOf } from './verdict';

/** Octaves that a change is judged by: the statistics hold there and nearly every finish has figures. */
const JUDGED_HZ: readonly number[] = [250, 500, 1000, 2000, 4000];

export interface FinishEffect {
  /** Seconds outside the target with the finish, the judged octaves together; 0 within it. */
  readonly outsideS: number;
  /** How much nearer to the target that is than now, s; negative is farther. */
  readonly nearerS: number;
  /** Mean of the Eyring times at 500 Hz and 1 kHz with the finish, s. */
  readonly midS: number;
}

export interface RoomDecay {
  readonly decay: Pick<Decay, 'bands'>;
  readonly geometry: RoomSize;
  readonly speedMS: number;
}

/** Seconds outside the target, the judged octaves together, as the room is; octaves unknown count 0. */
export const outsideNowS = ({ bands }: Pick<Decay, 'bands'>): number =>
  judged(bands).reduce(
    (sum, band) =>
      sum +
      Math.abs(
        verdictOf(
          band,
          JUDGED_BY.map((id) => band.methods[id]),
        ).outsideS,
      ),
    0,
  );

const judged = (bands: readonly DecayBand[]): readonly DecayBand[] =>
  bands.filter((band) => JUDGED_HZ.includes(band.hz));

/**
 * Effect of `finish` on the surfaces that `takes` names; null where a judged octave has no figure. The
 * volume stays: what a deep finish takes of the room is not counted.
 */
export function finishEffect(
  room: RoomDecay,
  takes: (surface: Surface) => boolean,
  finish: Finish,
): FinishEffect | null {
  let outsideS = 0;
  let middle = 0;
  for (const band of judged(room.decay.bands)) {
    const input = bandWith(room.geometry, room.speedMS, band, (surface) =>
      takes(surface) ? finish : null,
    );
    if (!input) return null;
    const times = JUDGED_BY.map((id) => METHODS[id].timeS(input));
    outsideS += Math.abs(verdictOf(band, times).outsideS);
    if (band.hz === 500 || band.hz === 1000) middle += METHODS.eyring.timeS(input) / 2;
  }
  return { outsideS, nearerS: outsideNowS(room.decay) - outsideS, midS: middle };
}
