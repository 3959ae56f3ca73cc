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
import { DecayBandMark, figurePlaces } from './DecayBandMark';
import { ModalMarks } from './ModalMarks';
import { LegendEntry } from '../../kit/Figure';
import { Chart } from '../../kit/chart/Chart';
import { Clipped } from '../../kit/chart/Clipped';
import { Hatch, useHatch } from '../../kit/chart/Hatch';
import { Band, Line, type DataPoint } from '../../kit/chart/Line';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { Axis, Ticks } from '../../kit/chart/Ticks';
import { Term } from '../../glossary/Term';
import type { TermId } from '../../glossary/terms';

const MARGINS = { left: 34, right: 10, top: 20, bottom: 22 };
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
  const { box, ...area } = usePlotArea(MARGINS);
  const { width, left, right, top, bottom } = area;
  const hatch = useHatch();
  const { bands, advice, modal } = decay;
  const second = advice.method === 'arauPuchades' ? 'arauPuchades' : 'sabine';
  const x = scaleLog([LOW_HZ, HIGH_HZ], [left, right]);
  const y = scaleLinear([0, topS(decay)], [bottom, top]);
  const shadedTo = schroederHz === null ? left : Math.max(left, x(schroederHz));
  const points = (time: (band: DecayBand) => number | null): readonly DataPoint[] =>
    bands.flatMap((band): readonly DataPoint[] => {
      const seconds = time(band);
      return seconds === null ? [] : [[band.hz, seconds]];
    });
  const labels = figurePlaces(bands, x, y, area);
  return (
    <Chart
      className="decay-chart"
      title="Reverberation time per octave"
      caption={
        <Term id="decayTime">
          <span className="wide-only">How long sound lingers</span>
          <span className="narrow-only">Decay</span>, s
        </Term>
      }
      legend={
        <>
          <Key mark="line-eyring" name="Eyring" term="eyring" />
          <Key
            mark={`line-${second}`}
            name={METHODS[second].name.split('-')[0] ?? ''}
            term={second}
          />
          <Key mark="whisker" name="methods" term="methodSpread" />
          <Key mark="coefficients" name="coefficients" term="coefficientError" />
          <Key mark="corridor" name="target" term="corridor" />
        </>
      }
      box={box}
    >
      <Plot area={area} x={x} y={y} describe={spoken(decay)}>
        <Hatch id={hatch.id} ink="faint" />
        <rect
          fill={hatch.fill}
          x={left}
          width={Math.min(shadedTo, right) - left}
          y={top}
          height={bottom - top}
        />
        <Ticks along="y" at={y.ticks(4)} text={(seconds) => seconds.toFixed(1)} offset={5} />
        <Band
          className="corridor"
          upper={points((band) => band.highS)}
          lower={points((band) => band.lowS)}
        />
        <text className="plot-note" x={left + 2} y={11}>
          {schroederHz === null
            ? ''
            : `under ${schroederHz.toFixed(0)} Hz (Schroeder): a guide only`}
        </text>
        {modal.length === 0 || width < 370 ? null : (
          <text className="plot-note" x={right} y={11} textAnchor="end">
            {width > 480 ? 'single modes ' : ''}■ axial ○ {width > 480 ? 'tangential' : 'tang.'} ×{' '}
            {width > 480 ? 'oblique' : 'obl.'}
          </text>
        )}
        <Clipped above={6}>
          <Line className={`line-${second}`} points={points((band) => band.methods[second])} />
          <Line className="line-eyring" points={points((band) => band.eyringS)} />
          <ModalMarks modal={modal} />
        </Clipped>
        {bands.map((band, n) => (
          <DecayBandMark
            key={band.hz}
            band={band}
            second={second}
            figureAt={labels[n] ?? null}
            chosen={band.hz === chosenHz}
            onChoose={() => onChoose(band.hz)}
          />
        ))}
        <Axis at={0} />
      </Plot>
    </Chart>
  );
}

function Key(props: {
  readonly mark: string;
  readonly name: string;
  readonly term: TermId;
}): ReactElement {
  return (
    <LegendEntry mark={props.mark}>
      <Term id={props.term}>{props.name}</Term>
    </LegendEntry>
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
