/** Eigenvectors from the Lanczos basis. */

import { expectAtLeast, expectLength } from '../quantity/shape';
import type { LanczosResult } from './lanczos';

/** Rows that are worked on together, so that the basis stays in the cache. */
const STRIPE = 16;

/**
 * Mode shapes at the points: row point, column mode, from the `first` pair on; each divided by the
 * square root of the mass and multiplied by `factor`.
 */
export function* shapesOf(
  { basis, parts }: LanczosResult,
  first: number,
  scale: Float64Array,
  factor: number,
): Generator<number, Float64Array> {
  const count = scale.length;
  const modes = parts.length - first;
  const shapes = new Float64Array(count * modes);
  const size = 4 * basis.length;
  for (const block of basis) expectLength('A block of the basis', block, 4 * count);
  for (const part of parts) expectAtLeast('The parts of a mode', part, size);
  const groups = Math.ceil(modes / 4);
  const packed = Array.from({ length: groups }, (_, group) => {
    const four = new Float64Array(4 * size);
    for (let m = 0; m < 4; m++) {
      const part = parts[first + 4 * group + m];
      for (let i = 0; part && i < size; i++) four[4 * i + m] = part[i]!;
    }
    return four;
  });
  // The stripe of the basis, its columns side by side.
  const stripe = new Float64Array((STRIPE + 1) * size);
  for (let from = 0; from < count; from += STRIPE) {
    const rows = Math.min(STRIPE, count - from);
    basis.forEach((block, b) => {
      for (let i = 0; i < rows; i++) {
        const [to, at] = [i * size + 4 * b, 4 * (from + i)];
        stripe[to] = block[at]!;
        stripe[to + 1] = block[at + 1]!;
        stripe[to + 2] = block[at + 2]!;
        stripe[to + 3] = block[at + 3]!;
      }
    });
    for (let group = 0; group < groups; group++) {
      const four = packed[group];
      if (!four) continue;
      for (let i = 0; i < rows; i += 2) {
        multiplyTwo(
          stripe,
          i * size,
          four,
          size,
          shapes,
          (from + i) * modes + 4 * group,
          modes,
          i + 1 < rows,
          Math.min(4, modes - 4 * group),
        );
      }
    }
    for (let i = 0; i < rows; i++) {
      const by = scale[from + i]! * factor;
      for (let at = (from + i) * modes; at < (from + i + 1) * modes; at++)
        shapes[at] = shapes[at]! * by;
    }
    if ((from / STRIPE) % 32 === 31) yield from / count;
  }
  return shapes;
}

/** Two rows of the basis times four modes. */
function multiplyTwo(
  rows: Float64Array,
  row: number,
  four: Float64Array,
  size: number,
  into: Float64Array,
  at: number,
  stride: number,
  both: boolean,
  columns: number,
): void {
  let s0 = 0,
    s1 = 0,
    s2 = 0,
    s3 = 0,
    u0 = 0,
    u1 = 0,
    u2 = 0,
    u3 = 0;
  for (let k = 0; k < size; k++) {
    const a = rows[row + k]!;
    const b = rows[row + size + k]!;
    const f0 = four[4 * k]!;
    s0 += a * f0;
    u0 += b * f0;
    const f1 = four[4 * k + 1]!;
    s1 += a * f1;
    u1 += b * f1;
    const f2 = four[4 * k + 2]!;
    s2 += a * f2;
    u2 += b * f2;
    const f3 = four[4 * k + 3]!;
    s3 += a * f3;
    u3 += b * f3;
  }
  into[at] = s0;
  if (columns > 1) into[at + 1] = s1;
  if (columns > 2) into[at + 2] = s2;
  if (columns > 3) into[at + 3] = s3;
  if (!both) return;
  into[at + stride] = u0;
  if (columns > 1) into[at + stride + 1] = u1;
  if (columns > 2) into[at + stride + 2] = u2;
  if (columns > 3) into[at + stride + 3] = u3;
}
