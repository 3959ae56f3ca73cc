/**
 * The natural logarithm by table: x = 2^e m, m = c (1 + r) with c the middle of one of 256 parts of 1
 * to 2, so that |r| < 1/512 and three terms of ln(1 + r) leave less than 4e-12 (r^4/4).
 */

const PARTS = 256;
const bits = new Float64Array(1);
const words = new Uint32Array(bits.buffer);
bits[0] = 1;
/** Which of the two words holds the exponent: depends on the machine's order of bytes. */
const HIGH = words[1] === 0x3ff00000 ? 1 : 0;

/** By the exponent's bits: 2^-e, and e ln 2. */
const scales = Float64Array.from({ length: 2048 }, (_, n) => 2 ** (1023 - n));
const powers = Float64Array.from({ length: 2048 }, (_, n) => (n - 1023) * Math.LN2);
/** By part: 1/c and ln c. */
const inverses = Float64Array.from({ length: PARTS }, (_, n) => 1 / (1 + (n + 0.5) / PARTS));
const logs = Float64Array.from(inverses, (inverse) => -Math.log(inverse));

/** ln x within 5e-12 and rounding, for x from 1e-300 to 1e300; not for zero, negatives or endless. */
export function quickLog(x: number): number {
  bits[0] = x;
  const high = words[HIGH] as number;
  const exponent = high >>> 20;
  const part = (high >>> 12) & (PARTS - 1);
  const r = x * (scales[exponent] as number) * (inverses[part] as number) - 1;
  return (powers[exponent] as number) + (logs[part] as number) + r * (1 - r * (0.5 - r * (1 / 3)));
}
