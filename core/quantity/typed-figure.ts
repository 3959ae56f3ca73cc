/**
 * Figures other than lengths, as they are shown and typed: in the chosen unit, or in any other that is
 * typed with them. Values are SI inside.
 */

import { commaDoubt, METRES_PER_FOOT, type LengthUnits } from './length';
import { KILOGRAMS_PER_POUND } from './measures';

export interface FigureUnit {
  /** As it stands beside a field. */
  readonly name: string;
  /** As it may be typed, in small letters and without blanks. */
  readonly typed: readonly string[];
  readonly toShown: (value: number) => number;
  readonly fromShown: (shown: number) => number;
}

export type Quantity = 'temperature' | 'area' | 'massPerArea';

const scaled = (name: string, typed: readonly string[], factor: number): FigureUnit => ({
  name,
  typed,
  toShown: (value) => value * factor,
  fromShown: (shown) => shown / factor,
});

const FAHRENHEIT: FigureUnit = {
  name: '°F',
  typed: ['f', '°f', 'fahrenheit', 'degf'],
  toShown: (celsius) => celsius * 1.8 + 32,
  fromShown: (fahrenheit) => (fahrenheit - 32) / 1.8,
};

/** Degrees Celsius, square metres, kilograms a square metre, with what stands for them in feet and inches. */
export const FIGURE_UNITS: Readonly<Record<Quantity, Readonly<Record<LengthUnits, FigureUnit>>>> = {
  temperature: {
    metric: scaled('°C', ['c', '°c', 'celsius', 'degc'], 1),
    imperial: FAHRENHEIT,
  },
  area: {
    metric: scaled('m²', ['m2', 'm²', 'sqm'], 1),
    imperial: scaled('sq ft', ['sqft', 'ft2', 'ft²', 'sf'], 1 / METRES_PER_FOOT ** 2),
  },
  massPerArea: {
    metric: scaled('kg/m²', ['kg/m2', 'kg/m²'], 1),
    imperial: scaled(
      'lb/sq ft',
      ['lb/sqft', 'lb/ft2', 'lb/ft²', 'psf'],
      METRES_PER_FOOT ** 2 / KILOGRAMS_PER_POUND,
    ),
  },
};

export type ParsedFigure =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly sentence: string | null };

/**
 * Read `text` as a figure in SI units; a bare number is in the unit of `units`. Where it is no number
 * there is no sentence: whoever asks knows the range to tell.
 */
export function parseFigure(text: string, quantity: Quantity, units: LengthUnits): ParsedFigure {
  const clean = text.trim().toLowerCase().replace('−', '-');
  const doubt = commaDoubt(clean);
  if (doubt !== null) return { ok: false, sentence: doubt };
  const parts = /^(-?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*(.*)$/.exec(clean);
  if (!parts) return { ok: false, sentence: null };
  const word = (parts[2] ?? '').replace(/[\s.]/g, '');
  const known = FIGURE_UNITS[quantity];
  const unit =
    word === ''
      ? known[units]
      : Object.values(known).find((candidate) => candidate.typed.includes(word));
  if (!unit) return { ok: false, sentence: null };
  const value = unit.fromShown(Number((parts[1] ?? '').replace(',', '.')));
  // Without the dust of a conversion there and back.
  return { ok: true, value: Number(value.toPrecision(12)) };
}

/** A limit as shown, moved inward to `digits` decimals. */
export function shownLimit(
  value: number,
  side: 'low' | 'high',
  { toShown }: FigureUnit,
  digits: number,
): number {
  const scale = 10 ** digits;
  const at = Number((toShown(value) * scale).toPrecision(12));
  return (side === 'low' ? Math.ceil(at) : Math.floor(at)) / scale;
}
