/** Painted pressure under a plan or section: the faces that turn to the eye, or ear height in the plan. */

import { useLayoutEffect, useMemo, useRef, type ReactElement } from 'react';
import type { Mark } from '../../../core/drawing/marks';
import { linesOnPaper, rectOnPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import type { PaintedPlane, Painting } from '../../pressure/painting';
import type { PaintColors } from '../paint-colors';
import { boxOf, pictureOf, place, planesSeen } from './paint-picture';
import type { Palette } from '../palette';
import { FlatMarks, UNITS_PER_M } from './FlatMarks';

export interface FlatPaintProps {
  readonly view: FlatView;
  readonly painting: Painting;
  readonly palette: Palette;
}

export function FlatPaint({ view, painting, palette }: FlatPaintProps): ReactElement {
  const { kind } = painting;
  const colors = useMemo(
    (): PaintColors => ({ loud: palette.accent, other: palette.ink, quiet: palette.raised }),
    [palette],
  );
  const planes = useMemo(() => planesSeen(view, painting.planes), [view, painting.planes]);
  const lines = useMemo(
    () => planes.flatMap((painted) => linesOf(view, painted, kind)),
    [view, planes, kind],
  );
  return (
    <>
      {planes.map((painted) => (
        <PlaneImage
          key={painted.plane.key}
          view={view}
          painted={painted}
          kind={kind}
          colors={colors}
        />
      ))}
      <FlatMarks marks={lines} />
    </>
  );
}

function linesOf(
  view: FlatView,
  { plane, lines }: PaintedPlane,
  kind: Painting['kind'],
): readonly Mark[] {
  const pairs = lines.map(
    ([u0, v0, u1, v1]) =>
      [place(plane.axis, plane.atM, u0, v0), place(plane.axis, plane.atM, u1, v1)] as const,
  );
  const opacity = kind === 'mode' ? {} : { opacity: 0.45 };
  return linesOnPaper(view, 'evidence', pairs, { tone: 'ink', weight: 'light', ...opacity });
}

/** One plane; samples lie in the middle of their pixels, so half a pixel is cut off all around. */
function PlaneImage(props: {
  readonly view: FlatView;
  readonly painted: PaintedPlane;
  readonly kind: Painting['kind'];
  readonly colors: PaintColors;
}): ReactElement {
  const { view, painted, kind, colors } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useMemo(
    () => pictureOf(view, painted, kind, colors),
    [view, painted, kind, colors],
  );
  const { width, height, bytes } = picture;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    context?.putImageData(new ImageData(bytes, width, height), 0, 0);
  }, [bytes, width, height]);
  const { min, max } = rectOnPaper(view, boxOf(painted.plane));
  const [wide, high] = [(max[0] - min[0]) * UNITS_PER_M, (max[1] - min[1]) * UNITS_PER_M];
  return (
    <svg
      x={min[0] * UNITS_PER_M}
      y={-max[1] * UNITS_PER_M}
      width={wide}
      height={high}
      viewBox={`0.5 0.5 ${width - 1} ${height - 1}`}
      preserveAspectRatio="none"
    >
      <foreignObject width={width} height={height}>
        <canvas ref={canvas} width={width} height={height} />
      </foreignObject>
    </svg>
  );
}
