import { faceOf } from '../../../../core/room/built-face';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overhangM } from '../../../../core/room/free-rect';
import {
  EDGES,
  LEAST_PATCH_M,
  movedPatch,
  patchOnFace,
  stretchedPatch,
} from '../../../../core/room/move-patch';
import { HOLD_M } from '../../../../core/room/move-solid';
import { FACES, type Patch } from '../../../../core/room/project';
import { given, roomOf } from '../../support/rooms';

const door: Patch = {
  id: 'door-1',
  kind: 'door',
  face: 'back',
  rect: [1, 0, 1.8, 2],
  finish: 'door-solid',
};
const panel: Patch = {
  id: 'panel-1',
  kind: 'panel',
  face: 'left',
  rect: [1, 0.6, 1.6, 1.8],
  finish: 'gf-50-rigid',
};
const { room } = roomOf({ patches: [door, panel] });

describe('a door or panel that is moved by hand', () => {
  it('slides along its wall and stays on the floor', () => {
    expect(movedPatch(door, [0.5, HOLD_M * 0.9], room, 0.005).rect).toEqual([1.5, 0, 2.3, 2]);
  });

  it('comes to rest on the end of its wall and on the edge of what hangs there', () => {
    expect(movedPatch(door, [2.18, 0], room, 0.005).rect[2]).toBe(4);
    const second: Patch = { ...panel, id: 'panel-2', rect: [2.5, 0.6, 3.1, 1.8] };
    const beside = movedPatch(second, [-0.88, 0.02], { ...room, patches: [panel, second] }, 0.005);
    expect(beside.rect).toEqual([1.6, 0.6, 2.2, 1.8]);
  });

  it('stays on its face with a size that can be taken hold of, wherever the hand goes', () => {
    const far = fc.double({ min: -8, max: 8, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(door, panel),
        far,
        far,
        fc.constantFrom(...EDGES),
        fc.constantFrom(...FACES),
        (patch, a, b, edge, face) => {
          for (const next of [
            movedPatch(patch, [a, b], room, 0.005),
            stretchedPatch(patch, edge, a, room, 0.005),
            patchOnFace(patch, face, [a, b], room, 0.005),
          ]) {
            expect(overhangM(next.rect, given(faceOf(room, next.face)?.rect))).toBe(0);
            expect(next.rect[2] - next.rect[0]).toBeGreaterThan(LEAST_PATCH_M - 1e-6);
            expect(next.rect[3] - next.rect[1]).toBeGreaterThan(LEAST_PATCH_M - 1e-6);
          }
        },
      ),
    );
  });
});
