/** Hairlines from pairs of places; dashed ones where something is overhead or out of range. */

import { useEffect, useMemo, type ReactElement } from 'react';
import {
  BufferGeometry,
  Float32BufferAttribute,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
} from 'three';
import type { Point } from '../../../core/room/project';
import { toScene } from '../axes';

export interface StrokesProps {
  readonly pairs: readonly (readonly [Point, Point])[];
  readonly color: string;
  readonly dashed?: boolean;
  readonly opacity?: number;
  readonly onTop?: boolean;
}

export function Strokes(props: StrokesProps): ReactElement {
  const { pairs, color, dashed = false, opacity = 1, onTop = false } = props;
  const lines = useMemo(() => {
    const geometry = new BufferGeometry();
    const positions = pairs.flatMap(([from, to]) => [...toScene(from), ...toScene(to)]);
    geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
    const common = { color, transparent: opacity < 1 || onTop, opacity, depthTest: !onTop };
    const material = dashed
      ? new LineDashedMaterial({ ...common, dashSize: 0.09, gapSize: 0.07 })
      : new LineBasicMaterial(common);
    const segments = new LineSegments(geometry, material);
    if (dashed) segments.computeLineDistances();
    segments.renderOrder = onTop ? 10 : 1;
    return segments;
  }, [pairs, color, dashed, opacity, onTop]);
  useEffect(
    () => () => {
      lines.geometry.dispose();
      lines.material.dispose();
    },
    [lines],
  );
  return <primitive object={lines} />;
}

/** The twelve edges of a box. */
export function boxEdges(min: Point, max: Point): readonly (readonly [Point, Point])[] {
  const corner = (i: number, j: number, k: number): Point => [
    i ? max[0] : min[0],
    j ? max[1] : min[1],
    k ? max[2] : min[2],
  ];
  const pairs: (readonly [Point, Point])[] = [];
  for (const a of [0, 1]) {
    for (const b of [0, 1]) {
      pairs.push([corner(0, a, b), corner(1, a, b)]);
      pairs.push([corner(a, 0, b), corner(a, 1, b)]);
      pairs.push([corner(a, b, 0), corner(a, b, 1)]);
    }
  }
  return pairs;
}
