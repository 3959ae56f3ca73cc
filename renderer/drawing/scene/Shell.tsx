/** The six faces seen from within; a wall between the eye and the room fades away. */

import { useFrame } from '@react-three/fiber';
import { useMemo, useRef, type ReactElement } from 'react';
import { type Mesh, type MeshBasicMaterial, Vector3 } from 'three';
import { farCorner } from '../../../core/room/point';
import { FACES, type Face, type Point, type ShellSize } from '../../../core/room/project';
import { FACE_NORMALS, faceAxes } from '../../../core/room/faces';
import { sceneVector, toScene } from '../axes';
import type { Palette } from '../palette';
import { boxEdges } from '../../../core/drawing/space-lines';
import { Strokes } from './Strokes';

export interface ShellProps {
  readonly size: ShellSize;
  readonly palette: Palette;
  /** Spacing of the lines on the floor, m. */
  readonly gridM: number;
}

const TONES: Readonly<Record<Face, keyof Palette>> = {
  floor: 'floor',
  ceiling: 'wall',
  front: 'wall',
  back: 'wall',
  left: 'wall-side',
  right: 'wall-side',
};

export function Shell({ size, palette, gridM }: ShellProps): ReactElement {
  const far = farCorner(size);
  const edges = useMemo(() => boxEdges([0, 0, 0], farCorner(size)), [size]);
  const grid = useMemo(() => floorGrid(size, gridM), [size, gridM]);
  return (
    <group>
      {FACES.map((face) => (
        <Wall key={face} face={face} far={far} color={palette[TONES[face]]} />
      ))}
      <Strokes pairs={grid} color={palette.hairline} opacity={0.55} />
      <Strokes pairs={edges} color={palette.ink} />
    </group>
  );
}

function Wall({
  face,
  far,
  color,
}: {
  readonly face: Face;
  readonly far: Point;
  readonly color: string;
}): ReactElement {
  const mesh = useRef<Mesh>(null);
  const { axis, side } = FACE_NORMALS[face];
  const [u, v] = faceAxes(face);
  const centre: [number, number, number] = [far[0] / 2, far[1] / 2, far[2] / 2];
  centre[axis] = side === 1 ? far[axis] : 0;
  const thin: [number, number, number] = [0.001, 0.001, 0.001];
  thin[u] = far[u];
  thin[v] = far[v];
  const inward: [number, number, number] = [0, 0, 0];
  inward[axis] = -side;

  useFrame(({ camera }) => {
    const wall = mesh.current;
    if (!wall) return;
    const toEye = new Vector3().subVectors(camera.position, sceneVector(centre)).normalize();
    const facing = toEye.dot(sceneVector(inward));
    const opacity = Math.min(1, Math.max(0, (facing + 0.01) / 0.14));
    const material = wall.material as MeshBasicMaterial;
    material.opacity = opacity;
    wall.visible = opacity > 0.02;
  });

  return (
    <mesh ref={mesh} position={toScene(centre)} scale={toScene(thin)} renderOrder={-1}>
      <boxGeometry />
      <meshBasicMaterial
        color={color}
        transparent
        polygonOffset
        polygonOffsetFactor={2}
        polygonOffsetUnits={2}
      />
    </mesh>
  );
}

function floorGrid(size: ShellSize, stepM: number): readonly (readonly [Point, Point])[] {
  const pairs: (readonly [Point, Point])[] = [];
  for (let x = stepM; x < size.width; x += stepM)
    pairs.push([
      [x, 0, 0.002],
      [x, size.length, 0.002],
    ]);
  for (let y = stepM; y < size.length; y += stepM)
    pairs.push([
      [0, y, 0.002],
      [size.width, y, 0.002],
    ]);
  return pairs;
}
