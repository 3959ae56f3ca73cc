/** Marks of a drawing as SVG in the window: in the style sheet's colours, with widths that no zoom changes. */

import { memo, useMemo, type ReactElement } from 'react';
import type { Mark, Weight } from '../../../core/drawing/marks';
import { svgOf, type SvgLook } from '../../../core/drawing/svg';

/** Units of the drawing in a metre: its figures are whole millimetres or nearly so. */
export const UNITS_PER_M = 1000;

/** Line widths on the screen, px. */
const WEIGHTS_PX: Readonly<Record<Weight, number>> = { cut: 2.25, seen: 1.25, light: 1 };

const LOOK: SvgLook = {
  unitsPerM: UNITS_PER_M,
  color: (tone) => `var(--${tone})`,
  widthOf: (weight) => WEIGHTS_PX[weight],
  dash: [8, 6],
  fixedWidths: true,
  withoutText: true,
};

/** The marks in their order. Their text comes from figures alone: names are page elements. */
export const FlatMarks = memo(function FlatMarks({
  marks,
}: {
  readonly marks: readonly Mark[];
}): ReactElement {
  const html = useMemo(() => ({ __html: svgOf(marks, LOOK) }), [marks]);
  return <g dangerouslySetInnerHTML={html} />;
});
