/** The cabinet of a subwoofer around its acoustic centre. */

import { mapPoint } from '../room/point';
import type { Subwoofer } from '../room/project';
import type { SpaceBox } from './on-paper';

const HALF_M = 0.2;

export const subwooferBox = ({ position }: Subwoofer): SpaceBox => ({
  min: mapPoint(position, (at) => at - HALF_M),
  max: mapPoint(position, (at) => at + HALF_M),
});
