/** Where a subwoofer is to stand, as a tape measure reads it to the middle of its box. */

import { standingOn } from '../../../core/scene/stand';
import type { Obstacle } from '../../../core/bass/obstacles';
import { formatLength, type LengthUnits } from '../../../core/quantity/length';
import type { Point, Project } from '../../../core/room/project';
import { boxOfSize } from '../../../core/scene/subwoofer-box';

/** What touches within this stands against it, m. */
const TOUCH_M = 0.01;

/** `front wall, 1.20 m from left`, or `beside "closet-1", 1.20 m from left, 3.30 m from front`. */
export function placeText(
  at: Point,
  { room }: Pick<Project, 'room'>,
  boxM: Point,
  units: LengthUnits,
): string {
  const { width, length } = room.size;
  const [x, y] = at;
  const [fromLeft, fromFront] = [
    `${formatLength(x, units)} from left`,
    `${formatLength(y, units)} from front`,
  ];
  const below = standingOn({ room }, [x, y]);
  const onTop = below ? `, on the ${below.kind}` : '';
  const { min: low, max: high } = boxOfSize({ room }, at, boxM);
  const off = [low[1], length - high[1], low[0], width - high[0]];
  const wall = off.indexOf(Math.min(...off));
  if ((off[wall] ?? 0) <= TOUCH_M) {
    const name = ['front', 'back', 'left', 'right'][wall] ?? '';
    return `${name} wall, ${wall < 2 ? fromLeft : fromFront}${onTop}`;
  }
  const beside = room.solids.find(
    ({ min, max }) =>
      high[0] > min[0] - TOUCH_M &&
      low[0] < max[0] + TOUCH_M &&
      high[1] > min[1] - TOUCH_M &&
      low[1] < max[1] + TOUCH_M &&
      at[2] > min[2] &&
      at[2] < max[2],
  );
  return `${beside ? `beside "${beside.id}", ` : ''}${fromLeft}, ${fromFront}${onTop}`;
}

const WORDS: Readonly<Record<Obstacle['kind'], string>> = {
  fitting: 'fitting',
  outside: 'no room',
  door: 'door',
  window: 'window',
  picture: 'picture',
  speaker: 'loudspeaker',
  planned: 'loudspeaker to come',
  subwoofer: 'subwoofer',
  seat: 'seat',
  walkway: 'way past a row',
};

/** `3 loudspeaker, 12 way past a row`: what is in the way, most often first. */
export function inTheWayText(whys: readonly Obstacle[]): string {
  const counts = new Map<string, number>();
  for (const { kind } of whys) counts.set(WORDS[kind], (counts.get(WORDS[kind]) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([word, count]) => `${word} ${count}`)
    .join(', ');
}
