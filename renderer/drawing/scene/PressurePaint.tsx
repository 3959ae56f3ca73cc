/** Pressure on the faces of the room, with its lines. */

import { useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef, type ReactElement } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  LinearFilter,
  type Mesh,
  RGBAFormat,
  SRGBColorSpace,
  Vector3,
} from 'three';
import type { Point } from '../../../core/room/project';
import type { Painting, PaintedPlane } from '../../pressure/painting';
import { sceneVector, toScene } from '../axes';
import { paintOf, type PaintColors } from '../paint-colors';
import type { Palette } from '../palette';
import { Strokes } from './Strokes';

export interface PressurePaintProps {
  readonly painting: Painting;
  readonly palette: Palette;
}

export function PressurePaint({ painting, palette }: PressurePaintProps): ReactElement {
  const colors = useMemo(
    (): PaintColors => ({ loud: palette.accent, other: palette.ink, quiet: palette.raised }),
    [palette],
  );
  return (
    <group>
      {painting.planes
        .filter(({ plane }) => plane.where === 'face')
        .map((painted) => (
          <SheetPaint
            key={painted.plane.key}
            painted={painted}
            kind={painting.kind}
            colors={colors}
            line={palette.ink}
          />
        ))}
    </group>
  );
}

/** Off the face by this much, m, so that it lies over it. */
const OFF_M = 0.006;

function SheetPaint({
  painted,
  kind,
  colors,
  line,
}: {
  readonly painted: PaintedPlane;
  readonly kind: Painting['kind'];
  readonly colors: PaintColors;
  readonly line: string;
}): ReactElement {
  const { plane, values, lines } = painted;
  const { axis, atM, towards, us, vs } = plane;
  const mesh = useRef<Mesh>(null);
  const geometry = useMemo(() => quad(painted), [painted]);
  const texture = useMemo(() => {
    const made = new DataTexture(paintOf(values, kind, colors), vs.length, us.length, RGBAFormat);
    made.magFilter = LinearFilter;
    made.minFilter = LinearFilter;
    made.colorSpace = SRGBColorSpace;
    made.needsUpdate = true;
    return made;
  }, [values, kind, colors, us, vs]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => texture.dispose(), [texture]);
  const pairs = useMemo(
    () =>
      lines.map(
        ([u0, v0, u1, v1]) =>
          [
            place(axis, atM + 2 * OFF_M * towards, u0, v0),
            place(axis, atM + 2 * OFF_M * towards, u1, v1),
          ] as const,
      ),
    [lines, axis, atM, towards],
  );
  const centre = place(axis, atM, mid(us), mid(vs));
  const inward: [number, number, number] = [0, 0, 0];
  inward[axis] = towards;

  // A face seen from behind fades as its wall does.
  useFrame(({ camera }) => {
    const toEye = new Vector3().subVectors(camera.position, sceneVector(centre)).normalize();
    const facing = toEye.dot(sceneVector(inward));
    if (mesh.current?.parent) mesh.current.parent.visible = facing > 0.02;
  });

  return (
    <group>
      <mesh ref={mesh} geometry={geometry}>
        <meshBasicMaterial map={texture} transparent depthWrite={false} side={2} />
      </mesh>
      <Strokes pairs={pairs} color={line} opacity={kind === 'mode' ? 1 : 0.45} />
    </group>
  );
}

const mid = (list: Float64Array): number => ((list[0] ?? 0) + (list.at(-1) ?? 0)) / 2;

function place(axis: 0 | 1 | 2, at: number, u: number, v: number): Point {
  return axis === 0 ? [at, u, v] : axis === 1 ? [u, at, v] : [u, v, at];
}

/** The plane as two triangles; texture columns run along the second axis. Samples lie at texel centres. */
function quad({ plane }: PaintedPlane): BufferGeometry {
  const { axis, atM, towards, us, vs } = plane;
  const at = atM + OFF_M * towards;
  const [u0, u1, v0, v1] = [us[0] ?? 0, us.at(-1) ?? 0, vs[0] ?? 0, vs.at(-1) ?? 0];
  const corners = [
    place(axis, at, u0, v0),
    place(axis, at, u1, v0),
    place(axis, at, u1, v1),
    place(axis, at, u0, v1),
  ];
  const [halfU, halfV] = [0.5 / us.length, 0.5 / vs.length];
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    'position',
    new BufferAttribute(new Float32Array(corners.flatMap((corner) => toScene(corner))), 3),
  );
  geometry.setAttribute(
    'uv',
    new BufferAttribute(
      new Float32Array([halfV, halfU, halfV, 1 - halfU, 1 - halfV, 1 - halfU, 1 - halfV, halfU]),
      2,
    ),
  );
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  return geometry;
}
