/**
 * What the near faces make of one loudspeaker at one seat: level against the free field over frequency,
 * and the first notch of each face named. A press chooses the face whose notch is nearest.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import { faceName } from '../../../core/room/faces';
import type { BoundaryCurve } from '../../../core/reflections/boundary';
import { NOTCH_BAND_HZ } from '../../../core/reflections/notch-remedy';
import type { NearNotch } from '../../../core/analysis/near-faces';
import { Source } from '../../kit/Note';
import { Chart } from '../../kit/chart/Chart';
import { Clipped } from '../../kit/chart/Clipped';
import { Line, pointsOf } from '../../kit/chart/Line';
import { nearestAt, useNearest } from '../../kit/chart/nearest';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { signed } from '../../kit/chart/signed';
import { inRows, spreadLabels, textWidthPx } from '../../kit/chart/spread-labels';
import { levelTick, Ticks } from '../../kit/chart/Ticks';
import { practiceSource } from '../../../core/room/practice/practice';

/** Base lines of the names over the plot, px. */
const ROWS_PX = [10, 24, 38];
const MARGINS = { left: 38, right: 14, top: 48, bottom: 22 };
/** Least space between two names in a row, px. */
const BETWEEN_PX = 7;
const RANGE_HZ: readonly [number, number] = [20, 500];
const TICKS_HZ = [20, 30, 50, 80, 125, 200, 300, 500];
/** Steps of the scale, its least reach and what a notch may run out below, dB. */
const STEP_DB = 6;
const LEAST_DB: readonly [number, number] = [-12, 6];
const LOWEST_DB = -24;

const METHOD =
  'Image sources: complex sum of the direct sound and the images in the nearest face along each axis and in their edges. Faces are plane and large, coefficients those of the octaves 125 to 500 Hz. Kuttruff, Room Acoustics; Allison, J. Audio Eng. Soc. 22 (1974) 314 (both from memory). What the room does with its modes is shown under Bass.';

export interface BoundaryChartProps {
  /** Whose sound, and where it is heard. */
  readonly of: string;
  readonly curve: BoundaryCurve;
  readonly notches: readonly NearNotch[];
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
}

export function BoundaryChart(props: BoundaryChartProps): ReactElement {
  const { of, curve, notches, face, onChoose } = props;
  const { box, ...area } = usePlotArea(MARGINS);
  const { width, left, right, top, bottom } = area;
  const x = scaleLog(RANGE_HZ, [left, right]);
  const pointer = useNearest(curve.frequenciesHz, x, area);
  const range = rangeDb(curve.levelsDb);
  const y = scaleLinear(range, [bottom, top]);
  const marked = notches.flatMap((notch) => {
    const { notchHz } = notch;
    return notchHz !== null && notchHz >= RANGE_HZ[0] && notchHz <= RANGE_HZ[1]
      ? [{ ...notch, notchHz, text: `${faceName(notch.hit.face)} ${Math.round(notchHz)} Hz` }]
      : [];
  });
  // The chosen one is named first, then those of the curve, so that they are the last to go without.
  const order = [...marked].sort(
    (a, b) => Number(b.hit.face === face) - Number(a.hit.face === face) || rank(a) - rank(b),
  );
  const places = spreadLabels(
    order.map(({ text, notchHz }) => ({
      width: textWidthPx(text),
      places: inRows(x(notchHz), ROWS_PX),
    })),
    { within: { left: 2, right: width - 2, top: -2, bottom: top }, gap: BETWEEN_PX },
  );
  const notchNear = (px: number): NearNotch | null => {
    const rising = [...marked].sort((a, b) => a.notchHz - b.notchHz);
    const hz = rising.map(({ notchHz }) => notchHz);
    const at = px >= left && px <= right ? nearestAt(hz, x, px) : null;
    return at === null ? null : (rising[at] ?? null);
  };
  return (
    <Chart
      className="boundary-chart"
      title="Near walls"
      caption={<Source of="Near walls, dB">{METHOD}</Source>}
      readout={pointer.at === null ? 'image sources (Kuttruff)' : readout(curve, pointer.at)}
      live
      box={box}
    >
      <Plot
        area={area}
        x={x}
        y={y}
        describe={`${of}, against the free field. First notches: ${marked.map(({ text }) => text).join(', ') || 'none'}. Press one to choose its face.`}
        onPoint={(at) => (at ? pointer.pointAt(at.x) : pointer.leave())}
        onChoose={(at) => {
          const chosen = notchNear(at.x);
          if (chosen) onChoose(chosen.hit.face);
        }}
      >
        <rect
          className="minded"
          x={x(NOTCH_BAND_HZ[0])}
          y={top}
          width={x(NOTCH_BAND_HZ[1]) - x(NOTCH_BAND_HZ[0])}
          height={bottom - top}
        >
          <title>{`${NOTCH_BAND_HZ[0]} to ${NOTCH_BAND_HZ[1]} Hz: where a notch matters most (${practiceSource('notch-band')})`}</title>
        </rect>
        <Ticks along="x" at={TICKS_HZ} text={(hz) => (hz === 500 ? '500 Hz' : hz)} lastAtEdge />
        <Ticks
          along="y"
          at={stepsOf(range, bottom - top < 130 ? 2 * STEP_DB : STEP_DB)}
          text={levelTick}
          axisAt={0}
        />
        {order.map(({ hit, notchHz, text, inCurve }, n) => {
          const place = places[n];
          const at = x(notchHz);
          return (
            <g
              key={hit.face}
              className={`notch-mark${inCurve ? '' : ' far'}${hit.face === face ? ' chosen' : ''}`}
            >
              <title>{inCurve ? text : `${text}: not part of the curve, marked alone`}</title>
              <line x1={at} x2={at} y1={place ? place.y + 3 : top} y2={bottom} />
              <path d={`M${at - 4.5},${top - 1} h9 l-4.5,8 z`} />
              {place ? (
                <text x={place.x} y={place.y} textAnchor="middle">
                  {text}
                </text>
              ) : null}
            </g>
          );
        })}
        <text className="plot-word" x={x(NOTCH_BAND_HZ[0]) + 4} y={bottom - 5}>
          minded most
        </text>
        <text className="plot-word" x={left + 4} y={y(0) + 12}>
          free field
        </text>
        <Clipped>
          <Line className="boundary-line" points={pointsOf(curve.frequenciesHz, curve.levelsDb)} />
        </Clipped>
      </Plot>
    </Chart>
  );
}

const rank = ({ inCurve, depthDb }: NearNotch): number => (inCurve ? 0 : 100) + depthDb;

function rangeDb(levels: readonly number[]): [number, number] {
  const low = Math.max(LOWEST_DB, Math.min(...levels, LEAST_DB[0]));
  const high = Math.max(...levels, LEAST_DB[1]);
  return [Math.floor(low / STEP_DB) * STEP_DB, Math.ceil(high / STEP_DB) * STEP_DB];
}

const stepsOf = ([low, high]: readonly [number, number], stepDb: number): readonly number[] => {
  const first = Math.ceil(low / stepDb) * stepDb;
  return Array.from(
    { length: Math.floor((high - first) / stepDb) + 1 },
    (_, n) => first + n * stepDb,
  );
};

const readout = ({ frequenciesHz, levelsDb }: BoundaryCurve, at: number): string =>
  `${(frequenciesHz[at] ?? 0).toFixed(0)} Hz  ${signed(levelsDb[at] ?? 0)} dB`;
