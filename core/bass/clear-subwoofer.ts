/** The nearest place where the box of a subwoofer is in nothing's way. */

import { roundLength } from '../quantity/length';
import type { Point, Project } from '../room/project';
import { clearPlace } from '../scene/clear-place';
import { standingHeightM } from '../scene/stand';
import { subwooferBox } from '../scene/subwoofer-box';
import { inTheWay } from './obstacles';
import { subwooferPlaces } from './places';
import { practice } from '../room/practice/practice';

/** How far and how finely it looks around the present place, m. */
const REACH_M = 1;
const STEP_M = 0.05;
/** Beyond that it takes a place along the walls, m apart. */
const ALONG_M = 0.2;
/** To leave a wall weighs as much as this way along it, for each metre. */
const OFF_WALL = practice('subwoofer-off-wall');

/**
 * Where subwoofer `id` finds room nearest to where it stands, rather along its wall than away from it, on
 * the floor or what stands on it; where others stand is taken. Null where there is none.
 */
export function clearSubwoofer(project: Project, id: string): Point | null {
  const { subwoofers } = project.speakers;
  const known = subwoofers.find((sub) => sub.id === id);
  if (!known) return null;
  const here = known.position;
  const boxM = subwooferBox(project, known).sizeM;
  const others = subwoofers.filter((sub) => sub.id !== id);
  const blocked = inTheWay(project, boxM, others);
  const nearest = (places: readonly Point[]): Point | null => {
    const candidates = places.map((place) => ({ place, wayM: wayM(project, here, place, boxM) }));
    return clearPlace(candidates, (place) => blocked(place) === null);
  };
  return (
    nearest(around(project, here, boxM)) ??
    nearest(subwooferPlaces(project, { stepM: ALONG_M, boxM }).allowed)
  );
}

/** Places about `here`, and those where the box touches the walls; as far as the box fits into the shell. */
function around(project: Project, here: Point, [wide, high, deep]: Point): readonly Point[] {
  const { width, length, height } = project.room.size;
  const half = Math.min(wide, deep) / 2;
  const halfHigh = high / 2;
  const along = (at: number, most: number): readonly number[] => {
    const inside = Math.min(Math.max(at, half), Math.max(half, most - half));
    const steps = Math.round(REACH_M / STEP_M);
    const sides = [wide / 2, deep / 2];
    const values = [inside, ...sides, ...sides.map((side) => most - side)];
    for (let n = -steps; n <= steps; n++) values.push(at + n * STEP_M);
    return values.filter(
      (value) =>
        value >= half - 1e-9 && value <= most - half + 1e-9 && Math.abs(value - inside) <= REACH_M,
    );
  };
  const over = here[2] - standingHeightM(project, [here[0], here[1]]);
  const ys = along(here[1], length);
  return along(here[0], width).flatMap((x) =>
    ys.map((y): Point => {
      const floorM = standingHeightM(project, [x, y]);
      const z =
        floorM + Math.min(Math.max(over, halfHigh), Math.max(halfHigh, height - floorM - halfHigh));
      return [roundLength(x), roundLength(y), roundLength(z)];
    }),
  );
}

/** The way from one place to the other, and what it leaves the walls by, m. */
function wayM({ room }: Project, from: Point, to: Point, [wide, , deep]: Point): number {
  const far = [room.size.width, room.size.length] as const;
  const leaves = ([0, 1] as const).reduce<number>((sum, axis) => {
    const offM = (at: number): number => Math.min(at, far[axis] - at);
    const atWall = offM(from[axis]) <= Math.max(wide, deep);
    return sum + (atWall ? Math.max(0, offM(to[axis]) - offM(from[axis])) : 0);
  }, 0);
  return Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) + OFF_WALL * leaves;
}
