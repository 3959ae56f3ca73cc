/**
 * Polynomials on the Gauss-Lobatto-Legendre points of [-1, 1]: the two ends and the roots of P'_p.
 * Values at the points describe a polynomial of degree p; the same points are a quadrature that is
 * exact to degree 2p - 1, so the mass is diagonal.
 * Source: Abramowitz & Stegun 25.4.32 (points and weights); the rest is derived beside the code.
 */

export interface GllRule {
  readonly degree: number;
  /** The p + 1 points, rising from -1 to 1. */
  readonly points: Float64Array;
  readonly weights: Float64Array;
  /** Row i, column j: slope at point i of the polynomial that is 1 at point j. */
  readonly slopes: Float64Array;
  /** Row a, column b: exact integral of the product of the slopes of polynomials a and b. */
  readonly stiffness: Float64Array;
  /** Weights times P_p at the points; with `lumping` the exact mass is diag(w) - lumping v vT. */
  readonly top: Float64Array;
  readonly lumping: number;
  /** Barycentric weights of the interpolation. */
  readonly barycentric: Float64Array;
}

/** P_p and P_(p-1) at x, by the three-term recurrence. */
function legendre(p: number, x: number): readonly [number, number] {
  let [before, value] = [1, x];
  for (let n = 1; n < p; n++) {
    [before, value] = [value, ((2 * n + 1) * x * value - n * before) / (n + 1)];
  }
  return [value, before];
}

const known = new Map<number, GllRule>();

/** The rule of degree `p` >= 1; computed once. */
export function gllRule(p: number): GllRule {
  const made = known.get(p) ?? makeRule(p);
  known.set(p, made);
  return made;
}

function makeRule(p: number): GllRule {
  const count = p + 1;
  const points = Float64Array.from({ length: count }, (_, i) => {
    let x = -Math.cos((Math.PI * i) / p);
    // Newton on (1 - x2) P'_p = p (P_(p-1) - x P_p), whose slope is -p (p+1) P_p.
    for (let turn = 0; turn < 60 && i > 0 && i < p; turn++) {
      const [value, before] = legendre(p, x);
      const step = (x * value - before) / ((p + 1) * value);
      x -= step;
      if (Math.abs(step) < 1e-16) break;
    }
    return i === 0 ? -1 : i === p ? 1 : x;
  });
  const tops = points.map((x) => legendre(p, x)[0]);
  const weights = tops.map((value) => 2 / (p * (p + 1) * value * value));
  const slopes = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) {
      const apart = points[i]! - points[j]!;
      const ends = i === 0 ? -p * (p + 1) : i === p ? p * (p + 1) : 0;
      slopes[i * count + j] = i === j ? ends / 4 : tops[i]! / tops[j]! / apart;
    }
  const stiffness = new Float64Array(count * count);
  for (let a = 0; a < count; a++)
    for (let b = 0; b < count; b++) {
      let sum = 0;
      for (let q = 0; q < count; q++) {
        sum += weights[q]! * slopes[q * count + a]! * slopes[q * count + b]!;
      }
      stiffness[a * count + b] = sum;
    }
  const barycentric = points.map((x, i) =>
    points.reduce((product, other, j) => (i === j ? product : product / (x - other)), 1),
  );
  return {
    degree: p,
    points,
    weights,
    slopes,
    stiffness,
    top: weights.map((w, i) => w * tops[i]!),
    // The points give P_p the square norm 2/p; it is 2/(2p+1). (p/2)^2 times the difference.
    lumping: (p * (p + 1)) / (2 * (2 * p + 1)),
    barycentric,
  };
}

/** Values at `x` in [-1, 1] of the polynomials that are 1 at one point each, into `into`. */
export function interpolation(rule: GllRule, x: number, into: Float64Array): void {
  const { points, barycentric } = rule;
  let sum = 0;
  for (let i = 0; i < points.length; i++) {
    const apart = x - points[i]!;
    if (Math.abs(apart) < 1e-14) {
      into.fill(0, 0, points.length);
      into[i] = 1;
      return;
    }
    const share = barycentric[i]! / apart;
    into[i] = share;
    sum += share;
  }
  for (let i = 0; i < points.length; i++) into[i] = into[i]! / sum;
}
