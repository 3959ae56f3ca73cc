/** Where one more subwoofer goes before anybody has said where. */

import { farCorner } from '../room/point';
import type { Point, Project } from '../room/project';
import { standingHeightM } from '../scene/stand';
import { USUAL_SUBWOOFER_M } from '../scene/subwoofer-box';
import { inTheWay } from './obstacles';
import { subwooferPlaces } from './places';

/** Between the places along the walls that are tried after the corners, m. */
const STEP_M = 0.4;

/** The first corner of the shell where its box is in nothing's way, else the first such place along the walls. */
export function anotherPlace(project: Project, boxM: Point = USUAL_SUBWOOFER_M): Point {
  const [width, length] = farCorner(project.room.size);
  const [half, high, deep] = [boxM[0] / 2, boxM[1] / 2, boxM[2] / 2];
  const at = (x: number, y: number): Point => [x, y, standingHeightM(project, [x, y]) + high];
  const corners = [deep, length - deep].flatMap((y) => [at(half, y), at(width - half, y)]);
  const blocked = inTheWay(project, boxM, project.speakers.subwoofers);
  const isClear = (place: Point): boolean => blocked(place) === null;
  return (
    corners.find(isClear) ??
    subwooferPlaces(project, { stepM: STEP_M, boxM }).allowed.find(isClear) ??
    at(width / 2, deep)
  );
}
