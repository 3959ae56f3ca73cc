/** What a modal sum is made of: frequencies and shapes, of the plain shell or of the real free space. */

import { shellModes, type ModeOrder } from '../modes/shell-modes';
import type { Axis } from '../room/faces';
import type { Point, ShellSize } from '../room/project';
import { modeShapeAt, planeMap, type PlaneMap } from '../room-modes/evaluate';
import type { RoomModes } from '../room-modes/room-modes';

/** Modes without the one at zero, which every room has: pressure the same everywhere, 1. */
export interface ModalField {
  readonly frequenciesHz: Float64Array;
  readonly speedMS: number;
  readonly volumeM3: number;
  /** Each mode's value at a point, mean square 1 over the free space; null outside it. */
  readonly shapeAt: (at: Point) => Float64Array | null;
  /** Values over points in the plane normal to `axis` at `atM`; see `planeMap` of the shape modes. */
  readonly planeMap: (axis: Axis, atM: number, us: Float64Array, vs: Float64Array) => PlaneMap;
}

export interface ShellField extends ModalField {
  readonly size: ShellSize;
  readonly orders: readonly ModeOrder[];
}

/** The plain shell's modes up to and including `limitHz`; cosines times the root of 1, 2, 4 or 8. */
export function shellField(size: ShellSize, speedMS: number, limitHz: number): ShellField {
  const modes = shellModes(size, speedMS, limitHz);
  const { width, length, height } = size;
  const shapeAt = (at: Point): Float64Array | null => {
    const [x, y, z] = at;
    if (x < 0 || x > width || y < 0 || y > length || z < 0 || z > height) return null;
    return Float64Array.from(modes, ({ order: [nx, ny, nz] }) => {
      const norm = Math.SQRT2 ** (Math.sign(nx) + Math.sign(ny) + Math.sign(nz));
      const cosines = coupling(nx, x, width) * coupling(ny, y, length) * coupling(nz, z, height);
      return norm * cosines;
    });
  };
  return {
    size,
    orders: modes.map((mode) => mode.order),
    frequenciesHz: Float64Array.from(modes, (mode) => mode.frequencyHz),
    speedMS,
    volumeM3: width * length * height,
    shapeAt,
    planeMap: (axis, atM, us, vs) =>
      shellPlane(
        [width, length, height],
        modes.map((mode) => mode.order),
        axis,
        atM,
        us,
        vs,
      ),
  };
}

/** The cosines over a plane: weights are gathered by the orders along the plane's two axes first. */
function shellPlane(
  lengths: Point,
  orders: readonly ModeOrder[],
  axis: Axis,
  atM: number,
  us: Float64Array,
  vs: Float64Array,
): PlaneMap {
  const [u, v]: readonly [Axis, Axis] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
  const inside = (at: number, along: Axis): boolean => at >= -1e-6 && at <= lengths[along] + 1e-6;
  const wide = 1 + orders.reduce((most, order) => Math.max(most, order[v]), 0);
  const high = 1 + orders.reduce((most, order) => Math.max(most, order[u]), 0);
  const tableOf = (ats: Float64Array, count: number, along: Axis): readonly Float64Array[] =>
    Array.from({ length: count }, (_, n) => ats.map((at) => coupling(n, at, lengths[along])));
  const [alongU, alongV] = [tableOf(us, high, u), tableOf(vs, wide, v)];
  const blend = (weights: Float64Array): Float32Array => {
    const map = new Float32Array(us.length * vs.length);
    const gathered = new Float64Array(high * wide);
    orders.forEach((order, m) => {
      const weight = weights[m]!;
      if (weight === 0) return;
      const norm = Math.SQRT2 ** order.filter((n) => n > 0).length;
      const to = order[u] * wide + order[v];
      const part = weight * norm * coupling(order[axis], atM, lengths[axis]);
      gathered[to] = gathered[to]! + part;
    });
    const line = new Float64Array(wide);
    us.forEach((atU, i) => {
      line.fill(0);
      for (let n = 0; n < high; n++)
        for (let m = 0; m < wide; m++)
          line[m] = line[m]! + (alongU[n]?.[i] ?? 0) * gathered[n * wide + m]!;
      vs.forEach((atV, j) => {
        let sum = inside(atM, axis) && inside(atU, u) && inside(atV, v) ? 0 : NaN;
        for (let m = 0; m < wide; m++) sum += line[m]! * (alongV[m]?.[j] ?? 0);
        map[i * vs.length + j] = sum;
      });
    });
    return map;
  };
  const shape = (mode: number): Float32Array => {
    const weights = new Float64Array(orders.length);
    weights[mode] = 1;
    return blend(weights);
  };
  return { shape, blend };
}

/** cos(n pi x/L), exactly 0 at a node and 1 at an end, so that what symmetry cancels is nothing. */
function coupling(n: number, x: number, length: number): number {
  const quarters = (2 * n * x) / length;
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-12) return Math.cos((Math.PI / 2) * quarters);
  return whole % 2 !== 0 ? 0 : whole % 4 === 0 ? 1 : -1;
}

/** The modes of the real free space. */
export function roomModesField(modes: RoomModes): ModalField {
  const { frequenciesHz, speedMS, volumeM3 } = modes;
  return {
    frequenciesHz,
    speedMS,
    volumeM3,
    shapeAt: (at) => modeShapeAt(modes, at),
    planeMap: (axis, atM, us, vs) => planeMap(modes, axis, atM, us, vs),
  };
}
