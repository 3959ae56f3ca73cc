/** Lengths too fine for metres or feet: holes, slots, boards. Millimetres, or inches in fractions of a drill. */

import { METRES_PER_INCH, roundLength, type LengthUnits } from './length';

/** The finest fraction of a drill or a ruler, m. */
const DRILL_M = METRES_PER_INCH / 64;
/** Lengths are kept to a hundredth of a millimetre. */
const DUST_M = 6e-6;

/** The figure alone, as a field shows it: `12.7`, `1/2`, `3 1/2`, `0.472`. */
export function fineFigure(lengthM: number, units: LengthUnits): string {
  if (units === 'metric') return String(Number((lengthM * 1000).toFixed(2)));
  const parts = Math.round(lengthM / DRILL_M);
  if (Math.abs(lengthM - parts * DRILL_M) > DUST_M) {
    return String(Number((lengthM / METRES_PER_INCH).toFixed(3)));
  }
  const whole = Math.floor(parts / 64);
  let [top, below] = [parts % 64, 64];
  while (top > 0 && top % 2 === 0) [top, below] = [top / 2, below / 2];
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${below}` : `${whole} ${top}/${below}`;
}

/** `12.7 mm`, `1/2 in`. */
export const fineText = (lengthM: number, units: LengthUnits): string =>
  `${fineFigure(lengthM, units)} ${units === 'metric' ? 'mm' : 'in'}`;

/** A limit moved inward to what is shown of it: a drill's fraction, or thousandths where that costs much. */
export function insideFine(lengthM: number, side: 'low' | 'high', units: LengthUnits): number {
  if (lengthM <= 0) return lengthM;
  const move = side === 'low' ? Math.ceil : Math.floor;
  const steps =
    units === 'metric' ? [1e-5] : [1 / 16, 1 / 64, 1e-3].map((part) => part * METRES_PER_INCH);
  for (const stepM of steps) {
    const onStep = roundLength(Math.round(lengthM / stepM) * stepM);
    if (Math.abs(onStep - lengthM) < 1e-9) return onStep;
    const moved = roundLength(move(lengthM / stepM) * stepM);
    const isInside = side === 'low' ? moved >= lengthM : moved <= lengthM;
    if (isInside && moved > 0 && Math.abs(moved - lengthM) <= 0.1 * lengthM) return moved;
  }
  return lengthM;
}
