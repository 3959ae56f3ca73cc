/** Mode shapes at a point and over a plane. */

import type { Axis } from '../room/faces';
import type { Point } from '../room/project';
import type { ElementAxis } from './elements';
import { gllRule, interpolation } from './gll';
import type { RoomModes } from '../room-modes/room-modes';

/** An element along one axis and the place in it, from -1 to 1. */
interface Spot {
  readonly element: number;
  readonly local: number;
}

/** Elements that the coordinate lies in, at most two; within `reach` of an element counts as on it. */
function spots({ ends }: ElementAxis, at: number, reach: number): readonly Spot[] {
  const found: (Spot & { readonly off: number })[] = [];
  for (let element = 0; element + 1 < ends.length; element++) {
    const [low, high] = [ends[element]!, ends[element + 1]!];
    const off = Math.max(low - at, at - high, 0);
    if (off > reach) continue;
    const held = Math.min(Math.max(at, low), high);
    found.push({ element, local: (2 * (held - low)) / (high - low) - 1, off });
  }
  return found.sort((a, b) => a.off - b.off);
}

/** How far beyond the air a point still counts as on its face: faces that were moved may hide it. */
const reachOf = (modes: RoomModes): number => (modes.moved.length > 0 ? modes.sliverM : 1e-6);

/** Lattice rows and weights with which values at `point` are a sum; null outside the free space. */
export function weightsAt(
  modes: RoomModes,
  point: Point,
): { readonly rows: Int32Array; readonly weights: Float64Array } | null {
  const { axes, air, rowOf } = modes;
  const [xs, ys, zs] = axes.map((axis, n) => spots(axis, point[n]!, reachOf(modes)));
  const [, ny, nz] = axes.map((axis) => axis.degrees.length);
  for (const x of xs ?? [])
    for (const y of ys ?? [])
      for (const z of zs ?? []) {
        if (!air[(x.element * (ny ?? 0) + y.element) * (nz ?? 0) + z.element]) continue;
        const along = [x, y, z].map(({ element, local }, n) => {
          const rule = gllRule(axes[n]?.degrees[element] ?? 1);
          const values = new Float64Array(rule.degree + 1);
          interpolation(rule, local, values);
          return { first: axes[n]?.firsts[element] ?? 0, values };
        });
        const [a, b, c] = along;
        if (!a || !b || !c) return null;
        const size = a.values.length * b.values.length * c.values.length;
        const [rows, weights] = [new Int32Array(size), new Float64Array(size)];
        let at = 0;
        a.values.forEach((wa, i) =>
          b.values.forEach((wb, j) =>
            c.values.forEach((wc, k) => {
              const plane = (a.first + i) * axes[1].points.length + b.first + j;
              rows[at] = rowOf[plane * axes[2].points.length + c.first + k]!;
              weights[at++] = wa * wb * wc;
            }),
          ),
        );
        return { rows, weights };
      }
  return null;
}

/**
 * Every mode's value at `point`, in the order of the frequencies; null outside the free space. The
 * mean square of a mode over the free space is 1: the integral of its square is the volume.
 */
export function modeShapeAt(modes: RoomModes, point: Point): Float64Array | null {
  const found = weightsAt(modes, point);
  if (!found) return null;
  const count = modes.frequenciesHz.length;
  const values = new Float64Array(count);
  found.weights.forEach((weight, n) => {
    const row = found.rows[n]! * count;
    for (let m = 0; m < count; m++) {
      values[m] = values[m]! + weight * modes.shapes[row + m]!;
    }
  });
  return values;
}

/** Values over a grid of points in a plane; NaN outside the free space. The second axis runs fastest. */
export interface PlaneMap {
  /** One mode. */
  readonly shape: (mode: number) => Float32Array;
  /** The sum over modes of weight times shape. */
  readonly blend: (weights: Float64Array) => Float32Array;
}

/**
 * Sample the plane normal to `axis` at `atM`: `us` and `vs` are the coordinates along the other two axes,
 * in x, y, z order. The lattice is first drawn together along the normal, so that a map costs little
 * more than its points.
 */
export function planeMap(
  modes: RoomModes,
  axis: Axis,
  atM: number,
  us: Float64Array,
  vs: Float64Array,
): PlaneMap {
  const { axes, air, rowOf, shapes } = modes;
  const [u, v]: readonly [Axis, Axis] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
  const reach = reachOf(modes);
  const layers = spots(axes[axis], atM, reach).slice(0, 2);
  const counts = axes.map((one) => one.degrees.length) as [number, number, number];
  const cellSteps = [counts[1] * counts[2], counts[2], 1] as const;
  const steps = [axes[1].points.length * axes[2].points.length, axes[2].points.length, 1] as const;
  const [pu, pv] = [axes[u].points.length, axes[v].points.length];
  const count = modes.frequenciesHz.length;

  // Each sample: layer and the element's place in it, with its weights along both axes.
  const along = (one: ElementAxis, at: number) =>
    spots(one, at, reach).map(({ element, local }) => {
      const rule = gllRule(one.degrees[element]!);
      const values = new Float64Array(rule.degree + 1);
      interpolation(rule, local, values);
      return { element, first: one.firsts[element]!, values };
    });
  const columnsU = Array.from(us, (at) => along(axes[u], at));
  const columnsV = Array.from(vs, (at) => along(axes[v], at));

  const blend = (weights: Float64Array): Float32Array => {
    const sheets = layers.map(({ element, local }) => {
      const rule = gllRule(axes[axis].degrees[element]!);
      const values = new Float64Array(rule.degree + 1);
      interpolation(rule, local, values);
      const sheet = new Float64Array(pu * pv);
      for (let i = 0, at = 0; i < pu; i++)
        for (let j = 0; j < pv; j++, at++) {
          let sum = 0;
          for (let c = 0; c < values.length; c++) {
            const place =
              i * steps[u] + j * steps[v] + (axes[axis].firsts[element]! + c) * steps[axis];
            const row = (rowOf[place] ?? -1) * count;
            if (row < 0 || values[c] === 0) continue;
            let value = 0;
            for (let m = 0; m < count; m++) value += weights[m]! * shapes[row + m]!;
            sum += values[c]! * value;
          }
          sheet[at] = sum;
        }
      return { element, sheet };
    });
    const map = new Float32Array(us.length * vs.length).fill(NaN);
    columnsU.forEach((overU, i) =>
      columnsV.forEach((overV, j) => {
        for (const { element, sheet } of sheets)
          for (const a of overU)
            for (const b of overV) {
              const cell =
                a.element * cellSteps[u] + b.element * cellSteps[v] + element * cellSteps[axis];
              if (!air[cell]) continue;
              let sum = 0;
              for (let d = 0; d < a.values.length; d++) {
                const from = (a.first + d) * pv + b.first;
                let line = 0;
                for (let e = 0; e < b.values.length; e++) line += b.values[e]! * sheet[from + e]!;
                sum += a.values[d]! * line;
              }
              map[i * vs.length + j] = sum;
              return;
            }
      }),
    );
    return map;
  };
  const shape = (mode: number): Float32Array => {
    const weights = new Float64Array(count);
    weights[mode] = 1;
    return blend(weights);
  };
  return { shape, blend };
}
