/** The eye by keyboard: arrow keys turn it round the room, or move over a plan or section; + and − zoom. */

import { MathUtils, Vector3, type PerspectiveCamera } from 'three';
import type { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { eyeOf, type Pose } from './poses';

/** What the drawing's keys are, in words. */
export const EYE_KEYS =
  'Arrow keys turn the room, with Shift they move it. + and − zoom, Home shows the whole room.';

export interface EyeMove {
  /** Steps to the right and up. */
  readonly right: number;
  readonly up: number;
  /** Moves the sheet where it would turn the room. */
  readonly slides: boolean;
  /** Steps nearer. */
  readonly nearer: number;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** What a key means for the eye; null where it means nothing. */
export function eyeMove(key: string, shift: boolean): EyeMove | null {
  const arrow = ARROWS[key];
  if (arrow) return { right: arrow[0], up: arrow[1], slides: shift, nearer: 0 };
  const nearer = key === '+' || key === '=' ? 1 : key === '-' || key === '−' ? -1 : 0;
  return nearer === 0 ? null : { right: 0, up: 0, slides: false, nearer };
}

const TURN_DEG = 6;
const ZOOM = 1.12;
/** Part of the picture's height that a step moves the sheet by. */
const SLIDE = 0.06;
/** Never straight overhead, where left and right are lost, rad. */
const LEAST_PHI = 0.05;

/** The pose after a move. */
export function movedPose(pose: Pose, move: EyeMove): Pose {
  const distance = pose.distance * ZOOM ** -move.nearer;
  if (!move.slides) {
    const step = MathUtils.degToRad(TURN_DEG);
    const phi = Math.max(LEAST_PHI, pose.phi - move.up * step);
    return { ...pose, distance, theta: pose.theta + move.right * step, phi };
  }
  const toEye = eyeOf({ ...pose, target: new Vector3(), distance: 1 });
  const right = new Vector3(Math.cos(pose.theta), 0, -Math.sin(pose.theta));
  const up = new Vector3().crossVectors(toEye, right);
  const stepM = SLIDE * 2 * pose.distance * Math.tan(MathUtils.degToRad(pose.fovDeg / 2));
  // The eye goes the way of the key, so that the room goes the other way.
  const target = pose.target
    .clone()
    .addScaledVector(right, move.right * stepM)
    .addScaledVector(up, move.up * stepM);
  return { ...pose, distance, target };
}

/** Stand there, within the limits that hold for the hand too. */
export function goTo(camera: PerspectiveCamera, orbit: OrbitControls, pose: Pose): void {
  const held = {
    ...pose,
    phi: Math.min(pose.phi, orbit.maxPolarAngle),
    distance: MathUtils.clamp(pose.distance, orbit.minDistance, orbit.maxDistance),
  };
  camera.position.copy(eyeOf(held));
  orbit.target.copy(held.target);
  orbit.update();
}
