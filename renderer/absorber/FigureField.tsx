/**
 * A figure of the design. What cannot be built stays in the field with the sentence of the fault, which
 * names the nearest value; a fault that another field has brought about stands under it, too.
 */

import type { ReactElement } from 'react';
import type { Design } from '../../core/absorbers/design';
import { designFaults } from '../../core/absorbers/design-faults';
import { METRES_PER_INCH } from '../../core/quantity/length';
import { TypedField } from '../controls/TypedField';
import { useSession } from '../state/session';
import { useBench } from './bench-store';
import { useEvaluation } from './use-evaluation';

export interface FigureFieldProps {
  readonly label: string;
  /** Which of several, for a screen reader; the eye sees it from the place. */
  readonly which?: string;
  readonly unit: string;
  readonly value: number;
  readonly digits: number;
  /** Path of the field in the design, as faults have it. */
  readonly field: string;
  /** The design with another value in this field. */
  readonly withValue: (value: number) => Design;
  /** How many of the shown unit make one of the design's. */
  readonly factor?: number;
}

export function FigureField(props: FigureFieldProps): ReactElement {
  const { label, which, unit, value, digits, field, withValue, factor = 1 } = props;
  const units = useSession((session) => session.units);
  const setDesign = useBench((bench) => bench.setDesign);
  const take = (text: string): string | null => {
    const number = Number(text.trim().replace(',', '.'));
    if (text.trim() === '' || !Number.isFinite(number)) {
      return `${label} must be a number in ${unit}.`;
    }
    const design = withValue(number / factor);
    const fault = designFaults(design, units).find((known) => known.field === field);
    if (fault) return fault.sentence;
    setDesign(design);
    return null;
  };
  return (
    <>
      <TypedField
        className="field-small"
        inputMode="decimal"
        shown={String(Number((value * factor).toFixed(digits)))}
        label={
          <>
            {label}
            {which === undefined ? null : <span className="for-readers">, {which},</span>}{' '}
            <span className="unit">{unit}</span>
          </>
        }
        onTake={take}
      />
      <FieldFault field={field} withValue={withValue} />
    </>
  );
}

/** A length too fine for metres or feet: millimetres or decimal inches. */
export function FineField(
  props: Omit<FigureFieldProps, 'unit' | 'digits' | 'factor'>,
): ReactElement {
  const metric = useSession((session) => session.units === 'metric');
  return (
    <FigureField
      {...props}
      unit={metric ? 'mm' : 'in'}
      digits={metric ? 2 : 3}
      factor={metric ? 1000 : 1 / METRES_PER_INCH}
    />
  );
}

export interface FieldFaultProps {
  readonly field: string;
  readonly withValue: (value: number) => Design;
}

/** The present design's fault in one field, with the nearest value to take. */
export function FieldFault({ field, withValue }: FieldFaultProps): ReactElement | null {
  const { design, setDesign } = useBench();
  const fault = useEvaluation(design).faults.find((known) => known.field === field);
  if (!fault) return null;
  return (
    <div className="bench-fault" role="alert">
      <p className="complaint">{fault.sentence}</p>
      <button type="button" className="apply" onClick={() => setDesign(withValue(fault.nearest))}>
        Take the nearest
      </button>
    </div>
  );
}
