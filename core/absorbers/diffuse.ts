/**
 * Absorption in a diffuse field after Paris: the mean over all angles of incidence, each weighted
 * with the solid angle and the projected area, sin 2 theta. Source: Paris, Philosophical Magazine 5
 * (1928) 489; Cox and D'Antonio (from memory).
 */

import type { Complex } from './complex';

interface Rule {
  /** Angles in radians and their weights, which add up to 1. */
  readonly angles: readonly number[];
  readonly weights: readonly number[];
}

const rules = new Map<string, Rule>();

/**
 * Mean of `absorption(angle)` from 0 to `upToDeg` (above 0, at most 90) by Gauss and Legendre with
 * `points` angles. With 78 degrees, which some books prefer, the weight is made whole again.
 */
export function diffuseMean(
  absorption: (angle: number) => number,
  points = 32,
  upToDeg = 90,
): number {
  const { angles, weights } = ruleOf(points, upToDeg);
  let sum = 0;
  for (let i = 0; i < angles.length; i++) sum += (weights[i] ?? 0) * absorption(angles[i] ?? 0);
  return sum;
}

function ruleOf(points: number, upToDeg: number): Rule {
  const key = `${points} ${upToDeg}`;
  const known = rules.get(key);
  if (known) return known;
  const upTo = (upToDeg * Math.PI) / 180;
  const { nodes, weights } = gaussLegendre(points);
  const angles = nodes.map((node) => (upTo / 2) * (node + 1));
  const raw = angles.map((angle, i) => (weights[i] ?? 0) * Math.sin(2 * angle));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  const rule = { angles, weights: raw.map((weight) => weight / total) };
  rules.set(key, rule);
  return rule;
}

/** Nodes and weights on -1 to 1, by Newton's method on the Legendre polynomial. */
function gaussLegendre(points: number): { nodes: readonly number[]; weights: readonly number[] } {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < points; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      let [before, now] = [1, x];
      for (let n = 2; n <= points; n++) {
        [before, now] = [now, ((2 * n - 1) * x * now - (n - 1) * before) / n];
      }
      slope = (points * (x * now - before)) / (x * x - 1);
      const move = now / slope;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    nodes.push(x);
    weights.push(2 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/**
 * The same mean in closed form for a surface whose impedance `z`, relative to rho c, is one at all
 * angles. Range: Re z above 0. Its largest value is 0.951, at z = 1.567. Source: London, JASA 22
 * (1950) 263, after Paris (from memory; it agrees with the integral).
 */
export function diffuseOfLocal(z: Complex): number {
  const size = z.re * z.re + z.im * z.im;
  const log = Math.log(1 + 2 * z.re + size);
  const angle = Math.abs(z.im) < 1e-6 * z.re ? 1 / (1 + z.re) : Math.atan(z.im / (1 + z.re)) / z.im;
  return (
    ((8 * z.re) / size) * (1 - (z.re / size) * log + ((z.re * z.re - z.im * z.im) / size) * angle)
  );
}
