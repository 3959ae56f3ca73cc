/**
 * Lettering and handles over the canvas: page elements that are moved, every drawn frame, to where
 * their place in the room appears. They stay sharp, can be focused, and are read by a screen reader.
 */

import { useFrame, useThree } from '@react-three/fiber';
import { type ReactElement, type ReactNode, type RefObject, useEffect } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Point } from '../../core/room/project';
import { toScene } from './axes';
import type { Stage } from './stage';

export interface PlacedLabel {
  readonly key: string;
  readonly at: Point;
  readonly node: ReactNode;
}

/** The page side: one element a label, told apart by its key. */
export function LabelLayer({
  labels,
  layer,
}: {
  readonly labels: readonly PlacedLabel[];
  readonly layer: RefObject<HTMLDivElement | null>;
}): ReactElement {
  return (
    <div className="labels" ref={layer}>
      {labels.map((label) => (
        <div key={label.key} className="label-anchor" data-place={label.at.join(' ')}>
          {label.node}
        </div>
      ))}
    </div>
  );
}

export interface LabelMoverProps {
  readonly layer: RefObject<HTMLDivElement | null>;
  readonly stage: { current: Stage | null };
  readonly labels: readonly PlacedLabel[];
}

/** The scene side: moves the elements before each frame, and lends camera and canvas to the handles. */
export function LabelMover({ layer, stage, labels }: LabelMoverProps): null {
  const camera = useThree((state) => state.camera as PerspectiveCamera);
  const canvas = useThree((state) => state.gl.domElement);
  const invalidate = useThree((state) => state.invalidate);

  useEffect(() => {
    stage.current = { camera, canvas };
  }, [stage, camera, canvas]);
  useEffect(() => invalidate(), [labels, invalidate]);

  useFrame(({ size }) => {
    const anchors = layer.current?.children;
    if (!anchors) return;
    camera.updateMatrixWorld();
    const place = new Vector3();
    labels.forEach((label, i) => {
      const anchor = anchors[i];
      if (!(anchor instanceof HTMLElement)) return;
      place.set(...toScene(label.at)).project(camera);
      const x = ((place.x + 1) / 2) * size.width;
      const y = ((1 - place.y) / 2) * size.height;
      const hidden =
        place.z > 1 || x < -40 || y < -20 || x > size.width + 40 || y > size.height + 20;
      anchor.style.visibility = hidden ? 'hidden' : 'visible';
      anchor.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
    });
  });
  return null;
}
