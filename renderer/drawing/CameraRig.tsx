/** Moves the eye in space: follows the room's size, and lets the person orbit and zoom. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef, type RefObject } from 'react';
import { type PerspectiveCamera, Spherical } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { ShellSize } from '../../core/room/project';
import { goTo, movedPose, type EyeMove } from './eye-keys';
import { between, eyeOf, frameRoom, roomPose, type Pose } from './poses';

const GLIDE_MS = 420;

export interface CameraRigProps {
  readonly size: ShellSize;
  /** True while a drag is on: the eye stays still under the hand. */
  readonly held: boolean;
  /** A new number brings the whole room back into the picture. */
  readonly refit: number;
  /** Takes the moves that the keyboard asks for. */
  readonly eye: RefObject<((move: EyeMove) => void) | null>;
}

interface Shown {
  readonly size: ShellSize;
  readonly aspect: number;
  readonly refit: number;
}

interface Glide {
  readonly from: Pose;
  readonly to: Pose;
  readonly startMs: number;
}

const eased = (t: number): number => t * t * (3 - 2 * t);
const stillPreferred = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

export function CameraRig({ size, held, refit, eye }: CameraRigProps): null {
  const camera = useThree((state) => state.camera as PerspectiveCamera);
  const element = useThree((state) => state.gl.domElement);
  const viewport = useThree((state) => state.size);
  const invalidate = useThree((state) => state.invalidate);
  const controls = useRef<OrbitControls | null>(null);
  const glide = useRef<Glide | null>(null);
  const shown = useRef<Shown | null>(null);
  const aspect = viewport.width / Math.max(1, viewport.height);

  useEffect(() => {
    const orbit = new OrbitControls(camera, element);
    orbit.enableDamping = false;
    orbit.maxPolarAngle = Math.PI * 0.56;
    orbit.screenSpacePanning = true;
    const onChange = (): void => invalidate();
    const onStart = (): void => {
      glide.current = null;
    };
    orbit.addEventListener('change', onChange);
    orbit.addEventListener('start', onStart);
    controls.current = orbit;
    eye.current = (move) => {
      glide.current = null;
      goTo(camera, orbit, movedPose(poseOf(camera, orbit), move));
      invalidate();
    };
    return () => {
      orbit.dispose();
      eye.current = null;
      controls.current = null;
    };
  }, [camera, element, invalidate, eye]);

  useEffect(() => {
    const orbit = controls.current;
    if (!orbit || held) return;
    const present = shown.current;
    let to = roomPose(size, aspect);
    if (present) {
      const from = poseOf(camera, orbit);
      if (present.refit === refit) {
        // A changed room: keep the person's angle, pan and zoom.
        const direction = from;
        const before = frameRoom(present.size, direction, present.aspect);
        const after = frameRoom(size, direction, aspect);
        to = {
          ...direction,
          distance: (after.distance * from.distance) / before.distance,
          target: after.target.add(from.target.clone().sub(before.target)),
        };
      }
      glide.current = { from, to, startMs: performance.now() };
      if (stillPreferred() || present.aspect !== aspect) {
        glide.current = null;
        stand(camera, orbit, to);
      }
    } else {
      stand(camera, orbit, to);
    }
    shown.current = { size, aspect, refit };
    invalidate();
  }, [size, aspect, held, refit, camera, invalidate]);

  useFrame(() => {
    const orbit = controls.current;
    const going = glide.current;
    if (!orbit || !going) return;
    const share = Math.min(1, (performance.now() - going.startMs) / GLIDE_MS);
    stand(camera, orbit, between(going.from, going.to, eased(share)));
    if (share < 1) invalidate();
    else glide.current = null;
  });

  return null;
}

function poseOf(camera: PerspectiveCamera, orbit: OrbitControls): Pose {
  const spherical = new Spherical().setFromVector3(camera.position.clone().sub(orbit.target));
  return {
    target: orbit.target.clone(),
    theta: spherical.theta,
    phi: spherical.phi,
    distance: spherical.radius,
    fovDeg: camera.fov,
  };
}

function stand(camera: PerspectiveCamera, orbit: OrbitControls, pose: Pose): void {
  camera.position.copy(eyeOf(pose));
  camera.fov = pose.fovDeg;
  camera.near = Math.max(0.1, pose.distance - 40);
  camera.far = pose.distance + 80;
  camera.updateProjectionMatrix();
  orbit.target.copy(pose.target);
  orbit.minDistance = pose.distance * 0.15;
  orbit.maxDistance = pose.distance * 4;
  camera.lookAt(pose.target);
  orbit.update();
}
