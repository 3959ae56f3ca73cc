/**
 * Where on the faces the chosen loudspeaker may go: its window from the ears, cast onto every face that it
 * meets, with the lines of sight to the window's two sides.
 */

import { useEffect, useMemo, type ReactElement } from 'react';
import { BufferAttribute, BufferGeometry, ShapeUtils, Vector2 } from 'three';
import type { Point } from '../../../core/room/project';
import { FACE_NORMALS, faceAxes, patchSide, solidOfFace } from '../../../core/room/faces';
import type { Strip } from '../../../core/speakers/strips';
import { toScene } from '../../drawing/axes';
import type { Palette } from '../../drawing/palette';
import { Strokes } from '../../drawing/scene/Strokes';
import { stripOutlines, stripSides } from './strip-lines';

/** Lifted off the face by this much, m. */
const OFF_M = 0.008;

export interface StripsProps {
  readonly strips: readonly Strip[];
  readonly ears: Point;
  readonly palette: Palette;
}

export function Strips({ strips, ears, palette }: StripsProps): ReactElement {
  const lifted = useMemo(
    () => strips.map((strip) => ({ ...strip, polygon: strip.polygon.map(lift(strip.face)) })),
    [strips],
  );
  const geometry = useMemo(() => filled(lifted), [lifted]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const outline = useMemo(() => stripOutlines(lifted), [lifted]);
  const sides = useMemo(() => stripSides(strips, ears), [strips, ears]);
  return (
    <group>
      <mesh geometry={geometry} renderOrder={2}>
        <meshBasicMaterial
          color={palette.accent}
          transparent
          opacity={0.3}
          depthWrite={false}
          side={2}
        />
      </mesh>
      <Strokes pairs={outline} color={palette.accent} onTop />
      <Strokes pairs={sides} color={palette.accent} dashed opacity={0.8} />
    </group>
  );
}

/** Off the face, into the room. */
const lift =
  (face: string) =>
  (point: Point): Point => {
    const { axis, side } = FACE_NORMALS[patchSide(face)];
    const into = solidOfFace(face) === null ? -side : side;
    const moved: [number, number, number] = [...point];
    moved[axis] += into * OFF_M;
    return moved;
  };

/** All polygons as triangles. */
function filled(strips: readonly Strip[]): BufferGeometry {
  const places: number[] = [];
  for (const { face, polygon } of strips) {
    const [u, v] = faceAxes(patchSide(face));
    const flat = polygon.map((point) => new Vector2(point[u], point[v]));
    for (const triangle of ShapeUtils.triangulateShape(flat, [])) {
      for (const corner of triangle) places.push(...toScene(polygon[corner] ?? [0, 0, 0]));
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(places), 3));
  return geometry;
}
