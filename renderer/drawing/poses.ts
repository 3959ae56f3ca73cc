/** Where the eye stands to see the whole room in space. */

import { MathUtils, Spherical, Vector3 } from 'three';
import type { ShellSize } from '../../core/room/project';
import { OFFSET_M } from '../../core/drawing/dimensions';

export interface Pose {
  readonly target: Vector3;
  /** Angle around the vertical, 0 from the back of the room towards the screen, radians. */
  readonly theta: number;
  /** Angle from the vertical, radians. */
  readonly phi: number;
  readonly distance: number;
  readonly fovDeg: number;
}

const ROOM_LENS_DEG = 32;

const ROOM_ANGLES = { theta: 0.62, phi: 1.0, fovDeg: ROOM_LENS_DEG } as const;

/** Share of the picture's half height and width that the room with its dimension lines may take. */
const FILL = 0.92;
/** Lettering stands outside the dimension lines by about this, m. */
const LETTERING_M = 0.2;

export const roomCentre = (size: ShellSize): Vector3 =>
  new Vector3(size.width / 2, size.height / 2, size.length / 2);

/** Position of the camera in a pose. */
export function eyeOf(pose: Pose): Vector3 {
  return new Vector3()
    .setFromSpherical(new Spherical(pose.distance, pose.phi, pose.theta))
    .add(pose.target);
}

/** What must be in the picture: the shell, and the ground of the dimension lines around its floor. */
function outline(size: ShellSize): readonly Vector3[] {
  const out = OFFSET_M + LETTERING_M;
  const points: Vector3[] = [];
  for (const far of [false, true]) {
    for (const back of [false, true]) {
      const corner = (x: number, up: number, y: number): Vector3 =>
        new Vector3(far ? size.width + x : -x, up, back ? size.length + y : -y);
      points.push(corner(0, size.height, 0), corner(out, 0, 0), corner(0, 0, out));
    }
  }
  return points;
}

export interface Framing {
  readonly distance: number;
  /** Where the eye looks so that the outline stands in the middle of the picture. */
  readonly target: Vector3;
}

/** Distance and target for a direction and lens with the outline just filling the picture. */
export function frameRoom(
  size: ShellSize,
  direction: { readonly theta: number; readonly phi: number; readonly fovDeg: number },
  aspect: number,
): Framing {
  const { theta, phi, fovDeg } = direction;
  const toEye = new Vector3().setFromSpherical(new Spherical(1, phi, theta));
  const right = new Vector3(Math.cos(theta), 0, -Math.sin(theta));
  const up = new Vector3().crossVectors(toEye, right);
  const tanUp = Math.tan(MathUtils.degToRad(fovDeg / 2));
  const tanRight = tanUp * aspect;
  const points = outline(size);
  const target = roomCentre(size);
  let distance = (4 * Math.max(size.width, size.length, size.height)) / tanUp;
  // Centre and close in by turns: each pass sees the perspective of the one before.
  for (let pass = 0; pass < 8; pass++) {
    let [left, rightmost, low, high, nearest] = [Infinity, -Infinity, Infinity, -Infinity, 0];
    for (const point of points) {
      const from = point.clone().sub(target);
      const depth = distance - from.dot(toEye);
      left = Math.min(left, from.dot(right) / (depth * tanRight));
      rightmost = Math.max(rightmost, from.dot(right) / (depth * tanRight));
      low = Math.min(low, from.dot(up) / (depth * tanUp));
      high = Math.max(high, from.dot(up) / (depth * tanUp));
      nearest = Math.max(nearest, from.dot(toEye));
    }
    target.addScaledVector(right, ((left + rightmost) / 2) * distance * tanRight);
    target.addScaledVector(up, ((low + high) / 2) * distance * tanUp);
    const fill = Math.max(rightmost - left, high - low) / 2 / FILL;
    distance = nearest + (distance - nearest) * fill;
  }
  return { distance, target };
}

/** The pose that the view starts from. */
export function roomPose(size: ShellSize, aspect: number): Pose {
  return { ...ROOM_ANGLES, ...frameRoom(size, ROOM_ANGLES, aspect) };
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
