/** What the handles that lie over the drawing need of it: the ray under the hand, and where that meets what. */

import { type PerspectiveCamera, Plane, Raycaster, type Ray, Vector2, Vector3 } from 'three';
import type { Point } from '../../core/room/project';
import { sceneVector, toRoom } from './axes';

export interface Stage {
  /** The ray through a place on the page. */
  readonly rayThrough: (clientX: number, clientY: number) => Ray;
}

/** The room in space: rays go out from the eye. */
export const spaceStage = (camera: PerspectiveCamera, canvas: HTMLCanvasElement): Stage => ({
  rayThrough: (clientX, clientY) => {
    const box = canvas.getBoundingClientRect();
    const caster = new Raycaster();
    camera.updateMatrixWorld();
    caster.setFromCamera(
      new Vector2(
        ((clientX - box.left) / box.width) * 2 - 1,
        1 - ((clientY - box.top) / box.height) * 2,
      ),
      camera,
    );
    return caster.ray;
  },
});

/** Coordinate along a room axis of the place on the line through `at` that lies nearest to the ray. */
export function alongAxis(ray: Ray, at: Point, axis: 0 | 1 | 2): number | null {
  const unit: [number, number, number] = [0, 0, 0];
  unit[axis] = 1;
  const direction = sceneVector(unit);
  const cosine = direction.dot(ray.direction);
  const across = 1 - cosine * cosine;
  if (across < 1e-6) return null;
  const offset = ray.origin.clone().sub(sceneVector(at));
  const along = (offset.dot(direction) - cosine * offset.dot(ray.direction)) / across;
  return at[axis] + along;
}

/** Where the ray meets the plane through `at` that is normal to a room axis. */
export function onPlane(ray: Ray, at: Point, normalAxis: 0 | 1 | 2): Point | null {
  const unit: [number, number, number] = [0, 0, 0];
  unit[normalAxis] = 1;
  const plane = new Plane().setFromNormalAndCoplanarPoint(sceneVector(unit), sceneVector(at));
  const hit = ray.intersectPlane(plane, new Vector3());
  return hit ? toRoom(hit) : null;
}
