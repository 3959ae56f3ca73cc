/** A figure that is shown and typed in the chosen units and kept in SI: a temperature, an area. */

import type { ReactElement } from 'react';
import { FIGURE_UNITS, type Quantity } from '../../../core/quantity/typed-figure';
import { useSession } from '../../state/session';
import { typedFigure } from './typed-number';
import { TypedField } from './TypedField';

export interface FigureWithUnitProps {
  readonly label: string;
  readonly quantity: Quantity;
  /** In SI units, as the limits are. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly digits: number;
  readonly onChange: (value: number) => void;
}

export function FigureWithUnit(props: FigureWithUnitProps): ReactElement {
  const { label, quantity, value, digits, onChange } = props;
  const units = useSession((session) => session.units);
  const unit = FIGURE_UNITS[quantity][units];
  const take = (text: string): string | null => {
    const typed = typedFigure(text, { ...props, units });
    if (!typed.ok) return typed.sentence;
    onChange(typed.value);
    return null;
  };
  return (
    <TypedField
      className="field-small"
      inputMode="text"
      shown={String(Number(unit.toShown(value).toFixed(digits)))}
      label={
        <>
          {label} <span className="unit">{unit.name}</span>
        </>
      }
      onTake={take}
    />
  );
}
