/** Where subwoofers may stand and where not, while places are looked for. */

import type { Places } from '../../../core/bass/places';
import type { Point } from '../../../core/room/project';
import { useResult } from '../../state/use-result';
import { usePlaces } from './places-store';

export interface Candidates {
  readonly places: Places;
  /** Width, height and depth of the box, m: its places are its middle. */
  readonly boxM: Point;
}

export function useCandidates(): Candidates {
  const { stepM, boxM } = usePlaces((store) => store.options);
  const places = useResult('subwooferPlaces', { stepM, boxM });
  return { places, boxM };
}

/** Half the side of the square, or of the cross, that stands for a place, m. */
export const CANDIDATE_M = 0.07;

/** Where the box touches what it stands on. */
export const foot = ([x, y, z]: Point, [, high]: Point): Point => [x, y, z - high / 2];
