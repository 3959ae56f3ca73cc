/** Modes per third octave: how the room fills up with frequency. Kinds are told by their pattern. */

import { scaleBand, scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import type { BandCount } from '../../../core/modes/mode-count';
import type { ModeKind } from '../../../core/modes/shell-modes';
import { Chart } from '../../kit/chart/Chart';
import { Hatch, useHatch } from '../../kit/chart/Hatch';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { Axis, tickCount } from '../../kit/chart/Ticks';
import { Term } from '../../glossary/Term';

const MARGINS = { left: 12, right: 8, top: 22, bottom: 24 };
const KINDS: readonly ModeKind[] = ['axial', 'tangential', 'oblique'];

export function ThirdOctaves({ bands }: { readonly bands: readonly BandCount[] }): ReactElement {
  const { box, ...area } = usePlotArea(MARGINS);
  const { left, right, top, bottom } = area;
  const hatch = useHatch();
  const x = scaleBand(
    bands.map((band) => String(band.nominalHz)),
    [left, right],
  ).padding(0.22);
  // Where the bars stand close, every second or third has its figure.
  const every = Math.ceil(bands.length / tickCount(1.5 * (right - left), bands.length));
  const most = Math.max(1, ...bands.map((band) => band.count));
  const y = scaleLinear([0, most], [bottom, top]);
  return (
    <Chart
      title="Modes per third octave"
      caption={<Term id="thirdOctave">Resonances per third octave</Term>}
      box={box}
    >
      <Plot
        area={area}
        x={(n) => x(String(bands[n]?.nominalHz)) ?? 0}
        y={y}
        describe={bands.map((band) => `${band.nominalHz} Hz: ${band.count}`).join(', ')}
      >
        <Hatch id={hatch.id} ink="ink" />
        {KINDS.map((kind, i) => (
          <g key={kind}>
            <Bar kind={kind} hatch={hatch.fill} x={left} y={top + i * 18} width={12} height={11} />
            <text className="tick-label" x={left + 18} y={top + i * 18 + 10}>
              {kind}
            </text>
          </g>
        ))}
        <Axis at={0} />
        {bands.map((band, i) => {
          const from = x(String(band.nominalHz)) ?? 0;
          const middle = from + x.bandwidth() / 2;
          let below = 0;
          return (
            <g key={band.nominalHz}>
              {KINDS.map((kind) => {
                const foot = below;
                below += band.byKind[kind];
                return (
                  <Bar
                    key={kind}
                    kind={kind}
                    hatch={hatch.fill}
                    x={from}
                    width={x.bandwidth()}
                    y={y(below)}
                    height={y(foot) - y(below)}
                  />
                );
              })}
              <text
                className={band.count === 0 ? 'bar-count empty' : 'bar-count'}
                x={middle}
                y={y(band.count) - 5}
                textAnchor="middle"
              >
                {band.count}
              </text>
              {i % every === 0 ? (
                <text className="tick-label" x={middle} y={bottom + 16} textAnchor="middle">
                  {band.nominalHz === 31.5 ? '31' : band.nominalHz}
                </text>
              ) : null}
            </g>
          );
        })}
      </Plot>
    </Chart>
  );
}

interface BarProps {
  readonly kind: ModeKind;
  /** Fill of the tangential ones. */
  readonly hatch: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Kinds are told apart by their pattern: full, hatched, open. */
function Bar({ kind, hatch, ...rect }: BarProps): ReactElement {
  return (
    <rect
      className={`bar bar-${kind}`}
      {...(kind === 'tangential' ? { fill: hatch } : {})}
      {...rect}
    />
  );
}
