/**
 * First reflections of one loudspeaker at one seat: level against the direct sound over delay, under
 * the limit drawn as a step. A press chooses the nearest.
 */

import { scaleLinear } from 'd3-scale';
import type { MouseEvent, ReactElement } from 'react';
import { faceName } from '../../../core/room/faces';
import { TOLD_MS, type SeatReflection } from '../../../core/reflections/early-at-seat';
import { EARLY_LIMIT, EARLY_LIMIT_SOURCE } from '../../../core/reflections/early-limit';
import { levelText } from './early-reflections';
import { labelRows, textWidthPx } from '../../kit/chart/label-rows';
import { useBoxSize } from '../../kit/chart/use-box-size';

const LEFT = 38;
const RIGHT = 14;
const ROW_PX = 14;
const ROWS = 3;
const TOP = 6 + ROWS * ROW_PX;
const BOTTOM = 22;
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
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const [left, right] = [LEFT, Math.max(LEFT + 10, width - RIGHT)];
  const [top, bottom] = [TOP, Math.max(TOP + 10, height - BOTTOM)];
  const x = scaleLinear([0, TOLD_MS], [left, right]);
  const y = scaleLinear([LOWEST_DB, 0], [bottom, top]);
  const [limitX, limitY] = [x(EARLY_LIMIT.withinMs), y(EARLY_LIMIT.levelDb)];
  const stems = reflections.map((reflection) => ({
    reflection,
    text: faceName(reflection.hit.face),
    x: x(reflection.path.delayMs),
    y: y(Math.max(LOWEST_DB, reflection.levelDb)),
  }));
  // Names fly to the right of their stems like flags, the earliest highest: no stem crosses a name.
  const names = labelRows(
    stems.map((stem) => ({ text: stem.text, x: stem.x + FLAG_PX + textWidthPx(stem.text) / 2 })),
    ROWS,
    [left, width - 2],
  ).map(({ x: middleX, row }, n) =>
    row === null
      ? null
      : { x: middleX - textWidthPx(stems[n]?.text ?? '') / 2, y: 11 + row * ROW_PX },
  );
  const nearest = (event: MouseEvent<SVGSVGElement>): string | null => {
    const box = event.currentTarget.getBoundingClientRect();
    const away = (stem: { readonly x: number; readonly y: number }): number =>
      Math.hypot(
        event.clientX - box.left - stem.x,
        // The whole stem can be pressed, not its mark alone.
        Math.min(0, event.clientY - box.top - stem.y),
      );
    const [first] = [...stems].sort((a, b) => away(a) - away(b));
    return first && away(first) <= REACH_PX ? first.reflection.hit.face : null;
  };
  return (
    <figure className="chart early-chart" aria-label="First reflections">
      <figcaption title={METHOD}>
        <span>First reflections, dB</span>
        <span className="readout">BS.1116 (from memory)</span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={`${of}, against the direct sound: ${reflections.map(told).join(', ') || 'no early reflection'}. Press one to choose it.`}
            onPointerMove={(event) => onPoint(nearest(event))}
            onPointerLeave={() => onPoint(null)}
            onClick={(event) => {
              const chosen = nearest(event);
              if (chosen !== null) onChoose(chosen);
            }}
          >
            <rect
              className="over-limit"
              x={left}
              y={top}
              width={limitX - left}
              height={limitY - top}
            />
            {[0, 5, 10, 15, TOLD_MS].map((ms) => (
              <g key={ms}>
                <line className="grid" x1={x(ms)} x2={x(ms)} y1={top} y2={bottom} />
                <text
                  className="tick-label"
                  x={ms === TOLD_MS ? right + RIGHT - 2 : x(ms)}
                  y={height - 7}
                  textAnchor={ms === TOLD_MS ? 'end' : 'middle'}
                >
                  {ms === 0 ? 'direct 0' : ms === TOLD_MS ? `${ms} ms` : ms}
                </text>
              </g>
            ))}
            {[0, -10, -20, LOWEST_DB].map((db) => (
              <g key={db}>
                <line
                  className={db === LOWEST_DB ? 'axis' : 'grid'}
                  x1={left}
                  x2={right}
                  y1={y(db)}
                  y2={y(db)}
                />
                <text className="tick-label" x={left - 6} y={y(db) + 4} textAnchor="end">
                  {db < 0 ? `−${-db}` : 0}
                </text>
              </g>
            ))}
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
          </svg>
        ) : null}
      </div>
    </figure>
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
