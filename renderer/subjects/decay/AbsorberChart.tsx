/**
 * Absorption of a design against frequency: in a diffuse field, at normal incidence, and the figure of
 * each octave. What lies outside the range of the formulas is hatched.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Design } from '../../../core/absorbers/design';
import { frequencyText } from '../../../core/absorbers/design-notes';
import type { CurvePoint, Evaluation } from '../../../core/absorbers/evaluate';
import { bandMark, OCTAVES_HZ } from '../../../core/quantity/bands';
import { LegendEntry } from '../../kit/Figure';
import { Chart } from '../../kit/chart/Chart';
import { NamedLine } from '../../kit/chart/Cursor';
import { Hatch, useHatch } from '../../kit/chart/Hatch';
import { Line, type DataPoint } from '../../kit/chart/Line';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea, type PlotArea } from '../../kit/chart/plot-area';
import { Axis, Ticks } from '../../kit/chart/Ticks';
import { useEvaluation } from './use-evaluation';

const MARGINS = { left: 34, right: 10, top: 25, bottom: 22 };
const LOWEST_HZ = 44.7;
const HIGHEST_HZ = 11_220;
/** Width of the words beside the resonance, px. */
const RESONANCE_PX = 110;

export interface AbsorberChartProps {
  readonly design: Design;
}

export function AbsorberChart({ design }: AbsorberChartProps): ReactElement {
  const { box, ...area } = usePlotArea(MARGINS);
  const evaluation = useEvaluation(design);
  const [fault] = evaluation.faults;
  return (
    <Chart
      className="absorber-chart"
      title="Absorption of the design"
      caption="Absorption"
      legend={
        <>
          <LegendEntry mark="line-diffuse">diffuse</LegendEntry>
          <LegendEntry mark="line-normal">normal</LegendEntry>
          <LegendEntry mark="octave-mean">octave</LegendEntry>
          <LegendEntry mark="outside-range" className="key-outside">
            outside the formulas
          </LegendEntry>
        </>
      }
      box={box}
      foot={
        <p className="absorber-caution">
          Computed, not tested. Mineral fibre irritates: mask, gloves, and cloth over every face.
          Fire: only materials with a tested class; your local code decides.
        </p>
      }
    >
      {fault ? (
        <p className="bench-no-curve">No curve yet. {fault.sentence}</p>
      ) : (
        <Curve evaluation={evaluation} area={area} />
      )}
    </Chart>
  );
}

interface CurveProps {
  readonly evaluation: Evaluation;
  readonly area: PlotArea;
}

function Curve({ evaluation, area }: CurveProps): ReactElement {
  const hatch = useHatch();
  const { curve, octaves, resonanceHz } = evaluation;
  const { left, right, top, bottom } = area;
  const x = scaleLog([LOWEST_HZ, HIGHEST_HZ], [left, right]);
  const y = scaleLinear([0, 1], [bottom, top]);
  const points = (key: 'diffuse' | 'normal'): readonly DataPoint[] =>
    curve.map((point) => [point.hz, point[key]]);
  return (
    <Plot area={area} x={x} y={y} describe={described(evaluation)}>
      <Hatch id={hatch.id} ink="faint" />
      {outsideSpans(curve).map(([from, to]) => (
        <rect
          key={from}
          fill={hatch.fill}
          x={x(from)}
          width={x(to) - x(from)}
          y={top}
          height={bottom - top}
        />
      ))}
      <Ticks
        along="y"
        at={bottom - top > 110 ? [0.2, 0.4, 0.6, 0.8, 1] : [0.5, 1]}
        text={(value) => value.toFixed(1)}
      />
      {resonanceHz === null || resonanceHz < LOWEST_HZ ? null : (
        <NamedLine
          at={resonanceHz}
          text={`resonance ${frequencyText(resonanceHz)}`}
          side={x(resonanceHz) > right - RESONANCE_PX ? 'left' : 'right'}
        />
      )}
      <Line className="line-normal" points={points('normal')} />
      <Line className="line-diffuse" points={points('diffuse')} />
      {OCTAVES_HZ.map((hz) => {
        const value = octaves[`${hz}`] ?? 0;
        return (
          <g key={hz}>
            <circle className="octave-mark" cx={x(hz)} cy={y(value)} r={4} />
            <text className="point-label" x={x(hz)} y={y(value) - 8} textAnchor="middle">
              {value.toFixed(2)}
            </text>
          </g>
        );
      })}
      <Ticks along="x" at={OCTAVES_HZ} text={bandMark} lines={false} />
      <Axis />
    </Plot>
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
