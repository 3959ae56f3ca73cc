/** The modes behind one frequency at one seat: how strong each is there, and whether it adds or takes away. */

import type { ReactElement } from 'react';
import type { Point } from '../../../core/room/project';
import { useFineModes, useFineRequest } from '../../pressure/built-store';
import { useResult } from '../../state/use-result';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { signed } from '../../kit/chart/signed';
import { Source } from '../../kit/Note';
import { FactTable } from '../../kit/table/FactTable';

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
    <FactTable
      title="Modes behind this frequency"
      caption={frequencyHz === null ? 'What is behind it' : `Behind ${frequencyHz.toFixed(1)} Hz`}
      readout={seatName}
      scrolls="Modes at this frequency"
      rows={found}
      keyOf={({ mode }) => String(mode)}
      columns={[
        { key: 'mode', head: 'mode', cell: ({ mode }) => <ShortName name={nameOf(mode)} /> },
        {
          key: 'hz',
          head: 'Hz',
          cell: ({ mode, frequencyHz: modeHz }) => (mode < 0 ? '' : modeHz.toFixed(1)),
        },
        { key: 'level', head: 'dB', cell: ({ size }) => signed(20 * Math.log10(size)) },
        { key: 'effect', head: 'here it', cell: ({ againstDeg }) => effect(againstDeg) },
      ]}
      empty={
        <p className="empty">
          {frequencyHz === null
            ? 'Press a peak or a dip in the chart: its modes are named here, and the drawing is painted with what all subwoofers make at that frequency.'
            : 'Nothing is heard there: this seat, or every subwoofer, is outside the free space.'}
        </p>
      }
    />
  );
}

/** A mixed mode without its parts, which are in its note. */
function ShortName({ name }: { readonly name: string }): ReactElement {
  const short = name.replace(/ \(.*/, '');
  return short === name ? <>{name}</> : <Source of={short}>{name}</Source>;
}

const effect = (againstDeg: number): string =>
  againstDeg < 90 - ACROSS_DEG
    ? '+ adds'
    : againstDeg > 90 + ACROSS_DEG
      ? '− takes away'
      : '⊥ across';
