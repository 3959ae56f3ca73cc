/** A finding's figure in words, in the units that the person reads. */

import type { Measures } from '../quantity/measures';

/** `value` with its unit (`m`, `Hz`, `s`, `deg`, `dB`, or none). */
export function figureText(value: number, unit: string, measures: Measures): string {
  switch (unit) {
    case 'm':
      return measures.length(value);
    case 'deg':
      return `${value.toFixed(1)} degrees`;
    case 's':
      return `${value.toFixed(2)} s`;
    case 'Hz':
    case 'dB':
      return `${value.toFixed(1)} ${unit}`;
    default:
      return unit === '' ? String(value) : `${value} ${unit}`;
  }
}
