/**
 * What the near faces make of one loudspeaker at one seat: level against the free field over frequency,
 * and the first notch of each face named. A press chooses the face whose notch is nearest.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import { useState, type MouseEvent, type ReactElement } from 'react';
import { faceName } from '../../../core/room/faces';
import type { BoundaryCurve } from '../../../core/reflections/boundary';
import { MINDED_HZ } from '../../../core/reflections/notch-remedy';
import type { WallNotch } from './near-walls';
import { labelRows } from '../../kit/chart/label-rows';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { signed } from '../../kit/chart/signed';

const LEFT = 38;
const RIGHT = 14;
const ROW_PX = 14;
const ROWS = 3;
const TOP = 6 + ROWS * ROW_PX;
const BOTTOM = 22;
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
  readonly notches: readonly WallNotch[];
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
}

export function BoundaryChart(props: BoundaryChartProps): ReactElement {
  const { of, curve, notches, face, onChoose } = props;
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const [pointedHz, setPointedHz] = useState<number | null>(null);
  const [left, right] = [LEFT, Math.max(LEFT + 10, width - RIGHT)];
  const [top, bottom] = [TOP, Math.max(TOP + 10, height - BOTTOM)];
  const x = scaleLog(RANGE_HZ, [left, right]);
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
  const places = labelRows(
    order.map(({ text, notchHz }) => ({ text, x: x(notchHz) })),
    ROWS,
    [2, width - 2],
  );
  const frequencyAt = (event: MouseEvent<SVGSVGElement>): number | null => {
    const px = event.clientX - event.currentTarget.getBoundingClientRect().left;
    return px >= left && px <= right ? x.invert(px) : null;
  };
  return (
    <figure className="chart boundary-chart" aria-label="Near walls">
      <figcaption title={METHOD}>
        <span>Near walls, dB</span>
        <span className="readout" aria-live="polite">
          {pointedHz === null ? 'image sources (Kuttruff)' : readout(curve, pointedHz)}
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={`${of}, against the free field. First notches: ${marked.map(({ text }) => text).join(', ') || 'none'}. Press one to choose its face.`}
            onPointerMove={(event) => setPointedHz(frequencyAt(event))}
            onPointerLeave={() => setPointedHz(null)}
            onClick={(event) => {
              const hz = frequencyAt(event);
              const chosen = hz === null ? null : nearestNotch(marked, hz);
              if (chosen) onChoose(chosen.hit.face);
            }}
          >
            <defs>
              <clipPath id="boundary-plot">
                <rect x={left} y={top} width={right - left} height={bottom - top} />
              </clipPath>
            </defs>
            <rect
              className="minded"
              x={x(MINDED_HZ[0])}
              y={top}
              width={x(MINDED_HZ[1]) - x(MINDED_HZ[0])}
              height={bottom - top}
            >
              <title>{`${MINDED_HZ[0]} to ${MINDED_HZ[1]} Hz: where a notch is minded most (our own convention)`}</title>
            </rect>
            {TICKS_HZ.map((hz) => (
              <g key={hz}>
                <line className="grid" x1={x(hz)} x2={x(hz)} y1={top} y2={bottom} />
                <text
                  className="tick-label"
                  x={hz === 500 ? right + RIGHT - 2 : x(hz)}
                  y={height - 7}
                  textAnchor={hz === 500 ? 'end' : 'middle'}
                >
                  {hz === 500 ? '500 Hz' : hz}
                </text>
              </g>
            ))}
            {stepsOf(range, bottom - top < 130 ? 2 * STEP_DB : STEP_DB).map((db) => (
              <g key={db}>
                <line
                  className={db === 0 ? 'axis' : 'grid'}
                  x1={left}
                  x2={right}
                  y1={y(db)}
                  y2={y(db)}
                />
                <text className="tick-label" x={left - 6} y={y(db) + 4} textAnchor="end">
                  {db > 0 ? `+${db}` : db < 0 ? `−${-db}` : 0}
                </text>
              </g>
            ))}
            {order.map(({ hit, notchHz, text, inCurve }, n) => {
              const { x: textX, row } = places[n] ?? { x: 0, row: null };
              const at = x(notchHz);
              const labelY = 10 + (row ?? ROWS - 1) * ROW_PX;
              return (
                <g
                  key={hit.face}
                  className={`notch-mark${inCurve ? '' : ' far'}${hit.face === face ? ' chosen' : ''}`}
                >
                  <title>{inCurve ? text : `${text}: not part of the curve, marked alone`}</title>
                  <line x1={at} x2={at} y1={row === null ? top : labelY + 3} y2={bottom} />
                  <path d={`M${at - 4.5},${top - 1} h9 l-4.5,8 z`} />
                  {row === null ? null : (
                    <text x={textX} y={labelY} textAnchor="middle">
                      {text}
                    </text>
                  )}
                </g>
              );
            })}
            <text className="plot-word" x={x(MINDED_HZ[0]) + 4} y={bottom - 5}>
              minded most
            </text>
            <text className="plot-word" x={left + 4} y={y(0) + 12}>
              free field
            </text>
            <path
              className="boundary-line"
              clipPath="url(#boundary-plot)"
              d={curve.levelsDb
                .map(
                  (level, f) =>
                    `${f === 0 ? 'M' : 'L'}${x(curve.frequenciesHz[f] ?? 20).toFixed(1)},${y(level).toFixed(1)}`,
                )
                .join('')}
            />
          </svg>
        ) : null}
      </div>
    </figure>
  );
}

const rank = ({ inCurve, depthDb }: WallNotch): number => (inCurve ? 0 : 100) + depthDb;

function nearestNotch<T extends { readonly notchHz: number }>(
  notches: readonly T[],
  hz: number,
): T | null {
  const away = (notch: T): number => Math.abs(Math.log(notch.notchHz / hz));
  return [...notches].sort((a, b) => away(a) - away(b))[0] ?? null;
}

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

function readout({ frequenciesHz, levelsDb }: BoundaryCurve, hz: number): string {
  const away = (f: number): number => Math.abs(Math.log((frequenciesHz[f] ?? 1) / hz));
  const at = frequenciesHz.reduce((best, _, f) => (away(f) < away(best) ? f : best), 0);
  const level = levelsDb[at] ?? 0;
  return `${(frequenciesHz[at] ?? 0).toFixed(0)} Hz  ${signed(level)} dB`;
}
