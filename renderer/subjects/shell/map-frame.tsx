/** What stands on the map of proportions beside the room: axes, key, rules, published ratios, the bay. */

import type { ReactElement } from 'react';
import { MAP_RANGE } from '../../../core/proportions/map';
import { AREA_OUTLINE, GOOD_RATIOS } from '../../../core/proportions/proportion-rules';
import type { Bay } from '../../../core/room/project';
import { usePlot } from '../../kit/chart/plot-area';
import { Ticks } from '../../kit/chart/Ticks';
import { FULL_SHADE, FULL_SHADE_HZ } from './MapShade';

/** Space around the shaded field, px. */
export const MAP_MARGINS = { left: 40, right: 12, top: 22, bottom: 34 };

interface MapAxesProps {
  /** Ratios with a figure. */
  readonly across: readonly number[];
  readonly up: readonly number[];
}

export function MapAxes({ across, up }: MapAxesProps): ReactElement {
  const { width, height, left, right } = usePlot();
  const text = (ratio: number): string => ratio.toFixed(1);
  return (
    <>
      <Ticks along="x" at={across} text={text} lines={false} />
      <Ticks along="y" at={up} text={text} lines={false} />
      <text className="tick-label" x={right} y={height - 4} textAnchor="end">
        width / height
      </text>
      <text className="tick-label" x={4} y={14}>
        length / height, at this ceiling
      </text>
      <ShadeKey left={left} top={height - 13} named={width > 270} />
    </>
  );
}

interface ShadeKeyProps {
  readonly left: number;
  readonly top: number;
  /** False where there is no room for the figures. */
  readonly named: boolean;
}

/** Shade from an even row of modes to an uneven one. */
function ShadeKey({ left, top, named }: ShadeKeyProps): ReactElement {
  return (
    <g className="map-key">
      {[0, 0.25, 0.5, 0.75, 1].map((share, i) => (
        <rect
          key={share}
          x={left + i * 9}
          y={top}
          width={9}
          height={9}
          fillOpacity={FULL_SHADE * share}
        />
      ))}
      <title>{`Unevenness from 0 to ${FULL_SHADE_HZ} Hz and more`}</title>
      {named ? (
        <text className="tick-label" x={left + 50} y={top + 9}>
          0 to {FULL_SHADE_HZ} Hz
        </text>
      ) : null}
    </g>
  );
}

/** Rules and ratios that look at proportions alone. */
export function PublishedMarks(): ReactElement {
  const { x, y } = usePlot();
  const corners = (points: readonly (readonly [number, number])[]): string =>
    points.map(([w, l]) => `${x(w)},${y(l)}`).join(' ');
  return (
    <>
      <polygon className="map-area" points={corners(AREA_OUTLINE)}>
        <title>Proportion area after Bolt 1946, a rough outline from memory</title>
      </polygon>
      <polygon className="map-inequality" points={corners(inequalityCorners())}>
        <title>Proportion inequality of BS.1116 and EBU Tech 3276</title>
      </polygon>
      {GOOD_RATIOS.map((ratio) => (
        <g key={ratio.name} className="map-ratio">
          <path d={`M${x(ratio.width) - 4},${y(ratio.length)} h8 m-4,-4 v8`} aria-hidden="true" />
          <title>{`${ratio.name}: 1 : ${ratio.width.toFixed(2)} : ${ratio.length.toFixed(2)}, ${ratio.source}`}</title>
        </g>
      ))}
    </>
  );
}

/** Corners of the region 1.1 W/H <= L/H <= 4.5 W/H - 4, L/H < 3, on the map. */
function inequalityCorners(): readonly (readonly [number, number])[] {
  const meet = 4 / 3.4; // 1.1 w = 4.5 w - 4
  return [
    [meet, 1.1 * meet],
    [7 / 4.5, 3],
    [MAP_RANGE.width[1], 3],
    [MAP_RANGE.width[1], 1.1 * MAP_RANGE.width[1]],
  ];
}

interface BayFrameProps {
  readonly bay: Bay;
  readonly heightM: number;
}

/** What the bay allows at the present height. */
export function BayFrame({ bay, heightM }: BayFrameProps): ReactElement {
  const { x, y } = usePlot();
  const left = x(bay.least.width / heightM);
  const top = y(bay.largest.length / heightM);
  return (
    <rect
      className="map-bay"
      x={left - 1}
      y={top - 1}
      width={x(bay.largest.width / heightM) - left + 2}
      height={y(bay.least.length / heightM) - top + 2}
    >
      <title>What the bay allows at this ceiling height</title>
    </rect>
  );
}
