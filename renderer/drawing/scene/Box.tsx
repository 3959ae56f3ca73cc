/** A box in the drawing's tones, top lightest, with its edges in ink. */

import { useMemo, type ReactElement } from 'react';
import type { Point } from '../../../core/room/project';
import { toScene } from '../axes';
import { boxEdges, Strokes } from './Strokes';

export interface BoxProps {
  readonly min: Point;
  readonly max: Point;
  readonly top: string;
  readonly side: string;
  readonly edge: string;
  readonly opacity?: number;
  readonly dashed?: boolean;
}

export function Box(props: BoxProps): ReactElement {
  const { min, max, top, side, edge, opacity = 1, dashed = false } = props;
  const size = toScene([max[0] - min[0], max[1] - min[1], max[2] - min[2]]);
  const centre = toScene([(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2]);
  const edges = useMemo(() => boxEdges(min, max), [min, max]);
  const look = {
    transparent: opacity < 1,
    opacity,
    depthWrite: opacity === 1,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  };
  return (
    <group>
      <mesh position={centre} scale={size} renderOrder={opacity < 1 ? 2 : 0}>
        <boxGeometry />
        {[side, side, top, top, side, side].map((color, i) => (
          <meshBasicMaterial key={i} attach={`material-${i}`} color={color} {...look} />
        ))}
      </mesh>
      <Strokes pairs={edges} color={edge} dashed={dashed} />
    </group>
  );
}
