import { describe, expect, it } from 'vitest';
import { faceName } from '../../../../core/room/faces';

describe('a face, as a builder calls it', () => {
  it.each([
    ['front', 'screen wall'],
    ['left', 'left wall'],
    ['ceiling', 'ceiling'],
    ['duct:floor', 'underside of "duct"'],
    ['duct:ceiling', 'top of "duct"'],
    ['duct:back', 'back side of "duct"'],
  ])('%s is the %s', (face, name) => {
    expect(faceName(face)).toBe(name);
  });
});
