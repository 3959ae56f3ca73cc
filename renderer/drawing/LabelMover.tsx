/** Moves the lettering before each frame of the scene, and lends the handles its rays. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef, type RefObject } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { PagePoint, PageSize } from '../../core/drawing/place-labels';
import type { Point } from '../../core/room/project';
import { toScene } from './axes';
import { moveLabels, type PlacedLabel, type SizeCache } from './Labels';
import { spaceStage, type Stage } from './stage';

export interface LabelMoverProps {
  readonly layer: RefObject<HTMLDivElement | null>;
  readonly stage: { current: Stage | null };
  readonly labels: readonly PlacedLabel[];
}

export function LabelMover({ layer, stage, labels }: LabelMoverProps): null {
  const camera = useThree((state) => state.camera as PerspectiveCamera);
  const canvas = useThree((state) => state.gl.domElement);
  const invalidate = useThree((state) => state.invalidate);
  const sizes = useRef<SizeCache>(new WeakMap());

  useEffect(() => {
    stage.current = spaceStage(camera, canvas);
  }, [stage, camera, canvas]);
  useEffect(() => {
    sizes.current = new WeakMap();
    invalidate();
  }, [labels, invalidate]);

  useFrame(({ size }) => {
    if (!layer.current) return;
    camera.updateMatrixWorld();
    moveLabels(
      layer.current,
      labels,
      (place) => onCanvas(place, camera, size),
      size,
      sizes.current,
    );
  });
  return null;
}

const scratch = new Vector3();

/** Where a place of the room is on the canvas; null where it is behind the eye. */
function onCanvas(place: Point, camera: PerspectiveCamera, size: PageSize): PagePoint | null {
  const { x, y, z } = scratch.set(...toScene(place)).project(camera);
  if (z > 1) return null;
  return { x: ((x + 1) / 2) * size.width, y: ((1 - y) / 2) * size.height };
}
