/**
 * The response without modes: (A - k2) x = b solved at every frequency on the same elements, with
 * k2 = (w2 - 2 i d w)/c2. With S the real part, S = A - Re k2 = L D LT, what is left is
 * (1 + i e S^-1) x = S^-1 b, solved by conjugate gradients without conjugation to 1e-11.
 */

import { weightsAt } from '../../../../core/shape-modes/evaluate';
import { divide } from '../../../../core/shape-modes/elements';
import { factorise } from '../../../../core/shape-modes/factor';
import { shapeGrid } from '../../../../core/shape-modes/grid';
import { largestLocal, solveFour } from '../../../../core/shape-modes/solve';
import type { ShapeModes, ShapeSpace } from '../../../../core/shape-modes/shape-modes';
import { eliminationTree } from '../../../../core/shape-modes/tree';
import { finish } from '../../../../core/quantity/slices';
import { dampingPerS } from '../../../../core/response/path';
import type { Point } from '../../../../core/room/project';

/** Levels re the free field at 1 m: `levels[source][receiver][frequency]`. At most two sources. */
export function directLevels(
  space: ShapeSpace,
  modes: ShapeModes,
  sources: readonly Point[],
  receivers: readonly Point[],
  frequenciesHz: Float64Array,
  decayS: number,
): number[][][] {
  const gridded = shapeGrid(space.size, space.solids);
  if (!gridded.ok) throw new Error('The room has no grid.');
  const elements = divide(
    gridded.grid,
    (2 * Math.PI * modes.limitHz) / space.speedMS,
    modes.quality,
  );
  const tree = eliminationTree(elements);
  const scale = modes.mass.map((m) => 1 / Math.sqrt(m));
  const count = scale.length;
  // Lanes: real and imaginary part of the first source, then of the second.
  const load = new Float64Array(4 * count);
  sources.forEach((source, n) => {
    const at = weightsAt(modes, source);
    at?.rows.forEach((row, i) => {
      load[4 * row + 2 * n] =
        (load[4 * row + 2 * n] ?? 0) + (at.weights[i] ?? 0) * (scale[row] ?? 0);
    });
  });
  const levels = sources.map(() => receivers.map((): number[] => []));
  for (const hz of frequenciesHz) {
    const omega = 2 * Math.PI * hz;
    const e = (2 * dampingPerS(decayS) * omega) / space.speedMS ** 2;
    const factor = finish(factorise(elements, tree, scale, (omega / space.speedMS) ** 2));
    const local = new Float64Array(4 * largestLocal(factor) + 8);
    const solved = (block: Float64Array): Float64Array => {
      const copy = block.slice();
      solveFour(factor, copy, local);
      return copy;
    };
    const apply = (block: Float64Array): Float64Array => {
      const image = solved(block);
      // Times i e, and the vector itself.
      return block.map(
        (value, at) =>
          value + (at % 2 === 0 ? -e * (image[at + 1] ?? 0) : e * (image[at - 1] ?? 0)),
      );
    };
    const answer = conjugateGradients(apply, solved(load));
    sources.forEach((_, n) =>
      receivers.forEach((receiver, r) => {
        const at = weightsAt(modes, receiver);
        let [re, im] = [0, 0];
        at?.rows.forEach((row, i) => {
          const weight = (at.weights[i] ?? 0) * (scale[row] ?? 0);
          re += weight * (answer[4 * row + 2 * n] ?? 0);
          im += weight * (answer[4 * row + 2 * n + 1] ?? 0);
        });
        levels[n]?.[r]?.push(20 * Math.log10(4 * Math.PI * Math.hypot(re, im)));
      }),
    );
  }
  return levels;
}

type Complex = readonly [number, number];

/** Two complex systems side by side. */
function conjugateGradients(
  apply: (block: Float64Array) => Float64Array,
  right: Float64Array,
): Float64Array {
  const x = new Float64Array(right.length);
  const r = right.slice();
  let p = r.slice();
  const product = (a: Float64Array, b: Float64Array, lane: number): Complex => {
    let [re, im] = [0, 0];
    for (let at = 2 * lane; at < a.length; at += 4) {
      const [ar, ai, br, bi] = [a[at] ?? 0, a[at + 1] ?? 0, b[at] ?? 0, b[at + 1] ?? 0];
      re += ar * br - ai * bi;
      im += ar * bi + ai * br;
    }
    return [re, im];
  };
  const over = (a: Complex, b: Complex): Complex => {
    const square = b[0] ** 2 + b[1] ** 2;
    if (square === 0) return [0, 0];
    return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square];
  };
  const add = (to: Float64Array, by: Complex, from: Float64Array, lane: number): void => {
    for (let at = 2 * lane; at < to.length; at += 4) {
      const [fr, fi] = [from[at] ?? 0, from[at + 1] ?? 0];
      to[at] = (to[at] ?? 0) + by[0] * fr - by[1] * fi;
      to[at + 1] = (to[at + 1] ?? 0) + by[0] * fi + by[1] * fr;
    }
  };
  const norm = (a: Float64Array): number =>
    Math.sqrt(a.reduce((sum, value) => sum + value * value, 0));
  const start = norm(right);
  let rho = [0, 1].map((lane) => product(r, r, lane));
  for (let turn = 0; turn < 300 && norm(r) > 1e-11 * start; turn++) {
    const q = apply(p);
    const next = p.slice();
    for (const lane of [0, 1]) {
      const alpha = over(rho[lane] ?? [0, 0], product(p, q, lane));
      add(x, alpha, p, lane);
      add(r, [-alpha[0], -alpha[1]], q, lane);
    }
    const now = [0, 1].map((lane) => product(r, r, lane));
    next.set(r);
    for (const lane of [0, 1]) add(next, over(now[lane] ?? [0, 0], rho[lane] ?? [0, 0]), p, lane);
    rho = now;
    p = next;
  }
  if (norm(r) > 1e-9 * start) throw new Error('The direct solve did not converge.');
  return x;
}
