/**
 * Level at every seat over frequency: a line a seat, their average, and the band that they spread over.
 * A press chooses the frequency, which the drawing then paints and the table beside it takes apart.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import { assumedText } from '../../../core/analysis/room-field';
import { RESPONSE_RANGE_HZ, type SeatResponses } from '../../../core/analysis/seat-response';
import { Chart } from '../../kit/chart/Chart';
import { Clipped } from '../../kit/chart/Clipped';
import { Cursor } from '../../kit/chart/Cursor';
import { Band, Line, pointsOf, type DataPoint } from '../../kit/chart/Line';
import { nearestAt, useNearest } from '../../kit/chart/nearest';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { Axis, levelTick, Ticks } from '../../kit/chart/Ticks';
import { seatKey } from '../../state/seat-names';
import { bandText } from './band-text';
import { signed } from '../../kit/chart/signed';

const MARGINS = { left: 38, right: 20, top: 20, bottom: 22 };
/** Least height of the scale, and steps that it is rounded to, dB. */
const LEAST_DB = 40;
const ROUND_DB = 5;
/** Deep notches may run out of the picture below this under the top, dB. */
const MOST_DB = 60;
/** The key of the lines needs a chart of this width, px. */
const KEY_PX = 300;
const TICKS_HZ = [20, 30, 40, 50, 60, 80, 100, 120, 150, 200];

/** What is said of curves that are not of the present room. */
const BEFORE = 'as before the change, the new one is being computed';

export interface ResponseChartProps {
  readonly responses: SeatResponses;
  /** False where they are of the room before the last change: they stay, dimmed and told so. */
  readonly isOfRoom: boolean;
  /** Seat that is looked at, `row|seat`. */
  readonly seat: string;
  readonly frequencyHz: number | null;
  readonly onChoose: (frequencyHz: number) => void;
}

export function ResponseChart(props: ResponseChartProps): ReactElement {
  const { responses, isOfRoom, seat, frequencyHz, onChoose } = props;
  const { box, ...area } = usePlotArea(MARGINS);
  const { width, left, right, top, bottom } = area;
  const { frequenciesHz, seats, spread } = responses;
  const x = scaleLog(RESPONSE_RANGE_HZ, [left, right]);
  const y = scaleLinear(rangeDb(responses), [bottom, top]);
  const pointer = useNearest(frequenciesHz, x, area);
  const at =
    pointer.at ?? (frequencyHz === null ? null : nearestAt(frequenciesHz, x, x(frequencyHz)));
  const through = (levels: Float64Array): readonly DataPoint[] => pointsOf(frequenciesHz, levels);

  return (
    <Chart
      className={isOfRoom ? 'response-chart' : 'response-chart of-before'}
      title="Response at the seats"
      caption={
        <>
          <span>Response at the seats, dB</span>
          {isOfRoom ? null : <span className="before-note">{BEFORE}</span>}
        </>
      }
      readout={at === null ? describe(responses) : readout(responses, seat, at)}
      live
      box={box}
    >
      <Plot
        area={area}
        x={x}
        y={y}
        describe={`${isOfRoom ? '' : `${BEFORE}: `}${describe(responses)}. Press to choose a frequency.`}
        onPoint={(point) => (point ? pointer.pointAt(point.x) : pointer.leave())}
        onChoose={(point) => {
          const found = pointer.find(point.x);
          if (found !== null) onChoose(frequenciesHz[found] ?? 20);
        }}
        walk={{
          label: 'Frequencies from the lowest',
          count: frequenciesHz.length,
          at,
          text: at === null ? '' : readout(responses, seat, at),
          onWalk: pointer.walkTo,
          onLeave: pointer.leave,
          onChoose: (found) => onChoose(frequenciesHz[found] ?? 20),
        }}
      >
        <Ticks along="x" at={TICKS_HZ} text={(hz) => (hz === 200 ? '200 Hz' : hz)} />
        <Ticks along="y" at={y.ticks(5)} text={levelTick} />
        <Clipped>
          {spread && seats.length > 1 ? (
            <Band
              className="spread"
              upper={through(spread.highestDb)}
              lower={through(spread.lowestDb)}
            />
          ) : null}
          {seats.map((known) => {
            const key = seatKey(known);
            return known.levelDb && key !== seat ? (
              <Line key={key} className="seat-line" points={through(known.levelDb)} />
            ) : null;
          })}
          {seats
            .filter((known) => seatKey(known) === seat)
            .map(({ levelDb }) =>
              levelDb ? (
                <Line key="chosen" className="seat-line chosen" points={through(levelDb)} />
              ) : null,
            )}
          {spread ? <Line className="average-line" points={through(spread.meanDb)} /> : null}
          {at === null ? null : <Cursor at={frequenciesHz[at] ?? 20} />}
        </Clipped>
        <text className="tick-label" x={left} y={top - 8}>
          0 dB: one subwoofer, 1 m away in the open
        </text>
        <LineKey
          x={left + 6}
          y={bottom - 7}
          several={seats.length > 1 && spread !== null && width > KEY_PX}
        />
        <Axis />
      </Plot>
    </Chart>
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
