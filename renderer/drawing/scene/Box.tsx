/** A box in the drawing's tones, top lightest, with its edges in ink. */

import { useEffect, useMemo, type ReactElement } from 'react';
import { BoxGeometry, BufferAttribute, Color } from 'three';
import type { Point } from '../../../core/room/project';
import { toScene } from '../axes';
import { boxEdges } from '../../../core/drawing/space-lines';
import { Strokes } from './Strokes';

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
  const geometry = useMemo(() => twoToneBox(top, side), [top, side]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <group>
      <mesh geometry={geometry} position={centre} scale={size} renderOrder={opacity < 1 ? 2 : 0}>
        <meshBasicMaterial
          vertexColors
          transparent={opacity < 1}
          opacity={opacity}
          depthWrite={opacity === 1}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <Strokes pairs={edges} color={edge} dashed={dashed} />
    </group>
  );
}

/** Top and underside, the third and fourth of a box geometry's six sides, in one tone, the rest in another. */
function twoToneBox(top: string, side: string): BoxGeometry {
  const geometry = new BoxGeometry();
  const [topColor, sideColor] = [new Color(top), new Color(side)];
  const corners = geometry.getAttribute('position').count;
  const colors = new Float32Array(corners * 3);
  for (let i = 0; i < corners; i++) {
    const face = Math.floor((i / corners) * 6);
    (face === 2 || face === 3 ? topColor : sideColor).toArray(colors, i * 3);
  }
  geometry.setAttribute('color', new BufferAttribute(colors, 3));
  geometry.clearGroups();
  return geometry;
}
