/** Face and level of the one reflection whose way is drawn. */

import { FLAT_VIEWS } from '../../../core/drawing/views';
import type { Axis } from '../../../core/room/faces';
import type { Point } from '../../../core/room/project';
import type { ReflectionMarks } from './early-reflections';
import type { View } from '../../state/session';
import { middleOf } from '../../../core/drawing/label-places';
import type { PlacedLabel } from '../../drawing/Labels';

/** From the mark to its label, m: clear of the mark in every view. */
const BESIDE_M = 0.3;
/** The room axis that runs up the page. */
const upIn = (view: View): Axis => (view === 'room' ? 2 : FLAT_VIEWS[view].up.axis);

export function reflectionLabels(
  reflections: ReflectionMarks | null,
  view: View,
): readonly PlacedLabel[] {
  const shown = reflections?.shown;
  if (!shown) return [];
  return [
    {
      key: 'reflection',
      at: besideMark(shown.way, view),
      yields: true,
      mayShift: true,
      node: <span className="name-plate reflection-plate">{shown.text}</span>,
    },
  ];
}

/** Over or under the mark, on the side that its way does not come from. */
function besideMark([from, point, to]: readonly [Point, Point, Point], view: View): Point {
  const up = upIn(view);
  const at: [number, number, number] = [...point];
  at[up] += point[up] < middleOf(from, to)[up] - 1e-6 ? -BESIDE_M : BESIDE_M;
  return at;
}
