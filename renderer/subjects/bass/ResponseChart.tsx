/**
 * Level at every seat over frequency: a line a seat, their average, and the band that they spread over.
 * A press chooses the frequency, which the drawing then paints and the table beside it takes apart.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import { useState, type MouseEvent, type ReactElement } from 'react';
import { assumedText } from '../../../core/analysis/room-field';
import { RESPONSE_RANGE_HZ, type SeatResponses } from '../../../core/analysis/seat-response';
import { ChartWalker } from '../../kit/chart/ChartWalker';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { seatKey } from '../../state/seat-names';
import { bandText } from './band-text';
import { signed } from '../../kit/chart/signed';

const LEFT = 38;
const RIGHT = 20;
const TOP = 20;
const BOTTOM = 22;
/** Least height of the scale, and steps that it is rounded to, dB. */
const LEAST_DB = 40;
const ROUND_DB = 5;
/** Deep notches may run out of the picture below this under the top, dB. */
const MOST_DB = 60;
/** The key of the lines needs a chart of this width, px. */
const KEY_PX = 300;
const TICKS_HZ = [20, 30, 40, 50, 60, 80, 100, 120, 150, 200];

export interface ResponseChartProps {
  readonly responses: SeatResponses;
  /** Seat that is looked at, `row|seat`. */
  readonly seat: string;
  readonly frequencyHz: number | null;
  readonly onChoose: (frequencyHz: number) => void;
}

export function ResponseChart(props: ResponseChartProps): ReactElement {
  const { responses, seat, frequencyHz, onChoose } = props;
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const [pointed, setPointed] = useState<number | null>(null);
  const { frequenciesHz, seats, spread } = responses;
  const x = scaleLog(RESPONSE_RANGE_HZ, [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const [low, high] = rangeDb(responses);
  const y = scaleLinear([low, high], [Math.max(TOP + 10, height - BOTTOM), TOP]);
  const line = (levels: Float64Array): string =>
    Array.from(
      levels,
      (level, f) =>
        `${f === 0 ? 'M' : 'L'}${x(frequenciesHz[f] ?? 20).toFixed(1)},${y(level).toFixed(1)}`,
    ).join('');
  const pointedAt = (event: MouseEvent<SVGSVGElement>): number | null => {
    const px = event.clientX - event.currentTarget.getBoundingClientRect().left;
    const inside = px >= LEFT && px <= width - RIGHT;
    return inside ? nearest(frequenciesHz, x.invert(px)) : null;
  };
  const at = pointed ?? (frequencyHz === null ? null : nearest(frequenciesHz, frequencyHz));

  return (
    <figure className="chart response-chart" aria-label="Response at the seats">
      <figcaption>
        <span>Response at the seats, dB</span>
        <span className="readout" aria-live="polite">
          {at === null ? describe(responses) : readout(responses, seat, at)}
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={`${describe(responses)}. Press to choose a frequency.`}
            onPointerMove={(event) => setPointed(pointedAt(event))}
            onPointerLeave={() => setPointed(null)}
            onClick={(event) => {
              const found = pointedAt(event);
              if (found !== null) onChoose(frequenciesHz[found] ?? 20);
            }}
          >
            <defs>
              <clipPath id="response-plot">
                <rect
                  x={LEFT}
                  y={TOP}
                  width={Math.max(0, width - RIGHT - LEFT)}
                  height={Math.max(0, height - BOTTOM - TOP)}
                />
              </clipPath>
            </defs>
            {TICKS_HZ.map((hz) => (
              <g key={hz}>
                <line className="grid" x1={x(hz)} x2={x(hz)} y1={TOP} y2={height - BOTTOM} />
                <text className="tick-label" x={x(hz)} y={height - 7} textAnchor="middle">
                  {hz === 200 ? '200 Hz' : hz}
                </text>
              </g>
            ))}
            {y.ticks(5).map((db) => (
              <g key={db}>
                <line className="grid" x1={LEFT} x2={width - RIGHT} y1={y(db)} y2={y(db)} />
                <text className="tick-label" x={LEFT - 6} y={y(db) + 4} textAnchor="end">
                  {db > 0 ? `+${db}` : db < 0 ? `−${-db}` : 0}
                </text>
              </g>
            ))}
            <g clipPath="url(#response-plot)">
              {spread && seats.length > 1 ? (
                <polygon
                  className="spread"
                  points={[
                    ...corners(frequenciesHz, spread.highestDb, x, y),
                    ...corners(frequenciesHz, spread.lowestDb, x, y).reverse(),
                  ].join(' ')}
                />
              ) : null}
              {seats.map((known) => {
                const key = seatKey(known);
                return known.levelDb && key !== seat ? (
                  <path key={key} className="seat-line" d={line(known.levelDb)} />
                ) : null;
              })}
              {seats
                .filter((known) => seatKey(known) === seat)
                .map(({ levelDb }) =>
                  levelDb ? (
                    <path key="chosen" className="seat-line chosen" d={line(levelDb)} />
                  ) : null,
                )}
              {spread ? <path className="average-line" d={line(spread.meanDb)} /> : null}
              {at === null ? null : (
                <line
                  className="response-cursor"
                  x1={x(frequenciesHz[at] ?? 20)}
                  x2={x(frequenciesHz[at] ?? 20)}
                  y1={TOP}
                  y2={height - BOTTOM}
                />
              )}
            </g>
            <text className="tick-label" x={LEFT} y={TOP - 8}>
              0 dB: one subwoofer, 1 m away in the open
            </text>
            <LineKey
              x={LEFT + 6}
              y={height - BOTTOM - 7}
              several={seats.length > 1 && spread !== null && width > KEY_PX}
            />
            <line
              className="axis"
              x1={LEFT}
              x2={width - RIGHT}
              y1={height - BOTTOM}
              y2={height - BOTTOM}
            />
          </svg>
        ) : null}
        <ChartWalker
          label="Frequencies from the lowest"
          count={frequenciesHz.length}
          at={at}
          text={at === null ? '' : readout(responses, seat, at)}
          onWalk={setPointed}
          onLeave={() => setPointed(null)}
          onChoose={(found) => onChoose(frequenciesHz[found] ?? 20)}
        />
      </div>
    </figure>
  );
}

/** What each kind of line is. */
function LineKey(props: {
  readonly x: number;
  readonly y: number;
  readonly several: boolean;
}): ReactElement | null {
  const { x, y, several } = props;
  if (!several) return null;
  return (
    <g className="line-key">
      <path className="seat-line chosen" d={`M${x},${y - 4}h18`} />
      <text x={x + 22} y={y}>
        this seat
      </text>
      <path className="average-line" d={`M${x + 78},${y - 4}h22`} />
      <text x={x + 104} y={y}>
        average
      </text>
      <path className="seat-line" d={`M${x + 156},${y - 4}h18`} />
      <text x={x + 178} y={y}>
        other seats
      </text>
    </g>
  );
}

const corners = (
  hz: Float64Array,
  levels: Float64Array,
  x: (hz: number) => number,
  y: (db: number) => number,
): string[] =>
  Array.from(levels, (level, f) => `${x(hz[f] ?? 20).toFixed(1)},${y(level).toFixed(1)}`);

function nearest(list: Float64Array, hz: number): number {
  let best = 0;
  list.forEach((value, n) => {
    if (Math.abs(Math.log(value / hz)) < Math.abs(Math.log((list[best] ?? 1) / hz))) best = n;
  });
  return best;
}

function rangeDb({ seats }: SeatResponses): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const { levelDb } of seats) {
    levelDb?.forEach((level) => {
      low = Math.min(low, level);
      high = Math.max(high, level);
    });
  }
  if (!(high > low)) return [-20, 20];
  const top = Math.ceil(high / ROUND_DB) * ROUND_DB;
  const bottom = Math.floor(Math.max(low, top - MOST_DB) / ROUND_DB) * ROUND_DB;
  return [Math.min(bottom, top - LEAST_DB), top];
}

function describe({ of, figures, seats, defaulted }: SeatResponses): string {
  const assumed = defaulted > 0 ? `, ${assumedText(defaulted)}` : '';
  const room = `${of === 'built' ? 'as built' : 'plain shell'}${assumed}`;
  const heard = seats.filter(({ seat, levelDb }) => seat !== null && levelDb !== null).length;
  if (!figures) return `${room}: no seat hears a subwoofer`;
  return heard > 1
    ? `${room}, spread over ${heard} seats ${figures.spreadDb.toFixed(1)} dB (${bandText(figures.bandHz)})`
    : `${room}, one seat`;
}

function readout(
  { frequenciesHz, seats, spread }: SeatResponses,
  seat: string,
  at: number,
): string {
  const level = seats.find((known) => seatKey(known) === seat)?.levelDb?.[at];
  const parts = [`${frequenciesHz[at]?.toFixed(1) ?? ''} Hz`];
  if (level !== undefined) parts.push(`here ${signed(level)}`);
  if (spread) {
    parts.push(
      `average ${signed(spread.meanDb[at] ?? 0)}`,
      `from ${signed(spread.lowestDb[at] ?? 0)} to ${signed(spread.highestDb[at] ?? 0)} dB`,
    );
  }
  return parts.join('  ');
}
