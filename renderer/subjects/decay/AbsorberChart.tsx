/**
 * Absorption of a design against frequency: in a diffuse field, at normal incidence, and the figure of
 * each octave. What lies outside the range of the formulas is hatched.
 */

import { scaleLinear, scaleLog, type ScaleContinuousNumeric } from 'd3-scale';
import { useId, type ReactElement } from 'react';
import type { Design } from '../../../core/absorbers/design';
import { frequencyText } from '../../../core/absorbers/design-notes';
import type { CurvePoint, Evaluation } from '../../../core/absorbers/evaluate';
import { bandMark, OCTAVES_HZ } from '../../../core/quantity/bands';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { useEvaluation } from './use-evaluation';

const LEFT = 34;
const RIGHT = 10;
const TOP = 25;
const BOTTOM = 22;
const LOWEST_HZ = 44.7;
const HIGHEST_HZ = 11_220;

export interface AbsorberChartProps {
  readonly design: Design;
}

export function AbsorberChart({ design }: AbsorberChartProps): ReactElement {
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const evaluation = useEvaluation(design);
  const [fault] = evaluation.faults;
  return (
    <figure className="chart absorber-chart" aria-label="Absorption of the design">
      <figcaption>
        Absorption
        <span className="key">
          <span>
            <i className="swatch line-diffuse" />
            diffuse
          </span>
          <span>
            <i className="swatch line-normal" />
            normal
          </span>
          <span>
            <i className="swatch octave-mean" />
            octave
          </span>
          <span className="key-outside">
            <i className="swatch outside-range" />
            outside the formulas
          </span>
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {fault ? (
          <p className="bench-no-curve">No curve yet. {fault.sentence}</p>
        ) : width > 0 ? (
          <Curve evaluation={evaluation} width={width} height={height} />
        ) : null}
      </div>
      <p className="absorber-caution">
        Computed, not tested. Mineral fibre irritates: mask, gloves, and cloth over every face.
        Fire: only materials with a tested class; your local code decides.
      </p>
    </figure>
  );
}

interface CurveProps {
  readonly evaluation: Evaluation;
  readonly width: number;
  readonly height: number;
}

type Scale = ScaleContinuousNumeric<number, number>;

function Curve({ evaluation, width, height }: CurveProps): ReactElement {
  const hatch = useId();
  const { curve, octaves, resonanceHz } = evaluation;
  const right = Math.max(LEFT + 10, width - RIGHT);
  const bottom = Math.max(TOP + 10, height - BOTTOM);
  const x = scaleLog([LOWEST_HZ, HIGHEST_HZ], [LEFT, right]);
  const y = scaleLinear([0, 1], [bottom, TOP]);
  const line = (key: 'diffuse' | 'normal'): string =>
    curve
      .map(
        (point, i) => `${i === 0 ? 'M' : 'L'}${x(point.hz).toFixed(1)},${y(point[key]).toFixed(1)}`,
      )
      .join(' ');
  return (
    <svg width={width} height={height} role="img" aria-label={described(evaluation)}>
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse">
          <path className="hatch-faint" d="M-1,7 L7,-1 M-1,1 L1,-1 M5,7 L7,5" />
        </pattern>
      </defs>
      {outsideSpans(curve).map(([from, to]) => (
        <rect
          key={from}
          fill={`url(#${hatch})`}
          x={x(from)}
          width={x(to) - x(from)}
          y={TOP}
          height={bottom - TOP}
        />
      ))}
      {(bottom - TOP > 110 ? [0.2, 0.4, 0.6, 0.8, 1] : [0.5, 1]).map((value) => (
        <g key={value}>
          <line className="grid" x1={LEFT} x2={right} y1={y(value)} y2={y(value)} />
          <text className="tick-label" x={LEFT - 6} y={y(value) + 4} textAnchor="end">
            {value.toFixed(1)}
          </text>
        </g>
      ))}
      {resonanceHz === null ? null : (
        <Resonance hz={resonanceHz} x={x} bottom={bottom} right={right} />
      )}
      <path className="line-normal" d={line('normal')} />
      <path className="line-diffuse" d={line('diffuse')} />
      {OCTAVES_HZ.map((hz) => {
        const value = octaves[`${hz}`] ?? 0;
        return (
          <g key={hz}>
            <circle className="octave-mark" cx={x(hz)} cy={y(value)} r={4} />
            <text className="point-label" x={x(hz)} y={y(value) - 8} textAnchor="middle">
              {value.toFixed(2)}
            </text>
            <text className="tick-label" x={x(hz)} y={bottom + 15} textAnchor="middle">
              {bandMark(hz)}
            </text>
          </g>
        );
      })}
      <line className="axis" x1={LEFT} x2={right} y1={bottom} y2={bottom} />
    </svg>
  );
}

interface ResonanceProps {
  readonly hz: number;
  readonly x: Scale;
  readonly bottom: number;
  readonly right: number;
}

/** The resonance as a dashed line, told beside it on the side that has room. */
function Resonance({ hz, x, bottom, right }: ResonanceProps): ReactElement | null {
  if (hz < LOWEST_HZ) return null;
  const at = x(hz);
  const toTheLeft = at > right - 110;
  return (
    <g>
      <line className="schroeder" x1={at} x2={at} y1={TOP} y2={bottom} />
      <text
        className="resonance-label"
        x={toTheLeft ? at - 5 : at + 5}
        y={TOP - 13}
        textAnchor={toTheLeft ? 'end' : 'start'}
      >
        resonance {frequencyText(hz)}
      </text>
    </g>
  );
}

/** Stretches of the curve outside the formulas, Hz, edge to edge. */
function outsideSpans(curve: readonly CurvePoint[]): readonly (readonly [number, number])[] {
  const half = 10 ** (1 / 60);
  const spans: [number, number][] = [];
  for (const point of curve) {
    if (point.valid) continue;
    const [from, to] = [point.hz / half, point.hz * half];
    const last = spans.at(-1);
    if (last && from < last[1] * 1.001) last[1] = to;
    else spans.push([from, to]);
  }
  return spans;
}

/** The chart in words. */
function described({ octaves, extrapolated, resonanceHz }: Evaluation): string {
  const figures = OCTAVES_HZ.map(
    (hz) =>
      `${hz} Hz: ${(octaves[`${hz}`] ?? 0).toFixed(2)}${extrapolated.includes(hz) ? ', extrapolated' : ''}`,
  );
  const resonance = resonanceHz === null ? [] : [`resonance at ${frequencyText(resonanceHz)}`];
  return [...figures, ...resonance].join('; ');
}
