/**
 * Reverberation time per octave against the target corridor: Eyring with the error of the coefficients
 * and the spread of all methods, the method that is better here beside it, and below the Schroeder
 * frequency, where the method ends, the decay of each mode of its own.
 */

import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Analysis } from '../../../core/analysis/analyze';
import type { DecayBand } from '../../../core/decay/decay';
import { METHODS } from '../../../core/decay/methods';
import { DecayBandMark } from './DecayBandMark';
import { ModalMarks } from './ModalMarks';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { Term } from '../../glossary/Term';
import type { TermId } from '../../glossary/terms';

const LEFT = 34;
const RIGHT = 10;
const TOP = 20;
const BOTTOM = 22;
const LOW_HZ = 21;
const HIGH_HZ = 11_400;
/** The spread of the methods may run out of the picture beyond this many times all else. */
const CLIP = 1.6;

export interface DecayChartProps {
  readonly decay: Analysis['decay'];
  readonly schroederHz: number | null;
  readonly chosenHz: number;
  readonly onChoose: (hz: DecayBand['hz']) => void;
}

export function DecayChart(props: DecayChartProps): ReactElement {
  const { decay, schroederHz, chosenHz, onChoose } = props;
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const { bands, advice, modal } = decay;
  const second = advice.method === 'arauPuchades' ? 'arauPuchades' : 'sabine';
  const x = scaleLog([LOW_HZ, HIGH_HZ], [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const y = scaleLinear([0, topS(decay)], [Math.max(TOP, height - BOTTOM), TOP]);
  const shadedTo = schroederHz === null ? LEFT : Math.max(LEFT, x(schroederHz));
  const line = (time: (band: DecayBand) => number | null): string =>
    bands
      .flatMap((band) => {
        const seconds = time(band);
        return seconds === null ? [] : [`${x(band.hz)},${y(seconds)}`];
      })
      .map((at, i) => `${i === 0 ? 'M' : 'L'}${at}`)
      .join(' ');
  return (
    <figure className="chart decay-chart" aria-label="Reverberation time per octave">
      <figcaption>
        <Term id="decayTime">
          <span className="wide-only">How long sound lingers</span>
          <span className="narrow-only">Decay</span>, s
        </Term>
        <span className="key">
          <Key mark="line-eyring" name="Eyring" term="eyring" />
          <Key
            mark={`line-${second}`}
            name={METHODS[second].name.split('-')[0] ?? ''}
            term={second}
          />
          <Key mark="whisker" name="methods" term="methodSpread" />
          <Key mark="coefficients" name="coefficients" term="coefficientError" />
          <Key mark="corridor" name="target" term="corridor" />
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg width={width} height={height} role="img" aria-label={spoken(decay)}>
            <defs>
              <pattern id="outside-method" width="6" height="6" patternUnits="userSpaceOnUse">
                <path className="hatch-faint" d="M-1,7 L7,-1 M-1,1 L1,-1 M5,7 L7,5" />
              </pattern>
              <clipPath id="decay-plot">
                <rect
                  x={LEFT}
                  width={Math.max(0, width - RIGHT - LEFT)}
                  y={TOP - 6}
                  height={Math.max(0, height - TOP - BOTTOM + 6)}
                />
              </clipPath>
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
                <text className="tick-label" x={LEFT - 5} y={y(seconds) + 4} textAnchor="end">
                  {seconds.toFixed(1)}
                </text>
              </g>
            ))}
            <polygon className="corridor" points={corridor(bands, x, y)} />
            <text className="schroeder-label" x={LEFT + 2} y={11}>
              {schroederHz === null
                ? ''
                : `under ${schroederHz.toFixed(0)} Hz (Schroeder): a guide only`}
            </text>
            {modal.length === 0 || width < 370 ? null : (
              <text className="schroeder-label" x={width - RIGHT} y={11} textAnchor="end">
                {width > 480 ? 'single modes ' : ''}■ axial ○ {width > 480 ? 'tangential' : 'tang.'}{' '}
                × {width > 480 ? 'oblique' : 'obl.'}
              </text>
            )}
            <g clipPath="url(#decay-plot)">
              <path className={`line-${second}`} d={line((band) => band.methods[second])} />
              <path className="line-eyring" d={line((band) => band.eyringS)} />
              <ModalMarks modal={modal} x={x} y={y} />
            </g>
            {bands.map((band, i) => (
              <DecayBandMark
                key={band.hz}
                band={band}
                second={second}
                at={x(band.hz)}
                y={y}
                top={TOP}
                bottom={height - BOTTOM}
                neighbours={[bands[i - 1]?.eyringS ?? null, bands[i + 1]?.eyringS ?? null]}
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

function Key(props: {
  readonly mark: string;
  readonly name: string;
  readonly term: TermId;
}): ReactElement {
  return (
    <span>
      <i className={`swatch ${props.mark}`} />
      <Term id={props.term}>{props.name}</Term>
    </span>
  );
}

/** Upper end of the scale, s: all that is judged fits in; what only spreads may run out of it. */
function topS({ bands, modal, advice }: Analysis['decay']): number {
  const judged = bands.flatMap((band) => [
    band.eyringS ?? 0,
    band.methods[advice.method] ?? 0,
    band.highS ?? 0,
    band.coefficientBandS?.[1] ?? 0,
  ]);
  const most = Math.max(0.35, ...judged, ...modal.map((mode) => mode.decayS));
  const spread = Math.max(0, ...bands.map((band) => band.spreadS?.[1] ?? 0));
  return Math.max(most, Math.min(spread, most * CLIP)) * 1.12;
}

function corridor(
  bands: readonly DecayBand[],
  x: (hz: number) => number,
  y: (seconds: number) => number,
): string {
  const upper = bands.flatMap((band) =>
    band.highS === null ? [] : [`${x(band.hz)},${y(band.highS)}`],
  );
  const lower = bands.flatMap((band) =>
    band.lowS === null ? [] : [`${x(band.hz)},${y(band.lowS)}`],
  );
  return [...upper, ...lower.reverse()].join(' ');
}

/** The chart in words. */
function spoken({ bands, modal }: Analysis['decay']): string {
  const octaves = bands.map((band) => {
    if (band.eyringS === null) return `${band.hz} Hz: no figure`;
    const spread = band.spreadS
      ? `, by all methods ${band.spreadS[0].toFixed(2)} to ${band.spreadS[1].toFixed(2)} s`
      : '';
    return `${band.hz} Hz: ${band.eyringS.toFixed(2)} s${spread}`;
  });
  if (modal.length === 0) return octaves.join('; ');
  const times = modal.map((mode) => mode.decayS);
  const modes = `${modal.length} single modes ${Math.min(...times).toFixed(2)} to ${Math.max(...times).toFixed(2)} s`;
  return [...octaves, modes].join('; ');
}
