/**
 * What a room file means where it is silent. Sizes that depend on the shell are written into the
 * Project when it is opened, so that what is saved is what was seen.
 */

import type { Face } from './kinds';
import type { Row, Screen, ShellSize } from './project';
import { practice } from './practice/practice';

/** Finish of each face in a bare room: painted slab, gypsum board on studs all round. */
export const DEFAULT_FINISHES: Readonly<Record<Face, string>> = {
  front: 'gyp13-stud',
  back: 'gyp13-stud',
  left: 'gyp13-stud',
  right: 'gyp13-stud',
  floor: 'floor-concrete',
  ceiling: 'gyp13-stud',
};

export const DEFAULT_SOLID_FINISH = 'gyp13-stud';

export const DEFAULT_ROW = {
  seats: 3,
  pitchM: practice('seat-pitch'),
  riserM: 0,
  earHeightM: practice('ear-height'),
  eyeHeightM: practice('eye-height'),
};

/** One row of three a little behind the middle of the room, to the nearest 5 cm. */
export function defaultRows(size: ShellSize): readonly Row[] {
  return [{ id: 'row-1', ...DEFAULT_ROW, y: Math.round(size.length * 0.62 * 20) / 20 }];
}

export const DEFAULT_SCREEN: {
  aspect: [number, number];
  readonly gain: number;
  readonly soundThrough: boolean;
} = { aspect: [16, 9], gain: 1, soundThrough: false };

/** A picture of 60 % of the front wall, to the nearest 5 cm. */
export const defaultScreenSize = (size: ShellSize): Pick<Screen, 'widthM' | 'bottomM'> => ({
  widthM: Math.round(size.width * 0.6 * 20) / 20,
  bottomM: 0.7,
});

export const DEFAULT_LAYOUT = '0+5+0';
