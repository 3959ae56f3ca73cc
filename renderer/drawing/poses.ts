/**
 * Where the eye stands for each view. Plan and sections use the same perspective camera with so long a
 * lens that lines stay parallel to the eye, so that one view can glide into the next.
 */

import { MathUtils, Spherical, Vector3 } from 'three';
import type { ShellSize } from '../../core/room/project';
import type { View } from '../state/session';

export interface Pose {
  readonly target: Vector3;
  /** Angle around the vertical, 0 from the back of the room towards the screen, radians. */
  readonly theta: number;
  /** Angle from the vertical, radians. */
  readonly phi: number;
  readonly distance: number;
  readonly fovDeg: number;
}

const LONG_LENS_DEG = 3;
const ROOM_LENS_DEG = 32;

const ANGLES: Readonly<Record<View, { theta: number; phi: number; fovDeg: number }>> = {
  room: { theta: 0.62, phi: 1.0, fovDeg: ROOM_LENS_DEG },
  plan: { theta: 0, phi: 0.0001, fovDeg: LONG_LENS_DEG },
  section: { theta: -Math.PI / 2, phi: Math.PI / 2, fovDeg: LONG_LENS_DEG },
  front: { theta: 0, phi: Math.PI / 2, fovDeg: LONG_LENS_DEG },
};

/** Space around the room for dimension lines, m. */
const MARGIN_M = 0.75;

export const roomCentre = (size: ShellSize): Vector3 =>
  new Vector3(size.width / 2, size.height / 2, size.length / 2);

/** Position of the camera in a pose. */
export function eyeOf(pose: Pose): Vector3 {
  return new Vector3()
    .setFromSpherical(new Spherical(pose.distance, pose.phi, pose.theta))
    .add(pose.target);
}

/** Distance from the centre at which the whole room with its dimension lines is in the picture. */
export function fitDistance(
  size: ShellSize,
  theta: number,
  phi: number,
  fovDeg: number,
  aspect: number,
): number {
  const toEye = new Vector3().setFromSpherical(new Spherical(1, phi, theta));
  const right = new Vector3(Math.cos(theta), 0, -Math.sin(theta));
  const up = new Vector3().crossVectors(toEye, right);
  const tanUp = Math.tan(MathUtils.degToRad(fovDeg / 2));
  const tanRight = tanUp * aspect;
  const half = new Vector3(
    size.width / 2 + MARGIN_M,
    size.height / 2 + MARGIN_M * 0.6,
    size.length / 2 + MARGIN_M,
  );
  let distance = 0;
  for (const sx of [-1, 1]) {
    for (const sy of [-1, 1]) {
      for (const sz of [-1, 1]) {
        const corner = new Vector3(sx * half.x, sy * half.y, sz * half.z);
        const depth = corner.dot(toEye);
        distance = Math.max(
          distance,
          depth + Math.abs(corner.dot(right)) / tanRight,
          depth + Math.abs(corner.dot(up)) / tanUp,
        );
      }
    }
  }
  return distance;
}

/** The pose that a view starts from. */
export function viewPose(view: View, size: ShellSize, aspect: number): Pose {
  const { theta, phi, fovDeg } = ANGLES[view];
  return {
    target: roomCentre(size),
    theta,
    phi,
    fovDeg,
    distance: fitDistance(size, theta, phi, fovDeg, aspect),
  };
}

/** A pose part of the way from one to another; the size of the room in the picture glides evenly. */
export function between(from: Pose, to: Pose, share: number): Pose {
  const turn = Math.atan2(Math.sin(to.theta - from.theta), Math.cos(to.theta - from.theta));
  const span = (pose: Pose): number =>
    pose.distance * Math.tan(MathUtils.degToRad(pose.fovDeg / 2));
  const fovDeg = MathUtils.lerp(from.fovDeg, to.fovDeg, share);
  const seen = MathUtils.lerp(span(from), span(to), share);
  return {
    target: from.target.clone().lerp(to.target, share),
    theta: from.theta + turn * share,
    phi: MathUtils.lerp(from.phi, to.phi, share),
    fovDeg,
    distance: seen / Math.tan(MathUtils.degToRad(fovDeg / 2)),
  };
}
