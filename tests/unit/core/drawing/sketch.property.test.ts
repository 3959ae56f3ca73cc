import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positionOf } from '../../../../core/drawing/bodies';
import { reachOf, type Lettering, type Mark, type PaperRect } from '../../../../core/drawing/marks';
import { rectOnPaper } from '../../../../core/drawing/on-paper';
import { sketch, type Sketch } from '../../../../core/drawing/sketch';
import { svgPicture } from '../../../../core/drawing/svg';
import { FLAT_VIEW_IDS, FLAT_VIEWS } from '../../../../core/drawing/views';
import { measuresIn } from '../../../../core/quantity/measures';
import type { Project } from '../../../../core/room/project';
import { arbitraryProject } from '../../support/arbitrary-project';

const views = fc.constantFrom(...FLAT_VIEW_IDS).map((id) => FLAT_VIEWS[id]);
const units = fc.constantFrom('metric' as const, 'imperial' as const);
const scales = fc.constantFrom(20, 48, 50, 100);

/** Holds `check` to drawings of any room in any view. */
function everyDrawing(check: (drawing: Sketch, project: Project) => void): void {
  fc.assert(
    fc.property(arbitraryProject, views, units, scales, (project, view, unit, scale) => {
      check(sketch(project, view, scale, { measures: measuresIn(unit) }), project);
    }),
  );
}

const isText = (mark: Mark): mark is Lettering => mark.kind === 'text';

const placeOf = ({ middle, extentM }: Lettering): PaperRect => ({
  min: [middle[0] - extentM[0] / 2, middle[1] - extentM[1] / 2],
  max: [middle[0] + extentM[0] / 2, middle[1] + extentM[1] / 2],
});

const DUST_M = 1e-9;

describe('a drawing of any room', () => {
  it('has no two figures or names on each other, and leaves out none that it needs', () => {
    everyDrawing(({ marks, view }, project) => {
      const texts = marks.filter(isText);
      texts.forEach((a, n) => {
        for (const b of texts.slice(0, n)) {
          const [p, q] = [placeOf(a), placeOf(b)];
          const apart =
            p.max[0] <= q.min[0] + DUST_M ||
            q.max[0] <= p.min[0] + DUST_M ||
            p.max[1] <= q.min[1] + DUST_M ||
            q.max[1] <= p.min[1] + DUST_M;
          expect(apart, `"${a.text}" and "${b.text}"`).toBe(true);
        }
      });
      // Both dimensions, the title, and each row that the view names.
      expect(texts.filter(({ layer }) => layer === 'dimensions')).toHaveLength(2);
      expect(texts.filter(({ text }) => text.startsWith(view.title))).toHaveLength(1);
      const rows = view.id === 'plan' || view.id === 'section' ? project.seating.rows.length : 0;
      expect(texts.filter(({ text }) => /^Row \d/.test(text))).toHaveLength(rows);
    });
  });

  it('lies within its picture, and every figure in it is finite', () => {
    everyDrawing(({ marks, bounds }) => {
      for (const mark of marks) {
        for (const [x, y] of reachOf(mark)) {
          expect(Number.isFinite(x) && Number.isFinite(y), JSON.stringify(mark)).toBe(true);
          expect(x).toBeGreaterThanOrEqual(bounds.min[0] - DUST_M);
          expect(x).toBeLessThanOrEqual(bounds.max[0] + DUST_M);
          expect(y).toBeGreaterThanOrEqual(bounds.min[1] - DUST_M);
          expect(y).toBeLessThanOrEqual(bounds.max[1] + DUST_M);
        }
      }
    });
  });

  it('hatches every solid that is cut under heavy edges, and no other', () => {
    everyDrawing(({ marks, view }, project) => {
      const cutM = view.cutAt(project);
      const cut = project.room.solids.filter((solid) => positionOf(view, cutM, solid) === 'cut');
      const hatched = marks.filter((mark) => mark.kind === 'hatch');
      expect(hatched.map(({ rect }) => rect)).toEqual(
        expect.arrayContaining(cut.map((solid) => rectOnPaper(view, solid))),
      );
      expect(hatched).toHaveLength(cut.length);
      const heavy = marks.filter((mark) => mark.kind === 'lines' && mark.weight === 'cut');
      // One more for the shell.
      expect(heavy).toHaveLength(cut.length + 1);
    });
  });

  it('makes a picture that is well-formed XML without a figure that is none', () => {
    everyDrawing((drawing) => {
      const text = svgPicture(drawing, 'A <room> & "its" \u0000 name \ud800');
      expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
      expect(unbalanced(text)).toEqual([]);
    });
  });
});

/** What keeps the text from being XML: tags that are not closed, marks that are not escaped. */
function unbalanced(text: string): readonly string[] {
  const open: string[] = [];
  const faults: string[] = [];
  const rest = text
    .replace(/<\?xml[^>]*\?>/, '')
    .replace(
      /<(\/?)([a-z]+)((?:\s[\w:-]+="[^"<]*")*)\s*(\/?)>/g,
      (_tag: string, end: string, name: string, _attributes: string, empty: string) => {
        if (end) {
          if (open.pop() !== name) faults.push(`</${name}>`);
        } else if (!empty) open.push(name);
        return '';
      },
    );
  if (/[<>]|&(?!amp;|lt;|gt;|quot;)/.test(rest)) faults.push('a mark that is not escaped');
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f]|[\ud800-\udfff]/u.test(rest)) faults.push('unfit');
  return [...faults, ...open];
}
