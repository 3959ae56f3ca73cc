/** The decay of single modes below the Schroeder frequency, by kind: a square, a ring, a cross. */

import type { ReactElement } from 'react';
import type { ModalDecay } from '../../../core/modes/modal-decay';
import { modeKind } from '../../../core/modes/shell-modes';
import { modeName } from '../../kit/chart/mode-name';
import { usePlot } from '../../kit/chart/plot-area';

export interface ModalMarksProps {
  readonly modal: readonly ModalDecay[];
}

export function ModalMarks({ modal }: ModalMarksProps): ReactElement {
  const { x, y } = usePlot();
  return (
    <g className="modal-marks">
      {modal.map((mode) => {
        const kind = modeKind(mode.order);
        const [at, height] = [x(mode.frequencyHz), y(mode.decayS)];
        const name = `${modeName(mode.order)}, ${kind}: ${mode.frequencyHz.toFixed(1)} Hz, ${mode.decayS.toFixed(2)} s, ${mode.bandwidthHz.toFixed(1)} Hz wide${mode.extrapolated ? '; coefficients held from the lowest octave that is published' : ''}`;
        return (
          <g key={mode.order.join()} className={`modal modal-${kind}`}>
            <title>{name}</title>
            {kind === 'axial' ? (
              <rect x={at - 3} y={height - 3} width={6} height={6} />
            ) : kind === 'tangential' ? (
              <circle cx={at} cy={height} r={2.6} />
            ) : (
              <path d={`M${at - 2.5},${height - 2.5} l5,5 m0,-5 l-5,5`} />
            )}
          </g>
        );
      })}
    </g>
  );
}
