/**
 * Where a projector's lens may be. The picture is upright on y = 0 and the lens looks square at it;
 * metres. Offsets are those of the room file: percent of the whole picture's height or width by which
 * the lens is above (to the right of) the middle of the picture. A maker may state them of half the
 * height: ask which.
 */

import type { Point, Project, Projector } from '../room/project';
import { screenRect, type ScreenRect } from '../room/screen';
import { luminanceCdM2 } from './brightness';

export interface ProjectorResult {
  /** From the lens to the plane of the picture. */
  readonly throwM: number;
  /** Throw over picture width. */
  readonly throwRatio: number;
  /** Lens above the middle of the picture, percent of the picture's height. */
  readonly verticalOffsetPercent: number;
  /** Lens to the right of the middle of the picture, percent of its width. */
  readonly horizontalOffsetPercent: number;
  /** White straight on, with all stated lumens on the picture. */
  readonly luminanceCdM2: number;
  /** True only where throw and both offsets are within the lens's ranges. */
  readonly inRange: boolean;
}

/** Figures are met to within this. */
const MET = 1e-9;

const within = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low - MET && value <= high + MET;

/** The projector against its lens; null where none is hung. */
export function projectorResult(project: Project): ProjectorResult | null {
  const { projector, screen } = project;
  if (!projector) return null;
  const picture = screenRect(project);
  const heightM = picture.topZ - picture.bottomZ;
  const [x, throwM, z] = projector.position;
  const throwRatio = throwM / screen.widthM;
  const verticalOffsetPercent = (100 * (z - (picture.topZ + picture.bottomZ) / 2)) / heightM;
  const horizontalOffsetPercent =
    (100 * (x - (picture.leftX + picture.rightX) / 2)) / screen.widthM;
  return {
    throwM,
    throwRatio,
    verticalOffsetPercent,
    horizontalOffsetPercent,
    luminanceCdM2: luminanceCdM2(projector.lumens, screen.gain, screen.widthM * heightM),
    inRange:
      within(throwRatio, projector.throwRatio) &&
      within(verticalOffsetPercent, projector.verticalOffsetPercent) &&
      within(horizontalOffsetPercent, projector.horizontalOffsetPercent),
  };
}

/** A box of places for the lens: by throw along the room, by offset across it and in height. */
export interface LensZone {
  readonly min: Point;
  readonly max: Point;
}

/** Where the lens may be for this picture, whatever is in the room. */
export function lensZone(
  { throwRatio, verticalOffsetPercent, horizontalOffsetPercent }: Omit<Projector, 'position'>,
  { leftX, rightX, bottomZ, topZ }: ScreenRect,
): LensZone {
  const widthM = rightX - leftX;
  const at = (middle: number, size: number, percent: number): number =>
    middle + (size * percent) / 100;
  const corner = (end: 0 | 1): Point => [
    at((leftX + rightX) / 2, widthM, horizontalOffsetPercent[end]),
    throwRatio[end] * widthM,
    at((bottomZ + topZ) / 2, topZ - bottomZ, verticalOffsetPercent[end]),
  ];
  return { min: corner(0), max: corner(1) };
}
