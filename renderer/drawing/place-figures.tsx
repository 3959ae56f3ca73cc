/** The figures on the dimension lines of the chosen thing. */

import { RANKS } from '../../core/drawing/label-requests';
import type { PlacedLabel } from './Labels';
import { middleOf } from '../../core/drawing/label-places';
import type { PlaceDimension } from './place-dimensions';
import { TypedFigure } from './TypedFigure';

export function placeFigures(dimensions: readonly PlaceDimension[]): readonly PlacedLabel[] {
  return dimensions.map(({ axis, from, to, label, valueM, lowM, highM, set }) => ({
    key: `place-${axis}`,
    at: middleOf(from, to),
    rank: RANKS.grip,
    node: (
      <TypedFigure
        className="dimension-figure place-figure"
        label={label}
        valueM={valueM}
        lowM={lowM}
        highM={highM}
        onChange={set}
      />
    ),
  }));
}
