/**
 * What the shell's modes above the last one add. The sum over all orders along one axis has a closed form,
 *
 *     sum_n e_n cos(n pi x/L) cos(n pi x0/L)/((n pi/L)2 - q2)
 *         = -L (cos q(L - |x - x0|) + cos q(L - x - x0)) / (2 q sin qL),
 *
 * which leaves a double sum that falls exponentially with the distance along that axis. Checked
 * against the plain sum in the tests.
 */

import { shellModes } from '../modes/shell-modes';
import { farCorner } from '../room/point';
import type { Point, ShellSize } from '../room/project';
import { resonance, type Tail } from './path';

/** Terms of the double sum that are smaller than this share are left out. */
const SMALLEST_LOG = 16;
/** Orders looked at along each of the two axes, at most. */
const MOST_ORDERS = 120;

/**
 * The tail of the shell beyond its modes to `limitHz`: the whole sum in closed form less those modes,
 * both with the same damping. The places may not coincide.
 */
export function shellTail(
  size: ShellSize,
  speedMS: number,
  limitHz: number,
  source: Point,
  receiver: Point,
): Tail {
  const lengths = farCorner(size);
  const volume = lengths[0] * lengths[1] * lengths[2];
  const cosine = (n: number, axis: number): number => {
    const by = (n * Math.PI) / lengths[axis]!;
    return (n === 0 ? 1 : 2) * Math.cos(by * source[axis]!) * Math.cos(by * receiver[axis]!);
  };
  const listed = shellModes(size, speedMS, limitHz).map(({ frequencyHz, order }) => ({
    frequencyHz,
    product: cosine(order[0], 0) * cosine(order[1], 1) * cosine(order[2], 2),
  }));
  const apart = lengths.map((_, axis) => Math.abs(source[axis]! - receiver[axis]!));
  const closed = apart.indexOf(Math.max(...apart));
  const [u, v] = [0, 1, 2].filter((axis) => axis !== closed) as [number, number];
  const [length, distance] = [lengths[closed]!, apart[closed]!];
  const sum = source[closed]! + receiver[closed]!;

  return (frequencyHz, damping) => {
    const omega = 2 * Math.PI * frequencyHz;
    const [kRe, kIm] = [(omega / speedMS) ** 2, (-2 * damping * omega) / speedMS ** 2];
    let [re, im] = [0, 0];
    for (let n = 0; n < MOST_ORDERS; n++) {
      const across = ((n * Math.PI) / lengths[u]!) ** 2;
      if ((across - kRe) * distance ** 2 > SMALLEST_LOG ** 2) break;
      for (let m = 0; m < MOST_ORDERS; m++) {
        const whole = across + ((m * Math.PI) / lengths[v]!) ** 2;
        if ((whole - kRe) * distance ** 2 > SMALLEST_LOG ** 2) break;
        const by = (cosine(n, u) * cosine(m, v) * length) / volume;
        // g = i q, Re g >= 0: (cosh g(L - d) + cosh g(L - s)) / (2 g sinh gL), by decaying exponentials.
        const term = along(whole - kRe, -kIm, length, distance, sum);
        re += by * term[0];
        im += by * term[1];
      }
    }
    const zero = resonance(0, frequencyHz, damping, speedMS);
    re -= zero[0] / volume;
    im -= zero[1] / volume;
    for (const mode of listed) {
      const term = resonance(mode.frequencyHz, frequencyHz, damping, speedMS);
      re -= (mode.product * term[0]) / volume;
      im -= (mode.product * term[1]) / volume;
    }
    return { re, im };
  };
}

/** (cosh g(L - d) + cosh g(L - s))/(2 g sinh gL) with g2 given, as real and imaginary part. */
function along(
  squareRe: number,
  squareIm: number,
  length: number,
  distance: number,
  sum: number,
): readonly [number, number] {
  const size = Math.hypot(squareRe, squareIm);
  const gRe = Math.sqrt(Math.max(0, (size + squareRe) / 2));
  const gIm = Math.sqrt(Math.max(0, (size - squareRe) / 2)) * (squareIm < 0 ? -1 : 1);
  let [upRe, upIm] = [0, 0];
  const add = (by: number): void => {
    const e = Math.exp(-gRe * by);
    upRe += e * Math.cos(gIm * by);
    upIm -= e * Math.sin(gIm * by);
  };
  add(distance);
  add(2 * length - distance);
  add(sum);
  add(2 * length - sum);
  const e = Math.exp(-2 * gRe * length);
  const [lowRe, lowIm] = [1 - e * Math.cos(2 * gIm * length), e * Math.sin(2 * gIm * length)];
  const [downRe, downIm] = [2 * (gRe * lowRe - gIm * lowIm), 2 * (gRe * lowIm + gIm * lowRe)];
  const square = downRe * downRe + downIm * downIm;
  return [(upRe * downRe + upIm * downIm) / square, (upIm * downRe - upRe * downIm) / square];
}
