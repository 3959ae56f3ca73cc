import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AXES } from '../../../../core/room/faces';
import { contactOf, fittingFields, type FittingField } from '../../../../core/room/fitting-fields';
import { fittingFrom, fittingPresets } from '../../../../core/room/fitting-presets';
import { HOLD_M, movedSolid } from '../../../../core/room/move-solid';
import { farCorner } from '../../../../core/room/point';
import type { Point, Project, Solid } from '../../../../core/room/project';
import { resizeShell } from '../../../../core/room/resize';
import { given, roomOf } from '../../support/rooms';

const ready = (project: Project, title: string): Solid =>
  fittingFrom(given(fittingPresets('metric').find((preset) => preset.title === title)), project);
const room = roomOf();
const { size } = room.room;
const labels = (solid: Solid): readonly string[] =>
  fittingFields(solid, size).map(({ label }) => label);
const field = (solid: Solid, label: string): FittingField =>
  given(fittingFields(solid, size).find((known) => known.label === label));

describe('the fields of a fitting', () => {
  it('says sizes as a builder does', () => {
    expect(labels(ready(room, 'Soffit right')).slice(0, 3)).toEqual([
      'out from the right wall',
      'down from the ceiling',
      'along',
    ]);
    expect(labels(ready(room, 'Soffit front')).slice(0, 3)).toEqual([
      'out from the screen wall',
      'down from the ceiling',
      'along',
    ]);
    expect(labels(ready(room, 'Column')).slice(0, 3)).toEqual(['wide', 'deep', 'high']);
    expect(labels(ready(room, 'Riser')).slice(0, 3)).toEqual([
      'out from the back wall',
      'along',
      'high',
    ]);
  });

  it('keeps a soffit at its wall and at the ceiling', () => {
    const soffit = ready(room, 'Soffit right');
    const deeper = field(soffit, 'down from the ceiling').set(0.5);
    expect([deeper.min[2], deeper.max[2]]).toEqual([2.5, 3]);
    const wider = field(deeper, 'out from the right wall').set(1);
    expect([wider.min[0], wider.max[0]]).toEqual([3, 4]);
    const underside = field(wider, 'above the floor').set(2.2);
    expect([underside.min[2], underside.max[2]]).toEqual([2.2, 3]);
  });

  it('takes every figure within its limits, and shows it, in any order', () => {
    const part = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...fittingPresets('metric').map(({ title }) => title)),
        fc.array(fc.tuple(fc.nat({ max: 5 }), part), { minLength: 1, maxLength: 12 }),
        (title, typed) => {
          let solid = ready(room, title);
          for (const [n, share] of typed) {
            const before = given(fittingFields(solid, size)[n]);
            const valueM = before.lowM + share * (before.highM - before.lowM);
            const after = before.set(valueM);
            const shown = given(
              fittingFields(after, size).find((f) => f.of === before.of && f.axis === before.axis),
            );
            expect(shown.valueM).toBeCloseTo(valueM, 4);
            const far = farCorner(size);
            for (const axis of AXES) {
              expect(after.min[axis]).toBeGreaterThanOrEqual(0);
              expect(after.max[axis]).toBeLessThanOrEqual(far[axis]);
              expect(after.max[axis] - after.min[axis]).toBeGreaterThan(0.019);
            }
            const held = contactOf(solid, size, before.axis);
            if (before.of === 'size' && held !== 'none' && held !== 'both') {
              expect([held, 'both']).toContain(contactOf(after, size, before.axis));
            }
            solid = after;
          }
        },
      ),
    );
  });
});

describe('what touches a side of the shell', () => {
  it('keeps touching it while it is pushed along, until it is pulled off', () => {
    const soffit = ready(room, 'Soffit left');
    const pushed = movedSolid(soffit, [HOLD_M * 0.9, 0, -HOLD_M * 0.9], room.room, 0.005);
    expect(pushed).toEqual(soffit);
    const off = movedSolid(soffit, [0, 0, -0.5], room.room, 0.005);
    expect(off.max[2]).toBeCloseTo(2.5, 5);
  });

  it('keeps touching it when the room is given another size', () => {
    const side = fc.double({ min: -0.8, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...fittingPresets('metric').map(({ title }) => title)),
        fc.tuple(side, side, side),
        (title, [w, l, h]) => {
          const solid = ready(room, title);
          const project = { ...room, room: { ...room.room, solids: [solid] } };
          const next: Point = [size.width + w, size.length + l, size.height + h];
          const resized = resizeShell(project, {
            width: next[0],
            length: next[1],
            height: next[2],
          });
          const after = given(resized.room.solids[0]);
          for (const axis of AXES) {
            const before = contactOf(solid, size, axis);
            if (before !== 'none') expect(contactOf(after, resized.room.size, axis)).toBe(before);
          }
        },
      ),
    );
  });
});
