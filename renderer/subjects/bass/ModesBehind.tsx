/** The modes behind one frequency at one seat: how strong each is there, and whether it adds or takes away. */

import type { ReactElement } from 'react';
import type { Point } from '../../../core/room/project';
import { useFineModes, useFineRequest } from '../../pressure/built-store';
import { useResult } from '../../state/use-result';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { signed } from '../../kit/chart/signed';
import { scrollable } from '../../kit/controls/scrollable';

const MOST = 5;
/** Phases this near to a quarter turn neither add nor take away, degrees. */
const ACROSS_DEG = 20;

export interface ModesBehindProps {
  readonly frequencyHz: number | null;
  readonly seat: Point | null;
  readonly seatName: string;
}

export function ModesBehind(props: ModesBehindProps): ReactElement {
  const { frequencyHz, seat, seatName } = props;
  const modes = useFineRequest();
  const fine = useFineModes();
  const asked = frequencyHz !== null && seat !== null;
  const found =
    useResult('modesBehind', asked ? { at: seat, frequencyHz, most: MOST, modes } : null) ?? [];
  const { orders } = useResult('roomField', asked ? { modes } : null) ?? { orders: null };
  const nameOf = (mode: number): string => {
    if (mode < 0) return 'even pressure';
    const order = orders?.[mode];
    if (order) return modeName(order);
    const asBuilt = fine?.modes[mode];
    return asBuilt ? builtModeName(asBuilt) : '';
  };
  return (
    <figure className="chart" aria-label="Modes behind this frequency">
      <figcaption>
        {frequencyHz === null ? 'What is behind it' : `Behind ${frequencyHz.toFixed(1)} Hz`}
        <span className="readout">{seatName}</span>
      </figcaption>
      <div className="table-box" {...scrollable('Modes at this frequency')}>
        {found.length === 0 ? (
          <p className="empty">
            {frequencyHz === null
              ? 'Press a peak or a dip in the chart: its modes are named here, and the drawing is painted with what all subwoofers make at that frequency.'
              : 'Nothing is heard there: this seat, or every subwoofer, is outside the free space.'}
          </p>
        ) : (
          <table>
            <thead>
              <tr>
                <th scope="col">mode</th>
                <th scope="col">Hz</th>
                <th scope="col">dB</th>
                <th scope="col">here it</th>
              </tr>
            </thead>
            <tbody>
              {found.map(({ mode, frequencyHz: modeHz, size: strength, againstDeg }) => (
                <tr key={mode}>
                  <th scope="row" title={nameOf(mode)}>
                    {nameOf(mode).replace(/ \(.*/, '')}
                  </th>
                  <td>{mode < 0 ? '' : modeHz.toFixed(1)}</td>
                  <td>{signed(20 * Math.log10(strength))}</td>
                  <td>{effect(againstDeg)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
    </figure>
  );
}

const effect = (againstDeg: number): string =>
  againstDeg < 90 - ACROSS_DEG
    ? '+ adds'
    : againstDeg > 90 + ACROSS_DEG
      ? '− takes away'
      : '⊥ across';
