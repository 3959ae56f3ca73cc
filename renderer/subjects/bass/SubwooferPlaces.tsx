/** Candidates for subwoofers, on what they stand on: a square where one may stand, a cross where none may. */

import { useMemo, type ReactElement } from 'react';
import type { Places } from '../../../core/bass/places';
import type { Point } from '../../../core/room/project';
import type { Palette } from '../../drawing/palette';
import { Strokes } from '../../drawing/scene/Strokes';
import { CANDIDATE_M, foot } from './use-candidates';

const ABOVE_M = 0.01;

export function SubwooferPlaces({
  places,
  boxM,
  palette,
}: {
  readonly places: Places;
  /** Width, height and depth of the box, m: its places are its middle. */
  readonly boxM: Point;
  readonly palette: Palette;
}): ReactElement {
  const squares = useMemo(
    () => places.allowed.map((at) => foot(at, boxM)).flatMap(square),
    [places, boxM],
  );
  const crosses = useMemo(
    () => places.forbidden.flatMap(({ position }) => cross(foot(position, boxM))),
    [places, boxM],
  );
  return (
    <group>
      <Strokes pairs={squares} color={palette.ink} onTop />
      <Strokes pairs={crosses} color={palette.accent} onTop />
    </group>
  );
}

type Pairs = readonly (readonly [Point, Point])[];
const corner = ([x, y, z]: Point, i: number, j: number): Point => [
  x + i * CANDIDATE_M,
  y + j * CANDIDATE_M,
  z + ABOVE_M,
];

function square(at: Point): Pairs {
  const corners = [corner(at, -1, -1), corner(at, 1, -1), corner(at, 1, 1), corner(at, -1, 1)];
  return corners.map((from, n): readonly [Point, Point] => [from, corners[(n + 1) % 4] ?? from]);
}

const cross = (at: Point): Pairs => [
  [corner(at, -1, -1), corner(at, 1, 1)],
  [corner(at, -1, 1), corner(at, 1, -1)],
];
