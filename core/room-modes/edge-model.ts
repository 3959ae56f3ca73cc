/**
 * What elements miss at an edge where a solid's corner juts into the air. There the pressure runs as
 * u = a r^(2/3) cos(2 phi/3), phi from one of the two walls, and its slope has no bound, so every
 * frequency comes out too high. How much of the energy is missed is worked out on the very elements
 * around the edge: the singular part alone is solved for on the three of them, driven by its own
 * exact flow through their outer sides. No figure is fitted.
 *
 * The exact energy is the flow's work on the outer sides (u solves Laplace); the elements' is the
 * same work on their own solution, and never more. The slope that the elements show at the edge
 * itself measures a: the next term of the series, r^(4/3), has none there.
 * Its banded Cholesky is kept beside ml-matrix: a whole edge of degree 9 takes 15 ms, the dense
 * decomposition of the same 361 unknowns alone 39. Measured by `npm run bench`.
 * Source of the expansion: P. Grisvard, Elliptic Problems in Nonsmooth Domains (1985), ch. 4.
 */

import { gllRule, interpolation } from './gll';

/** Width and degree of the element on one side of the edge, along one axis. */
export interface EdgeSide {
  readonly widthM: number;
  readonly degree: number;
}

/** The elements around an edge along the two axes normal to it; the solid is where both are `solid`. */
export interface EdgeElements {
  readonly air: readonly [EdgeSide, EdgeSide];
  readonly solid: readonly [EdgeSide, EdgeSide];
}

const POWER = 2 / 3;
/** Quadrature of the smooth flow through an outer side. */
const FLOW_DEGREE = 20;

/**
 * Missed energy (of the integral of |grad u|2 per metre of edge) over the measure of slope at the
 * edge: the sum over the three elements of (width times slope)2 along each axis.
 */
export function missedPerSlope({ air, solid }: EdgeElements): number {
  const degrees = [
    [air[0].degree, solid[0].degree],
    [air[1].degree, solid[1].degree],
  ] as const;
  const [pa, pb] = [degrees[0][0], degrees[1][0]];
  const [nx, ny] = [pa + degrees[0][1] + 1, pb + degrees[1][1] + 1];
  // Column by column; the points within the solid stay apart and are given a one.
  const count = nx * ny;
  const band = Math.max(pa, degrees[0][1]) * ny;
  const matrix = new Float64Array(count * (band + 1));
  const load = new Float64Array(count);
  const side = (axis: 0 | 1, inSolid: boolean): EdgeSide => (inSolid ? solid : air)[axis];
  const add = (i: number, j: number, value: number): void => {
    if (j > i) return;
    const at = i * (band + 1) + band + j - i;
    matrix[at] = matrix[at]! + value;
  };
  const quarters = [
    [false, true],
    [false, false],
    [true, false],
  ] as const;
  const point = (x: boolean, y: boolean, a: number, b: number): number =>
    ((x ? pa : 0) + a) * ny + (y ? pb : 0) + b;
  for (const [x, y] of quarters) {
    const [sx, sy] = [side(0, x), side(1, y)];
    const [rx, ry] = [gllRule(sx.degree), gllRule(sy.degree)];
    for (let a = 0; a <= sx.degree; a++)
      for (let b = 0; b <= sy.degree; b++) {
        const at = point(x, y, a, b);
        const alongX = (sy.widthM / sx.widthM) * ry.weights[b]!;
        for (let d = 0; d <= sx.degree; d++) {
          add(at, point(x, y, d, b), alongX * rx.stiffness[a * (sx.degree + 1) + d]!);
        }
        const alongY = (sx.widthM / sy.widthM) * rx.weights[a]!;
        for (let d = 0; d <= sy.degree; d++) {
          add(at, point(x, y, a, d), alongY * ry.stiffness[b * (sy.degree + 1) + d]!);
        }
      }
  }

  const values = new Float64Array(Math.max(...degrees.flat()) + 1);
  const flowRule = gllRule(FLOW_DEGREE);
  let energy = 0;
  /** One outer side: normal to `axis`, in the quarter (x, y), at the far end of that quarter. */
  const drive = (axis: 0 | 1, x: boolean, y: boolean): void => {
    const across = axis === 0 ? x : y;
    const along = side(axis === 0 ? 1 : 0, axis === 0 ? y : x);
    const normal = side(axis, across);
    const far = across ? normal.widthM : -normal.widthM;
    const beyond = axis === 0 ? y : x;
    flowRule.points.forEach((t, q) => {
      const share = beyond ? (t + 1) / 2 : (t - 1) / 2;
      const s = share * along.widthM;
      const [u, slopeX, slopeY] = singular(axis === 0 ? far : s, axis === 0 ? s : far);
      const flow =
        (flowRule.weights[q]! / 2) *
        along.widthM *
        (axis === 0 ? slopeX : slopeY) *
        (across ? 1 : -1);
      energy += flow * u;
      interpolation(gllRule(along.degree), t, values);
      for (let e = 0; e <= along.degree; e++) {
        const end = across ? normal.degree : 0;
        const at = axis === 0 ? point(x, y, end, e) : point(x, y, e, end);
        load[at] = load[at]! + flow * values[e]!;
      }
    });
  };
  drive(0, false, true);
  drive(0, false, false);
  drive(1, false, false);
  drive(1, true, false);
  drive(1, false, true);
  drive(0, true, false);

  for (let a = 1; a <= degrees[0][1]; a++)
    for (let b = 1; b <= degrees[1][1]; b++) {
      const at = (pa + a) * ny + pb + b;
      matrix[at * (band + 1) + band] = 1;
    }
  // A level for the constant part: the flow in equals the flow out, so it has no say.
  matrix[band] = matrix[band]! * 2;
  const u = solveBanded(matrix, load, count, band);
  let found = 0;
  for (let at = 0; at < count; at++) found += load[at]! * u[at]!;

  let measure = 0;
  for (const [x, y] of quarters) {
    const [sx, sy] = [side(0, x), side(1, y)];
    const [a, b] = [x ? 0 : sx.degree, y ? 0 : sy.degree];
    let [slopeX, slopeY] = [0, 0];
    for (let d = 0; d <= sx.degree; d++) {
      slopeX += gllRule(sx.degree).slopes[a * (sx.degree + 1) + d]! * u[point(x, y, d, b)]!;
    }
    for (let d = 0; d <= sy.degree; d++) {
      slopeY += gllRule(sy.degree).slopes[b * (sy.degree + 1) + d]! * u[point(x, y, a, d)]!;
    }
    measure += 4 * (slopeX * slopeX + slopeY * slopeY);
  }
  return Math.max(0, energy - found) / measure;
}

/** u and its two slopes; the solid is where x and y are positive. */
function singular(x: number, y: number): readonly [number, number, number] {
  const r = Math.hypot(x, y);
  const angle = Math.atan2(y, x);
  // From the wall along +y round to the wall along +x; -1e-9: on that wall, not beyond.
  const phi = angle - Math.PI / 2 < -1e-9 ? angle + (3 * Math.PI) / 2 : angle - Math.PI / 2;
  const size = POWER * r ** (POWER - 1);
  const [outward, round] = [size * Math.cos(POWER * phi), -size * Math.sin(POWER * phi)];
  const [c, s] = [x / r, y / r];
  return [r ** POWER * Math.cos(POWER * phi), outward * c - round * s, outward * s + round * c];
}

/** Cholesky of a symmetric banded matrix (lower, diagonal last in each row) and both substitutions. */
function solveBanded(
  matrix: Float64Array,
  load: Float64Array,
  count: number,
  band: number,
): Float64Array {
  const width = band + 1;
  for (let i = 0; i < count; i++) {
    const start = Math.max(0, i - band);
    for (let j = start; j <= i; j++) {
      let sum = matrix[i * width + band + j - i]!;
      for (let k = Math.max(start, j - band); k < j; k++) {
        sum -= matrix[i * width + band + k - i]! * matrix[j * width + band + k - j]!;
      }
      matrix[i * width + band + j - i] = i === j ? Math.sqrt(sum) : sum / matrix[j * width + band]!;
    }
  }
  const x = load.slice();
  for (let i = 0; i < count; i++) {
    let sum = x[i]!;
    for (let k = Math.max(0, i - band); k < i; k++) {
      sum -= matrix[i * width + band + k - i]! * x[k]!;
    }
    x[i] = sum / matrix[i * width + band]!;
  }
  for (let i = count - 1; i >= 0; i--) {
    const value = x[i]! / matrix[i * width + band]!;
    x[i] = value;
    for (let k = Math.max(0, i - band); k < i; k++) {
      x[k] = x[k]! - matrix[i * width + band + k - i]! * value;
    }
  }
  return x;
}
