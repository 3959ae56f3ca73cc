/**
 * Reverberation time per octave against the target corridor. What lies under the Schroeder frequency
 * is shaded as outside the method; a band that a finish has no figure for says so.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Decay, DecayBand } from '../../core/decay/decay';
import { useBoxSize } from './use-box-size';

const LEFT = 44;
const RIGHT = 14;
const TOP = 22;
const BOTTOM = 24;

export interface DecayChartProps {
  readonly decay: Decay;
  readonly schroederHz: number | null;
  readonly chosenHz: number;
  readonly onChoose: (hz: DecayBand['hz']) => void;
}

export function DecayChart({
  decay,
  schroederHz,
  chosenHz,
  onChoose,
}: DecayChartProps): ReactElement {
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const { bands } = decay;
  const x = scaleLog([44, 11_400], [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const highest = Math.max(
    0.4,
    ...bands.flatMap((band) => [band.sabineS ?? 0, band.eyringS ?? 0, band.highS ?? 0]),
  );
  const y = scaleLinear([0, highest * 1.12], [height - BOTTOM, TOP]);
  const corridor = bands.filter((band) => band.lowS !== null && band.highS !== null);
  const edge = (band: DecayBand, side: 'lowS' | 'highS'): string =>
    `${x(band.hz)},${y(band[side] ?? 0)}`;
  const line = (key: 'sabineS' | 'eyringS'): string =>
    bands
      .filter((band) => band[key] !== null)
      .map((band, i) => `${i === 0 ? 'M' : 'L'}${x(band.hz)},${y(band[key] ?? 0)}`)
      .join(' ');
  const shadedTo = schroederHz === null ? LEFT : Math.max(LEFT, x(schroederHz));
  return (
    <figure className="chart" aria-label="Reverberation time per octave">
      <figcaption>
        Reverberation time, s
        <span className="key">
          <span>
            <i className="swatch line-eyring" />
            Eyring
          </span>
          <span>
            <i className="swatch line-sabine" />
            Sabine
          </span>
          <span>
            <i className="swatch corridor" />
            target
          </span>
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={bands
              .map((band) => `${band.hz} Hz: ${band.eyringS?.toFixed(2) ?? 'no figure'} s`)
              .join(', ')}
          >
            <defs>
              <pattern id="outside-method" width="6" height="6" patternUnits="userSpaceOnUse">
                <path className="hatch-faint" d="M-1,7 L7,-1 M-1,1 L1,-1 M5,7 L7,5" />
              </pattern>
            </defs>
            <rect
              fill="url(#outside-method)"
              x={LEFT}
              width={Math.max(0, Math.min(shadedTo, width - RIGHT) - LEFT)}
              y={TOP}
              height={Math.max(0, height - TOP - BOTTOM)}
            />
            {y.ticks(4).map((seconds) => (
              <g key={seconds}>
                <line
                  className="grid"
                  x1={LEFT}
                  x2={width - RIGHT}
                  y1={y(seconds)}
                  y2={y(seconds)}
                />
                <text className="tick-label" x={LEFT - 6} y={y(seconds) + 4} textAnchor="end">
                  {seconds.toFixed(1)}
                </text>
              </g>
            ))}
            <polygon
              className="corridor"
              points={[
                ...corridor.map((band) => edge(band, 'highS')),
                ...[...corridor].reverse().map((band) => edge(band, 'lowS')),
              ].join(' ')}
            />
            {schroederHz === null ? null : (
              <text className="schroeder-label" x={LEFT + 4} y={13}>
                under {schroederHz.toFixed(0)} Hz (Schroeder): a guide only
              </text>
            )}
            <path className="line-sabine" d={line('sabineS')} />
            <path className="line-eyring" d={line('eyringS')} />
            {bands.map((band) => (
              <BandMark
                key={band.hz}
                band={band}
                at={x(band.hz)}
                y={y}
                bottom={height - BOTTOM}
                chosen={band.hz === chosenHz}
                onChoose={() => onChoose(band.hz)}
              />
            ))}
            <line className="axis" x1={LEFT} x2={width - RIGHT} y1={y(0)} y2={y(0)} />
          </svg>
        ) : null}
      </div>
    </figure>
  );
}

interface BandMarkProps {
  readonly band: DecayBand;
  readonly at: number;
  readonly y: (seconds: number) => number;
  readonly bottom: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

function BandMark({ band, at, y, bottom, chosen, onChoose }: BandMarkProps): ReactElement {
  const outside =
    band.eyringS !== null &&
    band.lowS !== null &&
    band.highS !== null &&
    (band.eyringS > band.highS || band.eyringS < band.lowS);
  return (
    <g className="band-mark" onPointerDown={onChoose}>
      <rect x={at - 22} y={TOP} width={44} height={Math.max(0, bottom - TOP)} fill="transparent" />
      {chosen ? <line className="chosen-band" x1={at} x2={at} y1={TOP} y2={bottom} /> : null}
      {band.eyringS === null ? (
        <text className="no-figure" x={at} y={bottom - 6} textAnchor="middle">
          no figure
        </text>
      ) : (
        <>
          {outside ? (
            <path className="point outside" d={`M${at},${y(band.eyringS) - 6} l6,10 h-12 z`} />
          ) : (
            <circle className="point" cx={at} cy={y(band.eyringS)} r={4} />
          )}
          <text className="point-label" x={at} y={y(band.eyringS) - 11} textAnchor="middle">
            {band.eyringS.toFixed(2)}
          </text>
        </>
      )}
      <text className="tick-label" x={at} y={bottom + 16} textAnchor="middle">
        {band.hz >= 1000 ? `${band.hz / 1000}k` : band.hz}
      </text>
    </g>
  );
}
