import { describe, expect, it } from 'vitest';
import { FLAT_VIEWS } from '../../../core/drawing/views';
import { pictureOf, planesSeen } from '../../../renderer/drawing/flat/paint-picture';
import { planesOf } from '../../../renderer/pressure/planes';
import type { PaintedPlane } from '../../../renderer/pressure/painting';
import { roomOf } from '../support/rooms';

const { room } = roomOf();
const planes = planesOf(room, 1.1).map((plane): PaintedPlane => {
  const values = new Float32Array(plane.us.length * plane.vs.length);
  return { plane, values, lines: [] };
});
const COLORS = { loud: '#ff0000', other: '#0000ff', quiet: '#ffffff' };

describe('pressure under a plan or section', () => {
  it('is that at ear height in the plan, and that on the faces that turn to the eye in sections', () => {
    const keys = (view: 'plan' | 'section' | 'front') =>
      planesSeen(FLAT_VIEWS[view], planes).map(({ plane }) => plane.key);
    expect(keys('plan')).toEqual(['ears']);
    expect(keys('section')).toEqual(['right']);
    expect(keys('front')).toEqual(['front']);
  });

  it.each([
    // The corner of the room's origin is bottom left in each, the far end of `right` at its right.
    ['plan', 'ears'],
    ['section', 'right'],
    ['front', 'front'],
  ] as const)('lies the right way round in %s', (id, key) => {
    const painted = planes.find(({ plane }) => plane.key === key);
    if (!painted) throw new Error('no such plane');
    const { plane } = painted;
    const [nu, nv] = [plane.us.length, plane.vs.length];
    const view = FLAT_VIEWS[id];
    // Loud at the far end of the axis that goes right, at the low end of the one that goes up.
    const uGoesRight = id === 'front' || id === 'section';
    const loudAt = uGoesRight ? (nu - 1) * nv : nv - 1;
    const values = new Float32Array(nu * nv);
    values[loudAt] = 1;
    const { width, height, bytes } = pictureOf(view, { ...painted, values }, 'mode', COLORS);
    expect([width, height]).toEqual(uGoesRight ? [nu, nv] : [nv, nu]);
    const at = (column: number, row: number): number => bytes[4 * (row * width + column) + 1] ?? 0;
    expect(at(width - 1, height - 1)).toBeLessThan(120);
    expect(at(0, height - 1)).toBeGreaterThan(200);
    expect(at(width - 1, 0)).toBeGreaterThan(200);
  });
});
