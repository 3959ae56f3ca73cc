/** Hairlines from pairs of places; dashed ones where something is overhead or out of range. */

import { useEffect, useLayoutEffect, useMemo, type ReactElement } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
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
  // Material and geometry outlive the places: a new material would have its shader built anew.
  const material = useMemo(() => {
    const look = { color, transparent: opacity < 1 || onTop, opacity, depthTest: !onTop };
    return dashed
      ? new LineDashedMaterial({ ...look, dashSize: 0.09, gapSize: 0.07 })
      : new LineBasicMaterial(look);
  }, [color, dashed, opacity, onTop]);
  const lines = useMemo(() => {
    const segments = new LineSegments(new BufferGeometry(), material);
    segments.frustumCulled = false;
    segments.renderOrder = onTop ? 10 : 1;
    return segments;
  }, [material, onTop]);

  useLayoutEffect(() => {
    const places = new Float32Array(
      pairs.flatMap(([from, to]) => [...toScene(from), ...toScene(to)]),
    );
    const known = lines.geometry.getAttribute('position') as BufferAttribute | undefined;
    if (known && known.array.length === places.length) {
      known.array.set(places);
      known.needsUpdate = true;
    } else {
      lines.geometry.dispose();
      lines.geometry = new BufferGeometry();
      lines.geometry.setAttribute('position', new BufferAttribute(places, 3));
    }
    if (dashed) lines.computeLineDistances();
  }, [lines, pairs, dashed]);
  useEffect(() => () => material.dispose(), [material]);
  useEffect(() => () => void lines.geometry.dispose(), [lines]);
  return <primitive object={lines} />;
}
