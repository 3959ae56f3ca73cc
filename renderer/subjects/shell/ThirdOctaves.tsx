/** Modes per third octave: how the room fills up with frequency. Kinds are told by their pattern. */

import { scaleBand, scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import type { BandCount } from '../../../core/modes/mode-count';
import type { ModeKind } from '../../../core/modes/shell-modes';
import { tickCount } from '../../kit/chart/tick-count';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { Term } from '../../glossary/Term';

const LEFT = 12;
const RIGHT = 8;
const TOP = 22;
const BOTTOM = 24;
const KINDS: readonly ModeKind[] = ['axial', 'tangential', 'oblique'];

export function ThirdOctaves({ bands }: { readonly bands: readonly BandCount[] }): ReactElement {
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const x = scaleBand(
    bands.map((band) => String(band.nominalHz)),
    [LEFT, Math.max(LEFT + 10, width - RIGHT)],
  ).padding(0.22);
  // Where the bars stand close, every second or third has its figure.
  const every = Math.ceil(bands.length / tickCount(1.5 * (width - LEFT - RIGHT), bands.length));
  const most = Math.max(1, ...bands.map((band) => band.count));
  const y = scaleLinear([0, most], [height - BOTTOM, TOP]);
  return (
    <figure className="chart" aria-label="Modes per third octave">
      <figcaption>
        <Term id="thirdOctave">Resonances per third octave</Term>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={bands.map((band) => `${band.nominalHz} Hz: ${band.count}`).join(', ')}
          >
            <defs>
              <pattern id="bar-tangential" width="5" height="5" patternUnits="userSpaceOnUse">
                <path className="hatch-ink" d="M-1,6 L6,-1 M-1,1 L1,-1 M4,6 L6,4" />
              </pattern>
            </defs>
            {KINDS.map((kind, i) => (
              <g key={kind}>
                <rect
                  className={`bar bar-${kind}`}
                  x={LEFT}
                  y={TOP + i * 18}
                  width={12}
                  height={11}
                />
                <text className="tick-label" x={LEFT + 18} y={TOP + i * 18 + 10}>
                  {kind}
                </text>
              </g>
            ))}
            <line className="axis" x1={LEFT} x2={width - RIGHT} y1={y(0)} y2={y(0)} />
            {bands.map((band, i) => {
              const left = x(String(band.nominalHz)) ?? 0;
              let below = 0;
              return (
                <g key={band.nominalHz}>
                  {KINDS.map((kind) => {
                    const from = below;
                    below += band.byKind[kind];
                    return (
                      <rect
                        key={kind}
                        className={`bar bar-${kind}`}
                        x={left}
                        width={x.bandwidth()}
                        y={y(below)}
                        height={y(from) - y(below)}
                      />
                    );
                  })}
                  <text
                    className={band.count === 0 ? 'bar-count empty' : 'bar-count'}
                    x={left + x.bandwidth() / 2}
                    y={y(band.count) - 5}
                    textAnchor="middle"
                  >
                    {band.count}
                  </text>
                  {i % every === 0 ? (
                    <text
                      className="tick-label"
                      x={left + x.bandwidth() / 2}
                      y={height - 8}
                      textAnchor="middle"
                    >
                      {band.nominalHz === 31.5 ? '31' : band.nominalHz}
                    </text>
                  ) : null}
                </g>
              );
            })}
          </svg>
        ) : null}
      </div>
    </figure>
  );
}
