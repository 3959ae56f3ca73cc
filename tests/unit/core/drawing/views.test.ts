import { describe, expect, it } from 'vitest';
import { onPaper } from '../../../../core/drawing/on-paper';
import { drawRoom, sketch } from '../../../../core/drawing/sketch';
import { svgPicture } from '../../../../core/drawing/svg';
import { FLAT_VIEW_IDS, FLAT_VIEWS, type Way } from '../../../../core/drawing/views';
import { measuresIn } from '../../../../core/quantity/measures';
import type { Point } from '../../../../core/room/project';
import { example, roomOf } from '../../support/rooms';

const vector = ({ axis, sign }: Way): Point => {
  const at: [number, number, number] = [0, 0, 0];
  at[axis] = sign;
  return at;
};

describe('a flat view', () => {
  it.each(FLAT_VIEW_IDS)('%s has on its right what the eye has on its right', (id) => {
    const { right, up, looks } = FLAT_VIEWS[id];
    const [u, l] = [vector(up), vector(looks)];
    // Who faces the screen wall has x on the right, with y behind: these axes are left-handed.
    const seen = [u[1] * l[2] - u[2] * l[1], u[2] * l[0] - u[0] * l[2], u[0] * l[1] - u[1] * l[0]];
    const shown = vector(right);
    // The ceiling is shown as a mirror on the floor shows it, so that it can be laid over the plan.
    const mirrored = id === 'ceiling' ? -1 : 1;
    expect(seen.map((part) => part * mirrored + 0)).toEqual(shown.map((part) => part + 0));
  });

  it('stands with the screen on the left in plan and long section', () => {
    for (const id of ['plan', 'section'] as const) {
      const [screen, back] = [
        onPaper(FLAT_VIEWS[id], [2, 0, 1]),
        onPaper(FLAT_VIEWS[id], [2, 6, 1]),
      ];
      expect(screen[0]).toBeLessThan(back[0]);
    }
  });

  it('cuts the long section through the reference place and the cross section through the last row', () => {
    const project = example('under-the-ducts');
    expect(FLAT_VIEWS.section.cutAt(project)).toBeCloseTo(2.15, 6);
    expect(FLAT_VIEWS.front.cutAt(project)).toBeCloseTo(5.1, 6);
    expect(FLAT_VIEWS.plan.note(project, measuresIn('imperial'))).toContain('3\' 11 1/4"');
    // Without anybody in it, through the middle.
    const empty = roomOf({}, { seating: { rows: [] } });
    expect(FLAT_VIEWS.front.cutAt(empty)).toBeCloseTo(2.5, 6);
  });
});

describe('a drawing at a scale', () => {
  const room = {
    solids: [
      {
        id: 'duct',
        kind: 'soffit',
        min: [0.5, 1, 2.5],
        max: [1.5, 3, 3],
        finish: 'gyp13-stud',
      },
    ],
  };
  const project = roomOf(room, { seating: { rows: [] } });

  it('has each corner at its place in millimetres', () => {
    const wants = { measures: measuresIn('metric') };
    const plan = svgPicture(sketch(project, FLAT_VIEWS.plan, 50, wants), 'plan');
    // 5 m by 4 m at 1:50 is 100 mm by 80 mm; y of a picture runs down.
    expect(plan).toContain('M0 0L100 0L100 -80L0 -80Z');
    expect(plan).toContain('M20 -10L60 -10L60 -30L20 -30Z');
    const section = svgPicture(sketch(project, FLAT_VIEWS.section, 25, wants), 'section');
    expect(section).toContain('M40 -100L120 -100L120 -120L40 -120Z');
  });

  it('draws what hangs over the cut dashed and what is cut hatched', () => {
    const wants = { measures: measuresIn('metric') };
    const solids = (id: 'plan' | 'front' | 'section') =>
      drawRoom(FLAT_VIEWS[id], project, wants).marks.filter(({ layer }) => layer === 'solids');
    const over = solids('plan');
    expect(over.some(({ kind }) => kind === 'hatch')).toBe(false);
    expect(over.some((mark) => mark.kind === 'lines' && mark.dashed === true)).toBe(true);
    // The cross section is cut at 2.5 m from the screen, in the middle of the duct.
    const cut = solids('front');
    expect(cut.some(({ kind }) => kind === 'hatch')).toBe(true);
    expect(cut.some((mark) => mark.kind === 'lines' && mark.dashed === true)).toBe(false);
    // The long section looks to the right from 2 m: the duct lies behind the eye.
    expect(solids('section').some((mark) => mark.kind === 'lines' && mark.dashed)).toBe(true);
  });

  it('leaves the fill of solids out where something is painted on them', () => {
    const fills = (id: 'plan' | 'front', painted: boolean): number =>
      drawRoom(FLAT_VIEWS[id], project, { measures: measuresIn('metric'), painted }).marks.filter(
        ({ layer, kind }) => layer === 'solids' && kind === 'fill',
      ).length;
    expect(fills('plan', false)).toBe(1);
    expect(fills('plan', true)).toBe(0);
    // There is no air in what is cut, and so nothing painted.
    expect(fills('front', true)).toBe(1);
  });
});
