/** How a finish is mounted, and how much of the room it takes, in words. */

import type { Measures } from '../quantity/measures';
import { patchSide } from './faces';
import type { Finish } from './finish';
import type { Face } from './project';

/** Less than this is not worth a word, m. */
const LEAST_TOLD_M = 0.01;

/** A depth; a usual one in inches is told in no sixteenths, since nobody measured it. */
function depthText(depthM: number, isUsual: boolean, { units, part, about }: Measures): string {
  if (!isUsual) return part(depthM);
  return `about ${units === 'metric' ? part(depthM) : about(depthM)}`;
}

/** How the finish is built, for example `hung with 375 mm of air above`. */
export function mountingText(finish: Finish, measures: Measures): string {
  const { part } = measures;
  const { airM = 0, depthUsual = false, suits } = finish;
  const air = depthText(airM, depthUsual, measures);
  switch (finish.mount) {
    case 'face':
      return finish.frameM === undefined
        ? 'the face itself, built so'
        : `the face itself, built so; in front of bare masonry it takes ${part(finish.frameM)}`;
    case 'flat':
      return 'fixed flat on the face';
    case 'framed':
      return 'in framing against the face';
    case 'air':
      return suits.every((place) => place === 'ceiling')
        ? `hung with ${air} of air above`
        : `on battens with ${air} of air behind`;
    case 'floor':
      return 'laid on the floor';
    case 'hung':
      if (suits.includes('ceiling')) return 'hung from the ceiling';
      return airM > 0 ? `hung ${air} off the wall` : 'hung against the wall';
    case 'own':
      return 'as you build it';
  }
}

const SIDE_TAKEN: Readonly<Record<Face, string>> = {
  left: 'width',
  right: 'width',
  front: 'length',
  back: 'length',
  floor: 'height',
  ceiling: 'height',
};

/** What the finish takes of the room on `face`, for example `takes 40 cm of height`; null under 1 cm. */
export function takesText(finish: Finish, face: string, measures: Measures): string | null {
  if (finish.depthM < LEAST_TOLD_M) return null;
  const depth = depthText(finish.depthM, finish.depthUsual ?? false, measures);
  return `takes ${depth} of ${SIDE_TAKEN[patchSide(face)]}`;
}
