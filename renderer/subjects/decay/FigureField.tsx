/**
 * A figure of the design. What cannot be built stays in the field with the sentence of the fault, which
 * names the nearest value; a fault that another field has brought about stands under it, too.
 */

import type { ReactElement } from 'react';
import type { Design } from '../../../core/absorbers/design';
import { designFaults } from '../../../core/absorbers/design-faults';
import { fineFigure } from '../../../core/quantity/fine-length';
import { commaDoubt, parseLength } from '../../../core/quantity/length';
import { FIGURE_UNITS, parseFigure } from '../../../core/quantity/typed-figure';
import { TypedField } from '../../kit/controls/TypedField';
import { useSession } from '../../state/session';
import { useBench } from './bench-store';
import { useEvaluation } from './use-evaluation';

export interface BenchFieldProps {
  readonly label: string;
  /** Which of several, for a screen reader; the eye sees it from the place. */
  readonly which?: string;
  readonly value: number;
  /** Path of the field in the design, as faults have it. */
  readonly field: string;
  /** The design with another value in this field. */
  readonly withValue: (value: number) => Design;
}

/** What was typed, in the unit of the design, or a sentence. */
type Read = (text: string) => number | string;

interface ShownProps extends BenchFieldProps {
  readonly unit: string;
  readonly shown: string;
  readonly read: Read;
}

function BenchField(props: ShownProps): ReactElement {
  const { label, which, unit, shown, read, field, withValue } = props;
  const units = useSession((session) => session.units);
  const setDesign = useBench((bench) => bench.setDesign);
  const take = (text: string): string | null => {
    const value = read(text);
    if (typeof value === 'string') return value;
    const design = withValue(value);
    const fault = designFaults(design, units).find((known) => known.field === field);
    if (fault) return fault.sentence;
    setDesign(design);
    return null;
  };
  return (
    <>
      <TypedField
        className="field-small"
        inputMode="text"
        shown={shown}
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

/** A figure with one unit everywhere: flow resistivity and resistance are told in SI units. */
export function FigureField(props: BenchFieldProps & { readonly unit: string }): ReactElement {
  const { label, unit, value } = props;
  const read = (text: string): number | string => {
    const doubt = commaDoubt(text);
    if (doubt !== null) return doubt;
    const number = Number(text.trim().replace(',', '.'));
    return text.trim() === '' || !Number.isFinite(number)
      ? `${label} must be a number in ${unit}.`
      : number;
  };
  return <BenchField {...props} shown={String(Math.round(value))} read={read} />;
}

/** A length too fine for metres or feet: millimetres, or inches with fractions. */
export function FineField(props: BenchFieldProps): ReactElement {
  const units = useSession((session) => session.units);
  const read = (text: string): number | string => {
    const parsed = parseLength(text, units, 'fine');
    if (parsed.ok) return parsed.metres;
    return units === 'metric'
      ? parsed.sentence.replace('4.03 m or 403 cm', '12 mm or 12.5')
      : parsed.sentence.replace('13\' 2 1/2" or 158 1/2 in', '1/2 or 0.5');
  };
  return (
    <BenchField
      {...props}
      unit={units === 'metric' ? 'mm' : 'in'}
      shown={fineFigure(props.value, units)}
      read={read}
    />
  );
}

/** Mass of a square metre or of a square foot. */
export function SurfaceMassField(props: BenchFieldProps): ReactElement {
  const units = useSession((session) => session.units);
  const unit = FIGURE_UNITS.massPerArea[units];
  const read = (text: string): number | string => {
    const parsed = parseFigure(text, 'massPerArea', units);
    return parsed.ok
      ? parsed.value
      : (parsed.sentence ?? `${props.label} must be a number in ${unit.name}.`);
  };
  return (
    <BenchField
      {...props}
      unit={unit.name}
      shown={String(Number(unit.toShown(props.value).toFixed(2)))}
      read={read}
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
