/** A number as typed, or the sentence that says why it cannot be taken. */

import { commaDoubt, type LengthUnits } from '../../../core/quantity/length';
import {
  FIGURE_UNITS,
  parseFigure,
  shownLimit,
  type Quantity,
} from '../../../core/quantity/typed-figure';

export interface NumberRange {
  readonly label: string;
  /** Empty for a count. */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** True where nothing lies between two whole numbers: people, seats. */
  readonly whole?: boolean;
}

export type TypedNumber =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly sentence: string };

/** Read `text`; a decimal comma is a decimal point. */
export function typedNumber(text: string, range: NumberRange): TypedNumber {
  const { low, high, whole = false } = range;
  const typed = text.trim();
  const doubt = commaDoubt(typed);
  if (doubt !== null) return { ok: false, sentence: doubt };
  const value = Number(typed.replace(',', '.'));
  const inRange = typed !== '' && Number.isFinite(value) && value >= low && value <= high;
  if (inRange && (!whole || Number.isInteger(value))) return { ok: true, value };
  return { ok: false, sentence: refusal(range) };
}

function refusal({ label, unit, low, high, whole = false }: NumberRange): string {
  const kind = whole ? 'a whole number' : 'a number';
  const last = unit === '' ? `${high}` : `${high} ${unit}`;
  return `${label} must be ${kind} from ${low} to ${last}.`;
}

export interface FigureRange {
  readonly label: string;
  readonly quantity: Quantity;
  readonly units: LengthUnits;
  /** Limits in SI units. */
  readonly low: number;
  readonly high: number;
  /** Decimals of the limits as they are said. */
  readonly limitDigits?: number;
}

/** Read a figure that has a unit of its own in feet and inches; the value is in SI units. */
export function typedFigure(text: string, range: FigureRange): TypedNumber {
  const { label, quantity, units, low, high, limitDigits = 0 } = range;
  const parsed = parseFigure(text, quantity, units);
  if (parsed.ok && parsed.value >= low && parsed.value <= high) return parsed;
  if (!parsed.ok && parsed.sentence !== null) return { ok: false, sentence: parsed.sentence };
  const unit = FIGURE_UNITS[quantity][units];
  const said = refusal({
    label,
    unit: unit.name,
    low: shownLimit(low, 'low', unit, limitDigits),
    high: shownLimit(high, 'high', unit, limitDigits),
  });
  return { ok: false, sentence: said };
}
