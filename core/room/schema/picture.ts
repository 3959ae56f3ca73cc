/** The screen and what throws the picture on it. */

import { z } from 'zod';
import { DEFAULT_SCREEN } from '../defaults';
import { SCREEN_LIMITS } from '../limits';
import { coordinate, group, metres, number, point, range, says, yesOrNo } from './fields';
import type { Known, With } from './known';

export const screen = group({
  widthM: metres(...SCREEN_LIMITS.widthM).exactOptional(),
  aspect: z
    .tuple([number('a number', 0.1, 100), number('a number', 0.1, 100)], says('[across, up]'))
    .default(DEFAULT_SCREEN.aspect),
  /** Lower edge of the picture above the floor, m. */
  bottomM: metres(...SCREEN_LIMITS.bottomM).exactOptional(),
  gain: number('a screen gain', ...SCREEN_LIMITS.gain).default(DEFAULT_SCREEN.gain),
  /** True where the picture lets sound through, so that a loudspeaker can stand behind it. */
  soundThrough: yesOrNo().default(DEFAULT_SCREEN.soundThrough),
  /** Centre along x; the middle of the front wall where it is not given. */
  centreX: coordinate().exactOptional(),
}).prefault({});

export type Screen = With<Known<z.output<typeof screen>>, 'widthM' | 'bottomM'>;

export const projector = group({
  position: point(),
  throwRatio: range(0.1, 20),
  verticalOffsetPercent: range(-300, 300),
  horizontalOffsetPercent: range(-300, 300),
  lumens: number('lumens', 1, 100_000),
});

export type Projector = Known<z.output<typeof projector>>;
