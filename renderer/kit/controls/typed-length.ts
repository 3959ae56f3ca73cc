/**
 * A length as typed into a field: taken, taken with a doubt about its unit, or refused with the limits
 * in whole units. Where another unit makes sense of a bare number, that reading is offered.
 */

import {
  bareUnit,
  METRES_IN,
  parseLength,
  roundLength,
  type LengthKind,
  type LengthUnit,
  type LengthUnits,
} from '../../../core/quantity/length';
import { insideLimits, limitText } from '../../../core/quantity/limits';

export interface LengthRange {
  readonly label: string;
  readonly lowM: number;
  readonly highM: number;
  readonly units: LengthUnits;
  readonly kind: LengthKind;
}

/** A bare number in another unit: `16 in`. */
export interface Reading {
  readonly text: string;
  readonly metres: number;
}

export type TypedLength =
  | {
      readonly ok: true;
      readonly metres: number;
      /** How it was read, where it could have been meant otherwise. */
      readonly doubt?: { readonly sentence: string; readonly other: Reading };
    }
  | { readonly ok: false; readonly sentence: string; readonly other?: Reading };

/** A limit is shown to the nearest sixteenth of an inch; typed as shown it is taken as the limit. */
const SHOWN_M = 0.0254 / 32;

/** Units that a bare number may have been meant in, likeliest first. */
const OTHERS: Readonly<Record<LengthUnit, readonly LengthUnit[]>> = {
  ft: ['in'],
  in: ['ft', 'mm'],
  m: ['cm', 'mm'],
  cm: ['mm'],
  mm: ['cm'],
};

export function typedLength(text: string, range: LengthRange): TypedLength {
  const { label, lowM, highM, units, kind } = range;
  const parsed = parseLength(text, units, kind);
  if (!parsed.ok) return parsed;
  const { metres, bare } = parsed;
  const within = Math.min(Math.max(metres, lowM), highM);
  const other = bare === undefined ? null : otherReading(bare, range);
  if (Math.abs(metres - within) <= SHOWN_M) {
    // Metres are what a metric field shows, so that a number within the range is no doubt there.
    if (bare === undefined || bare === 0 || !other || units === 'metric' || other.fine) {
      return { ok: true, metres: within };
    }
    const read = `Read as ${bare} ${bareUnit(units, kind)}.`;
    return { ok: true, metres: within, doubt: { sentence: read, other: other.reading } };
  }
  const [low, high] = insideLimits(lowM, highM, units);
  const nearest = metres < lowM ? low : high;
  const read = bare === undefined ? '' : `${bare} was read as ${bare} ${bareUnit(units, kind)}. `;
  const said = (limitM: number): string => limitText(limitM, units);
  return {
    ok: false,
    sentence: `${read}${label} can be ${said(low)} to ${said(high)}; the nearest is ${said(nearest)}.`,
    ...(other ? { other: other.reading } : {}),
  };
}

/** The likeliest other unit in which the number lies within the range. */
function otherReading(
  bare: number,
  { lowM, highM, units, kind }: LengthRange,
): { readonly reading: Reading; readonly fine: boolean } | null {
  const unit = bareUnit(units, kind);
  for (const other of OTHERS[unit]) {
    const metres = roundLength(bare * METRES_IN[other]);
    if (metres >= lowM && metres <= highM) {
      return { reading: { text: `${bare} ${other}`, metres }, fine: other === 'mm' };
    }
  }
  return null;
}
