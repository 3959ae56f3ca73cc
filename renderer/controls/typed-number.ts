/** A number as typed, or the sentence that says why it cannot be taken. */

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
  const { label, unit, low, high, whole = false } = range;
  const typed = text.trim();
  const value = Number(typed.replace(',', '.'));
  const inRange = typed !== '' && Number.isFinite(value) && value >= low && value <= high;
  if (inRange && (!whole || Number.isInteger(value))) return { ok: true, value };
  const kind = whole ? 'a whole number' : 'a number';
  const last = unit === '' ? `${high}` : `${high} ${unit}`;
  return { ok: false, sentence: `${label} must be ${kind} from ${low} to ${last}.` };
}
