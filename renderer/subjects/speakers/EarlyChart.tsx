/**
 * First reflections of one loudspeaker at one seat: level against the direct sound over delay, under
 * the limit drawn as a step. A press chooses the nearest.
 */

import { scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import { faceName } from '../../../core/room/faces';
import { SHOWN_TO_MS, type SeatReflection } from '../../../core/reflections/early-at-seat';
import { EARLY_LIMIT, EARLY_LIMIT_SOURCE } from '../../../core/reflections/early-limit';
import { levelText } from './early-reflections';
import { Source } from '../../kit/Note';
import { Chart } from '../../kit/chart/Chart';
import { Plot, type PlotPoint } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { spreadLabels, textWidthPx } from '../../kit/chart/spread-labels';
import { levelTick, Ticks } from '../../kit/chart/Ticks';

/** Base lines of the names over the plot, px. */
const ROWS_PX = [11, 25, 39];
const MARGINS = { left: 38, right: 14, top: 48, bottom: 22 };
/** Least space between two names in a row, px. */
const BETWEEN_PX = 7;
/** Between a stem and its name, px. */
const FLAG_PX = 4;
const LOWEST_DB = -30;
/** A press farther from every mark than this chooses nothing, px. */
const REACH_PX = 40;

const METHOD = `Image sources, first order: Kuttruff, Room Acoustics (from memory). Limit: ${EARLY_LIMIT_SOURCE}. What leaves the loudspeaker backwards is in the shadow of its box and left out (common practice).`;

export interface EarlyChartProps {
  /** Whose sound, and where it is heard. */
  readonly of: string;
  readonly reflections: readonly SeatReflection[];
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
  readonly onPoint: (face: string | null) => void;
}

export function EarlyChart(props: EarlyChartProps): ReactElement {
  const { of, reflections, face, onChoose, onPoint } = props;
  const { box, ...area } = usePlotArea(MARGINS);
  const { width, left, right, top, bottom } = area;
  const x = scaleLinear([0, SHOWN_TO_MS], [left, right]);
  const y = scaleLinear([LOWEST_DB, 0], [bottom, top]);
  const [limitX, limitY] = [x(EARLY_LIMIT.withinMs), y(EARLY_LIMIT.levelDb)];
  const stems = reflections.map((reflection) => ({
    reflection,
    text: faceName(reflection.hit.face),
    x: x(reflection.path.delayMs),
    y: y(Math.max(LOWEST_DB, reflection.levelDb)),
  }));
  // Names fly to the right of their stems like flags, the earliest highest: no stem crosses a name.
  const names = spreadLabels(
    stems.map((stem) => ({
      width: textWidthPx(stem.text),
      places: ROWS_PX.map((y) => ({ x: stem.x + FLAG_PX, y, anchor: 'start' })),
    })),
    { within: { left, right: width - 2, top: -1, bottom: top }, gap: BETWEEN_PX },
  );
  const nearest = (at: PlotPoint): string | null => {
    const away = (stem: { readonly x: number; readonly y: number }): number =>
      // The whole stem can be pressed, not its mark alone.
      Math.hypot(at.x - stem.x, Math.min(0, at.y - stem.y));
    const [first] = [...stems].sort((a, b) => away(a) - away(b));
    return first && away(first) <= REACH_PX ? first.reflection.hit.face : null;
  };
  return (
    <Chart
      className="early-chart"
      title="First reflections"
      caption={<Source of="First reflections, dB">{METHOD}</Source>}
      readout="BS.1116 (from memory)"
      box={box}
    >
      <Plot
        area={area}
        x={x}
        y={y}
        describe={`${of}, against the direct sound: ${reflections.map(told).join(', ') || 'no early reflection'}. Press one to choose it.`}
        onPoint={(at) => onPoint(at && nearest(at))}
        onChoose={(at) => {
          const chosen = nearest(at);
          if (chosen !== null) onChoose(chosen);
        }}
      >
        <rect className="over-limit" x={left} y={top} width={limitX - left} height={limitY - top} />
        <Ticks
          along="x"
          at={[0, 5, 10, 15, SHOWN_TO_MS]}
          text={(ms) => (ms === 0 ? 'direct 0' : ms === SHOWN_TO_MS ? `${ms} ms` : ms)}
          lastAtEdge
        />
        <Ticks along="y" at={[0, -10, -20, LOWEST_DB]} text={levelTick} axisAt={LOWEST_DB} />
        <path className="limit-step" d={`M${left},${limitY} H${limitX} V${top}`} />
        <line className="direct" x1={left} x2={left} y1={top} y2={bottom} />
        <text className="plot-word" x={limitX - 5} y={limitY + 13} textAnchor="end">
          limit
        </text>
        {stems.map((stem, n) => (
          <Stem
            key={stem.reflection.hit.face}
            {...stem}
            bottom={bottom}
            nameY={names[n]?.y ?? null}
            face={face}
          />
        ))}
        {stems.map(({ reflection: { hit }, text }, n) => {
          const name = names[n];
          return name ? (
            <text
              key={hit.face}
              className={hit.face === face ? 'stem-name chosen' : 'stem-name'}
              x={name.x}
              y={name.y}
            >
              {text}
            </text>
          ) : null;
        })}
      </Plot>
    </Chart>
  );
}

function Stem(props: {
  readonly reflection: SeatReflection;
  readonly x: number;
  readonly y: number;
  readonly bottom: number;
  /** Base line of its name; null where there is no place for it. */
  readonly nameY: number | null;
  readonly face: string | null;
}): ReactElement {
  const { reflection, x, y, bottom, nameY, face } = props;
  const { hit, overDb } = reflection;
  const state = `${overDb > 0 ? ' over' : ''}${hit.face === face ? ' chosen' : ''}`;
  return (
    <g className={`stem${state}`}>
      <title>{told(reflection)}</title>
      {nameY === null ? null : <line className="flag" x1={x} x2={x} y1={nameY - 8} y2={y} />}
      <line x1={x} x2={x} y1={y} y2={bottom} />
      {overDb > 0 ? (
        <path d={`M${x},${y - 6} l6,6 l-6,6 l-6,-6 z`} />
      ) : (
        <circle cx={x} cy={y} r={4} />
      )}
    </g>
  );
}

const told = ({ hit, path, levelDb, overDb }: SeatReflection): string =>
  `${faceName(hit.face)} ${path.delayMs.toFixed(1)} ms ${levelText(levelDb)}${overDb > 0 ? ` over by ${overDb.toFixed(1)} dB` : ''}`;
