/** Candidates for subwoofers on the floor: a square where one may stand, a cross where none may. */

import { useMemo, type ReactElement } from 'react';
import type { Places } from '../../../core/bass/places';
import type { Point } from '../../../core/room/project';
import type { Palette } from '../palette';
import { Strokes } from './Strokes';

const HALF_M = 0.07;
const ABOVE_M = 0.01;

export function SubwooferPlaces({
  places,
  palette,
}: {
  readonly places: Places;
  readonly palette: Palette;
}): ReactElement {
  const squares = useMemo(() => places.allowed.flatMap(square), [places]);
  const crosses = useMemo(
    () => places.forbidden.flatMap(({ position }) => cross(position)),
    [places],
  );
  return (
    <group>
      <Strokes pairs={squares} color={palette.ink} onTop />
      <Strokes pairs={crosses} color={palette.accent} onTop />
    </group>
  );
}

type Pairs = readonly (readonly [Point, Point])[];
const corner = ([x, y]: Point, i: number, j: number): Point => [
  x + i * HALF_M,
  y + j * HALF_M,
  ABOVE_M,
];

function square(at: Point): Pairs {
  const corners = [corner(at, -1, -1), corner(at, 1, -1), corner(at, 1, 1), corner(at, -1, 1)];
  return corners.map((from, n): readonly [Point, Point] => [from, corners[(n + 1) % 4] ?? from]);
}

const cross = (at: Point): Pairs => [
  [corner(at, -1, -1), corner(at, 1, 1)],
  [corner(at, -1, 1), corner(at, 1, -1)],
];
