/**
 * Room axes and scene axes. The room's x runs right, y from the screen wall to the back, z up; the
 * scene's X runs right, Y up, Z to the back. Swapping y and z keeps left left.
 */

import { Vector3 } from 'three';
import type { Point } from '../../core/room/project';

export const toScene = (place: Point): [number, number, number] => [place[0], place[2], place[1]];
export const sceneVector = (place: Point): Vector3 => new Vector3(...toScene(place));
export const toRoom = (at: Vector3): Point => [at.x, at.z, at.y];
