/**
 * Limits as a person reads them: in whole units that lie inside the range, so that what is said can be
 * typed. A limit that already stands on the tape is said as it is.
 */

import {
  formatLength,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  roundLength,
  type LengthUnits,
} from './length';

/** Steps in which a limit may be said, coarsest first, with the share of it that this may cost. */
const STEPS: Readonly<Record<LengthUnits, readonly { readonly stepM: number; most: number }[]>> = {
  metric: [
    { stepM: 0.01, most: 0.01 },
    { stepM: 0.001, most: Infinity },
  ],
  imperial: [
    { stepM: METRES_PER_FOOT, most: 0.01 },
    ...[1, 2, 4, 8].map((part) => ({ stepM: METRES_PER_INCH / part, most: 0.3 })),
    { stepM: METRES_PER_INCH / 16, most: Infinity },
  ],
};

/** What the eye sees of a length: whole millimetres, sixteenths of an inch. */
const SEEN_M: Readonly<Record<LengthUnits, number>> = {
  metric: 0.001,
  imperial: METRES_PER_INCH / 16,
};
/** Lengths are kept to a hundredth of a millimetre, so a sixteenth is kept within half of that. */
const DUST_M = 6e-6;

const onStep = (lengthM: number, stepM: number): boolean =>
  Math.abs(lengthM - Math.round(lengthM / stepM) * stepM) <= DUST_M;

/** `lengthM` moved inward (a `low` limit up, a `high` one down) to a figure on the tape of `units`. */
export function insideLimit(lengthM: number, side: 'low' | 'high', units: LengthUnits): number {
  if (lengthM <= 0 || onStep(lengthM, SEEN_M[units])) return lengthM;
  const move = side === 'low' ? Math.ceil : Math.floor;
  for (const { stepM, most } of STEPS[units]) {
    const moved = move(lengthM / stepM) * stepM;
    if (moved > 0 && Math.abs(moved - lengthM) <= most * lengthM) return roundLength(moved);
  }
  return lengthM;
}

/** Both limits of a range as they are said; the bare ones where no figure on the tape lies between. */
export function insideLimits(
  lowM: number,
  highM: number,
  units: LengthUnits,
): readonly [number, number] {
  const inside = [insideLimit(lowM, 'low', units), insideLimit(highM, 'high', units)] as const;
  return inside[0] <= inside[1] ? inside : [lowM, highM];
}

/** `3' 4"`, `98'`: a limit, whole feet without their inches. */
export function limitText(lengthM: number, units: LengthUnits): string {
  const text = formatLength(lengthM, units);
  return units === 'imperial' ? text.replace(/' 0"$/, "'") : text;
}
