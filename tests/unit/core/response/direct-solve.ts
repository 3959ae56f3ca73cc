/**
 * The response without modes, solved at every frequency on the same elements: (S + i D) x = b, where
 * S = A - (w/c)2 is factorised as L D LT and D, diagonal, is what is lost: 2 d w/c2 in the air, and
 * (w/c) b on every face of admittance b. Conjugate gradients without conjugation, S^-1 before them,
 * to 1e-11.
 */

import { weightsAt } from '../../../../core/room-modes/evaluate';
import { elementsIn } from '../../../../core/room-modes/elements';
import { factorise } from '../../../../core/room-modes/factor';
import { gllRule } from '../../../../core/room-modes/gll';
import { airGrid } from '../../../../core/room-modes/grid';
import { largestLocal, solveFour } from '../../../../core/room-modes/solve';
import type { RoomModes, RoomSpace } from '../../../../core/room-modes/room-modes';
import { eliminationTree } from '../../../../core/room-modes/tree';
import { finish } from '../../../../core/quantity/slices';
import { dampingPerS } from '../../../../core/response/path';
import type { Point } from '../../../../core/room/project';

/** What is lost at one angular frequency: the diagonal of D by row, 1/m2. */
export type Losses = (omega: number) => Float64Array;

/** The same decay for all sound. */
export function evenLosses(modes: RoomModes, speedMS: number, decayS: number): Losses {
  return (omega) => modes.mass.map(() => (2 * dampingPerS(decayS) * omega) / speedMS ** 2);
}

/**
 * Faces of real admittance in a shell without fittings: `admittances[axis]` of its low and its high side.
 * A row's volume is the product of its weights along the axes, so a face has that over the end's weight.
 */
export function faceLosses(
  modes: RoomModes,
  speedMS: number,
  admittances: readonly (readonly [number, number])[],
): Losses {
  const { axes, rowOf } = modes;
  const counts = axes.map((axis) => axis.points.length);
  const perWave = new Float64Array(modes.mass.length);
  axes.forEach((axis, n) => {
    const last = axis.degrees.length - 1;
    const endM = [0, last].map((element) => {
      const half = ((axis.ends[element + 1] ?? 0) - (axis.ends[element] ?? 0)) / 2;
      return half * (gllRule(axis.degrees[element] ?? 1).weights[0] ?? 0);
    });
    rowOf.forEach((row, place) => {
      const across = [
        Math.floor(place / ((counts[1] ?? 1) * (counts[2] ?? 1))),
        Math.floor(place / (counts[2] ?? 1)) % (counts[1] ?? 1),
        place % (counts[2] ?? 1),
      ][n];
      const side = across === 0 ? 0 : across === (counts[n] ?? 0) - 1 ? 1 : null;
      if (row < 0 || side === null) return;
      perWave[row] = (perWave[row] ?? 0) + (admittances[n]?.[side] ?? 0) / (endM[side] ?? 1);
    });
  });
  return (omega) => perWave.map((value) => (omega / speedMS) * value);
}

/** Levels re the free field at 1 m: `levels[source][receiver][frequency]`. At most two sources. */
export function directLevels(
  space: RoomSpace,
  modes: RoomModes,
  sources: readonly Point[],
  receivers: readonly Point[],
  frequenciesHz: Float64Array,
  losses: Losses,
): number[][][] {
  const gridded = airGrid(space.size, space.solids);
  if (!gridded.ok) throw new Error('The room has no grid.');
  const elements = elementsIn(
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
    const lost = losses(omega);
    const factor = finish(factorise(elements, tree, scale, (omega / space.speedMS) ** 2));
    const local = new Float64Array(4 * largestLocal(factor) + 8);
    const solved = (block: Float64Array): Float64Array => {
      const copy = block.slice();
      solveFour(factor, copy, local);
      return copy;
    };
    const answer = conjugateGradients(solved, lost, load);
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

/** Two complex systems (S + i `lost`) x = `right` side by side; `solved` gives S^-1 of a block. */
function conjugateGradients(
  solved: (block: Float64Array) => Float64Array,
  lost: Float64Array,
  right: Float64Array,
): Float64Array {
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
  const x = new Float64Array(right.length);
  const r = right.slice();
  let z = solved(r);
  let p = z.slice();
  // S p, followed beside p.
  let image = r.slice();
  const start = norm(r);
  let rho = [0, 1].map((lane) => product(r, z, lane));
  for (let turn = 0; turn < 300 && norm(r) > 1e-11 * start; turn++) {
    const q = image.slice();
    lost.forEach((loss, row) => {
      for (let at = 4 * row; at < 4 * row + 4; at += 2) {
        q[at] = (q[at] ?? 0) - loss * (p[at + 1] ?? 0);
        q[at + 1] = (q[at + 1] ?? 0) + loss * (p[at] ?? 0);
      }
    });
    for (const lane of [0, 1]) {
      const alpha = over(rho[lane] ?? [0, 0], product(p, q, lane));
      add(x, alpha, p, lane);
      add(r, [-alpha[0], -alpha[1]], q, lane);
    }
    z = solved(r);
    const now = [0, 1].map((lane) => product(r, z, lane));
    const [nextP, nextImage] = [z.slice(), r.slice()];
    for (const lane of [0, 1]) {
      const beta = over(now[lane] ?? [0, 0], rho[lane] ?? [0, 0]);
      add(nextP, beta, p, lane);
      add(nextImage, beta, image, lane);
    }
    [p, image, rho] = [nextP, nextImage, now];
  }
  if (norm(r) > 1e-9 * start) throw new Error('The direct solve did not converge.');
  return x;
}
