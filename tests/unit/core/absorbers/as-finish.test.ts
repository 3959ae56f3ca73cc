import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designAsFinish, freshFinishId } from '../../../../core/absorbers/as-finish';
import { STARTING_DESIGNS } from '../../../../core/absorbers/design';
import { readDesign } from '../../../../core/absorbers/read-design';
import { applyEdit } from '../../../../core/room/edits';
import { saveRoom } from '../../../../core/room/open-room';
import { given, only, opened, roomOf } from '../../support/rooms';
import { legalDesign } from './arbitrary-design';

describe('a finish made from a design', () => {
  it('is saved in a room file and opens as what it was', () => {
    fc.assert(
      fc.property(legalDesign, (design) => {
        const finish = designAsFinish(design, 'absorber-1', 'My absorber');
        const put = applyEdit(applyEdit(roomOf(), { kind: 'own-finish', finish }), {
          kind: 'finish',
          face: 'back',
          finish: finish.id,
        });
        const again = opened(saveRoom(put));
        expect(again.room.finishes.back).toBe('absorber-1');
        const kept = only(again.finishesCustom);
        expect(kept).toEqual(finish);
        expect(readDesign(kept.design)).toEqual(design);
      }),
      { numRuns: 25 },
    );
  });

  it('has a figure for every octave, to two decimals, and says how it was got', () => {
    const finish = designAsFinish(STARTING_DESIGNS.perforated, 'absorber-1', 'Back wall');
    expect(finish.absorption['250']).toBe(0.81);
    expect(Object.keys(finish.absorption)).toHaveLength(8);
    expect(finish.source).toContain('not measured');
    expect(finish.source).toContain('Miki 1990');
    expect(finish.source).toContain('Ingard 1953');
    expect(finish.source).toContain('Extrapolated at 63, 125, 4000, 8000 Hz');
    expect(finish.source.length).toBeLessThanOrEqual(400);
  });

  it('is not made of a design with a fault', () => {
    const broken = { ...STARTING_DESIGNS.porous, airGapM: -1 };
    expect(() => designAsFinish(broken, 'absorber-1', 'x')).toThrow(/airGapM/);
  });

  it('gets an id that no other has', () => {
    expect(freshFinishId([])).toBe('absorber-1');
    expect(freshFinishId(['absorber-1', 'absorber-3'])).toBe('absorber-2');
  });
});

describe('the design in a file', () => {
  it.each([undefined, null, 4, 'porous', {}, { kind: 'porous' }, { kind: 'horn', version: 1 }])(
    'that is %j is none',
    (value) => {
      expect(readDesign(value)).toBeNull();
    },
  );

  it('of a later version is none', () => {
    expect(readDesign({ ...STARTING_DESIGNS.membrane, version: 2 })).toBeNull();
  });

  it('keeps fields that are not known', () => {
    const read = given(readDesign({ ...STARTING_DESIGNS.membrane, 'x-note': 'oak' }));
    expect(read).toHaveProperty('x-note', 'oak');
  });
});
