/** The picture's rectangle on the front wall. */

import type { Project } from './project';

export interface ScreenRect {
  readonly leftX: number;
  readonly rightX: number;
  readonly bottomZ: number;
  readonly topZ: number;
}

/** Edges of the picture in metres, on the plane y = 0. */
export function screenRect(project: Project): ScreenRect {
  const { widthM, aspect, bottomM, centreX } = project.screen;
  const centre = centreX ?? project.room.size.width / 2;
  const heightM = (widthM * aspect[1]) / aspect[0];
  return {
    leftX: centre - widthM / 2,
    rightX: centre + widthM / 2,
    bottomZ: bottomM,
    topZ: bottomM + heightM,
  };
}
