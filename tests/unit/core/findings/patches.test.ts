import { faceOf } from '../../../../core/room/built-face';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import {
  coveredParts,
  nearestFreeRect,
  overhangM,
  rectOverlapM,
} from '../../../../core/room/free-rect';
import type { Rect } from '../../../../core/room/patched-area';
import type { Project } from '../../../../core/room/project';
import { findingIds, findingOf, tried } from '../../support/remedies';
import { given, only, roomOf, type Fields } from '../../support/rooms';

const panel = (id: string, rect: Rect, face = 'left'): Fields => ({
  id,
  face,
  rect,
  finish: 'gf-50-rigid',
});

/** A 4 x 5 x 3 m room with these patches. */
const withPatches = (...patches: readonly Fields[]): Project => roomOf({ patches });

const patchIds = (project: Project): readonly string[] =>
  findingIds(project).filter((id) => id.startsWith('patch'));

describe('a patch', () => {
  it('within its face and clear of others is in order', () => {
    const project = withPatches(
      panel('a', [0, 0, 1, 1]),
      panel('b', [1, 0, 2, 1]),
      panel('c', [0, 0, 1, 1], 'right'),
    );
    expect(patchIds(project)).toEqual([]);
  });

  it('that sticks out is found with how far, and Apply puts it back whole', () => {
    const project = withPatches(panel('a', [4.6, 1, 5.2, 2.2]));
    const finding = findingOf(project, 'patch-outside:a');
    expect(finding).toMatchObject({ subject: 'decay', limit: 0, unit: 'm', severity: 'warning' });
    expect(given(finding.value)).toBeCloseTo(0.2, 9);
    const { project: mended } = only(tried(project, finding));
    expect(patchIds(mended)).toEqual([]);
    expect(only(mended.room.patches).rect).toEqual([4.4, 1, 5, 2.2]);
  });

  it('larger than its face is cut to it', () => {
    const project = withPatches(panel('a', [1, 1, 2, 4.5]));
    const finding = findingOf(project, 'patch-outside:a');
    expect(finding.remedies[0]?.text).toMatch(/^Cut it to 1\.00 m by 3\.00 m/);
    const { project: mended } = only(tried(project, finding));
    expect(only(mended.room.patches).rect).toEqual([1, 0, 2, 3]);
    expect(patchIds(mended)).toEqual([]);
  });

  it('over another is found once, the later one with the depth, and moved beside it', () => {
    const project = withPatches(panel('a', [1, 0, 2, 2]), panel('b', [1.9, 0.5, 2.5, 1.7]));
    const finding = findingOf(project, 'patch-overlap:b:a');
    expect(patchIds(project)).toEqual(['patch-overlap:b:a']);
    expect(given(finding.value)).toBeCloseTo(0.1, 9);
    const { project: mended } = only(tried(project, finding));
    expect(patchIds(mended)).toEqual([]);
    expect(mended.room.patches[1]?.rect).toEqual([2, 0.5, 2.6, 1.7]);
  });

  it('behind a fitting is found, and moved out from behind it', () => {
    const closet = { id: 'closet', kind: 'closet', min: [0, 0, 0], max: [1, 1, 3] };
    const project = roomOf({ solids: [closet], patches: [panel('a', [0.5, 0, 1.5, 1])] });
    const finding = findingOf(project, 'patch-covered:a:closet');
    expect(given(finding.value)).toBeCloseTo(0.5, 9);
    const { project: mended } = only(tried(project, finding));
    expect(only(mended.room.patches).rect).toEqual([1, 0, 2, 1]);
    expect(patchIds(mended)).toEqual([]);
  });

  it('that is a door is told as one that cannot open, and is moved along the wall, not up it', () => {
    const riser = { id: 'riser-1', kind: 'riser', min: [0, 3, 0], max: [4, 5, 0.3] };
    const door = (face: string, u: number): Fields => ({
      ...panel('door-1', [u, 0, u + 0.8, 2], face),
      finish: 'door-solid',
    });
    const project = roomOf({ solids: [riser], patches: [door('left', 2.6)] });
    const finding = findingOf(project, 'patch-covered:door-1:riser-1');
    expect(finding).toMatchObject({ subject: 'fittings', where: 'left wall: door-1' });
    expect(finding.message).toBe('The door cannot open: riser-1 stands 0.30 m in front of it.');
    expect(finding.caution).toContain('no way out');
    expect(finding.remedies[0]?.text).toBe('Put its nearer edge 2.20 m from the screen wall.');
    const { project: mended } = only(tried(project, finding));
    expect(only(mended.room.patches).rect).toEqual([2.2, 0, 3, 2]);
    // On the back wall the riser is everywhere.
    const back = roomOf({ solids: [riser], patches: [door('back', 1)] });
    const stuck = findingOf(back, 'patch-covered:door-1:riser-1');
    expect(tried(back, stuck)).toEqual([]);
    expect(only(stuck.remedies).text).toContain('give the door another wall');
  });

  it.each([
    ['window-1', 'panel-1', 'The panel covers 0.50 m of the window window-1.'],
    ['panel-1', 'door-1', 'The door takes 0.50 m of the place of panel-1.'],
    ['door-1', 'window-1', 'The window and the door door-1 take 0.50 m of the same place.'],
    ['a', 'b', 'The panel lies 0.50 m over a; where they overlap only b absorbs.'],
  ])('over another is told as what both are: %s under %s', (below, above, message) => {
    const project = withPatches(panel(below, [1, 0, 2, 2]), panel(above, [1.5, 0, 2.5, 2]));
    expect(findingOf(project, `patch-overlap:${above}:${below}`).message).toBe(message);
  });

  it('without any clear place is told so in words', () => {
    const project = withPatches(panel('a', [0, 0, 5, 3]), panel('b', [1, 1, 2, 2]));
    const finding = findingOf(project, 'patch-overlap:b:a');
    expect(only(finding.remedies).text).toMatch(/no clear place/);
    expect(tried(project, finding)).toEqual([]);
  });

  it('on a fitting is held within that side of it', () => {
    const soffit = { id: 's', kind: 'soffit', min: [0, 0, 2], max: [1, 5, 3] };
    const project = roomOf({
      solids: [soffit],
      patches: [panel('a', [4.5, 2, 5.5, 3], 's:right')],
    });
    expect(given(findingOf(project, 'patch-outside:a').value)).toBeCloseTo(0.5, 9);
  });
});

describe('the nearest clear place', () => {
  const side = fc.integer({ min: 0, max: 40 }).map((n) => n / 10);
  const rect = fc
    .tuple(side, side, fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }))
    .map(([u, v, w, h]): Rect => [u, v, u + w / 10, v + h / 10]);
  const bounds: Rect = [0, 0, 5, 3];

  it('is within the face, clear of everything, of the same size, and no move where none is needed', () => {
    fc.assert(
      fc.property(rect, fc.array(rect, { maxLength: 5 }), (wanted, obstacles) => {
        const found = nearestFreeRect(wanted, bounds, obstacles);
        if (!found) return;
        expect(overhangM(found, bounds)).toBe(0);
        for (const obstacle of obstacles) expect(rectOverlapM(found, obstacle)).toBe(0);
        expect(found[2] - found[0]).toBeCloseTo(Math.min(5, wanted[2] - wanted[0]), 4);
        const clear =
          overhangM(wanted, bounds) === 0 && obstacles.every((o) => rectOverlapM(wanted, o) === 0);
        if (clear) found.forEach((at, i) => expect(at).toBeCloseTo(wanted[i] ?? NaN, 4));
      }),
    );
  });

  it('is none of the places on a fine grid nearer', () => {
    fc.assert(
      fc.property(rect, fc.array(rect, { maxLength: 3 }), (wanted, obstacles) => {
        const [w, h] = [wanted[2] - wanted[0], wanted[3] - wanted[1]];
        const found = nearestFreeRect(wanted, bounds, obstacles);
        const moveM = found ? Math.hypot(found[0] - wanted[0], found[1] - wanted[1]) : Infinity;
        for (let u = 0; u + w <= 5; u += 0.1) {
          for (let v = 0; v + h <= 3; v += 0.1) {
            const at: Rect = [u, v, u + w, v + h];
            if (obstacles.some((obstacle) => rectOverlapM(at, obstacle) > 0)) continue;
            expect(moveM).toBeLessThanOrEqual(Math.hypot(u - wanted[0], v - wanted[1]) + 2e-3);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('every patch finding that can be mended', () => {
  it('is gone after Apply', () => {
    const place = fc.integer({ min: -5, max: 45 }).map((n) => n / 10);
    const patches = fc.array(fc.tuple(place, place), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(patches, (corners) => {
        const project = withPatches(
          ...corners.map(([u, v], i) => panel(`p${i}`, [u, v, u + 0.6, v + 1.2])),
        );
        for (const finding of analyze(project).findings) {
          if (!finding.id.startsWith('patch')) continue;
          for (const trial of tried(project, finding)) {
            expect(findingIds(trial.project)).not.toContain(finding.id);
            expect(patchIds(trial.project).length).toBeLessThan(patchIds(project).length);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('faces', () => {
  const soffit = { id: 's', kind: 'soffit', min: [0, 0, 2], max: [1, 5, 3] };
  const { room } = roomOf({ solids: [soffit] });

  it('have bounds along their own two axes', () => {
    expect(faceOf(room, 'left')?.rect).toEqual([0, 0, 5, 3]);
    expect(faceOf(room, 'floor')?.rect).toEqual([0, 0, 4, 5]);
    expect(faceOf(room, 's:floor')?.rect).toEqual([0, 0, 1, 5]);
    expect(faceOf(room, 'nowhere')).toBeNull();
    expect(faceOf(room, 'nobody:left')).toBeNull();
  });

  it('are covered where a fitting stands against them', () => {
    expect(coveredParts(room, 'left')).toEqual([{ solid: 's', rect: [0, 2, 5, 3] }]);
    expect(coveredParts(room, 'right')).toEqual([]);
    expect(coveredParts(room, 's:left')).toEqual([]);
  });
});

describe('people of an unknown kind', () => {
  const project = roomOf({}, { objects: [{ id: 'a', item: 'robot', count: 4 }] });

  it('are a fault that names what is known, and can be taken for people or taken out', () => {
    const finding = findingOf(project, 'unknown-item:a');
    expect(finding).toMatchObject({ severity: 'fault', subject: 'decay', value: 4 });
    expect(finding.message).toContain('person-seated');
    const trials = tried(project, finding);
    expect(trials).toHaveLength(2);
    for (const trial of trials) {
      expect(findingIds(trial.project)).not.toContain('unknown-item:a');
    }
  });

  it('are nothing to worry about where there are none of them', () => {
    const none = roomOf({}, { objects: [{ id: 'a', item: 'robot', count: 0 }] });
    expect(findingIds(none)).not.toContain('unknown-item:a');
  });
});
