/** How strongly each mode meets each face of the free space. */

import type { Axis } from '../room/faces';
import { AXES } from '../room/faces';
import type { Point } from '../room/project';
import { gllRule } from './gll';
import type { RoomModes } from '../room-modes/room-modes';

/** Number of the face that the middle of an element's side lies on; null where it is of none. */
export type FaceNumber = (middle: Point, axis: Axis, side: -1 | 1) => number | null;

/**
 * Integral of each mode's square over each of `count` faces, `[face][mode]`, m2: a mode's mean square
 * over the free space is 1, so a face that a mode meets evenly has its area. By the quadrature of
 * the elements' own points. Faces that were moved (`moved`) count where they were moved to.
 */
export function coverageOfFaces(
  modes: RoomModes,
  faceNumber: FaceNumber,
  count: number,
): readonly Float64Array[] {
  const { axes, air, rowOf, shapes, frequenciesHz } = modes;
  const modeCount = frequenciesHz.length;
  const found = Array.from({ length: count }, () => new Float64Array(modeCount));
  const counts = axes.map((axis) => axis.degrees.length) as [number, number, number];
  const steps = [axes[1].points.length * axes[2].points.length, axes[2].points.length, 1] as const;
  const isAir = (cell: readonly number[]): boolean =>
    cell.every((n, axis) => n >= 0 && n < counts[axis]!) &&
    air[(cell[0]! * counts[1] + cell[1]!) * counts[2] + cell[2]!] === 1;
  const range = (axis: Axis, element: number): readonly [number, number] => [
    axes[axis].ends[element]!,
    axes[axis].ends[element + 1]!,
  ];

  const addSide = (cell: readonly [number, number, number], axis: Axis, side: -1 | 1): void => {
    const middle = AXES.map((along) => {
      const [low, high] = range(along, cell[along]);
      return along === axis ? (side === 1 ? high : low) : (low + high) / 2;
    });
    const face = faceNumber([middle[0]!, middle[1]!, middle[2]!], axis, side);
    const into = face === null ? undefined : found[face];
    if (!into) return;
    const [u, v]: readonly [Axis, Axis] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
    const [ruleU, ruleV] = [u, v].map((along) => gllRule(axes[along].degrees[cell[along]]!));
    if (!ruleU || !ruleV) return;
    const areas = [u, v].map((along) => {
      const [low, high] = range(along, cell[along]);
      return (high - low) / 2;
    });
    const jacobian = areas[0]! * areas[1]!;
    const end = side === 1 ? axes[axis].degrees[cell[axis]]! : 0;
    const start = (axes[axis].firsts[cell[axis]]! + end) * steps[axis];
    for (let a = 0; a <= ruleU.degree; a++)
      for (let b = 0; b <= ruleV.degree; b++) {
        const place =
          start +
          (axes[u].firsts[cell[u]]! + a) * steps[u] +
          (axes[v].firsts[cell[v]]! + b) * steps[v];
        const row = rowOf[place]! * modeCount;
        const weight = jacobian * ruleU.weights[a]! * ruleV.weights[b]!;
        for (let m = 0; m < modeCount; m++) into[m] = into[m]! + weight * shapes[row + m]! ** 2;
      }
  };

  for (let i = 0; i < counts[0]; i++)
    for (let j = 0; j < counts[1]; j++)
      for (let k = 0; k < counts[2]; k++) {
        const cell = [i, j, k] as const;
        if (!isAir(cell)) continue;
        for (const axis of AXES)
          for (const side of [-1, 1] as const) {
            const beyond = [...cell];
            beyond[axis] = cell[axis] + side;
            if (!isAir(beyond)) addSide(cell, axis, side);
          }
      }
  return found;
}
