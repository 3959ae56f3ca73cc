import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxesMeet,
  inRows,
  labelBox,
  spreadLabels,
  textWidthPx,
  type Box,
  type LabelToSpread,
} from '../../../../renderer/kit/chart/spread-labels';

const WITHIN: Box = { left: 30, right: 400, top: 0, bottom: 120 };
const ROWS = [12, 26, 40];

const label = (text: string, x: number): LabelToSpread => ({
  width: textWidthPx(text),
  places: inRows(x, ROWS),
});

/** Labels of up to half the width, which want to stand anywhere, also beyond the edges. */
const anyLabels = fc.array(
  fc.record({
    width: fc.double({ min: 4, max: 180, noNaN: true }),
    places: fc.array(
      fc.record({
        x: fc.double({ min: -20, max: 450, noNaN: true }),
        y: fc.double({ min: -10, max: 140, noNaN: true }),
        anchor: fc.constantFrom('start', 'middle', 'end'),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  }),
  { minLength: 1, maxLength: 12 },
);

const covered = (labels: readonly LabelToSpread[], gap = 0, avoid: readonly Box[] = []): Box[] =>
  spreadLabels(labels, { within: WITHIN, gap, avoid }).flatMap((place, n) =>
    place ? [labelBox(place, labels[n]?.width ?? 0)] : [],
  );

describe('labels that are spread', () => {
  it('never meet each other or what they have to avoid', () => {
    const boxes = fc.array(
      fc
        .tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 120 }))
        .map(([left, top]): Box => ({ left, top, right: left + 14, bottom: top + 14 })),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(anyLabels, boxes, (labels, avoid) => {
        const set = covered(labels, 0, avoid);
        set.forEach((box, n) => {
          for (const other of [...set.slice(0, n), ...avoid]) {
            expect(boxesMeet(box, other)).toBe(false);
          }
        });
      }),
    );
  });

  it('stay within the bounds', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        for (const box of covered(labels)) {
          expect(box.left).toBeGreaterThanOrEqual(WITHIN.left - 1e-9);
          expect(box.right).toBeLessThanOrEqual(WITHIN.right + 1e-9);
          expect(box.top).toBeGreaterThanOrEqual(WITHIN.top);
          expect(box.bottom).toBeLessThanOrEqual(WITHIN.bottom);
        }
      }),
    );
  });

  it('keep their order within a row', () => {
    const names = fc.array(
      fc.record({
        text: fc.string({ minLength: 1, maxLength: 12 }),
        x: fc.integer({ min: 0, max: 420 }),
      }),
      { minLength: 2, maxLength: 10 },
    );
    fc.assert(
      fc.property(names, (list) => {
        const places = spreadLabels(
          list.map(({ text, x }) => label(text, x)),
          { within: WITHIN, gap: 7 },
        );
        places.forEach((a, n) =>
          places.forEach((b, m) => {
            if (!a || !b || a.y !== b.y) return;
            const [wantedA = 0, wantedB = 0] = [list[n]?.x, list[m]?.x];
            // Those moved in from beyond an edge may have wanted one and the same place.
            if (wantedA < wantedB && n !== m && inside(list[n]) && inside(list[m])) {
              expect(a.x).toBeLessThan(b.x);
            }
          }),
        );
      }),
    );
  });

  it('stand at their first place wherever it is free, the first of the list before all others', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        const [place] = spreadLabels(labels, { within: WITHIN });
        const [first] = labels;
        const wanted = first?.places[0];
        if (!first || !wanted) return;
        const box = labelBox(wanted, first.width);
        const fits =
          box.left >= WITHIN.left &&
          box.right <= WITHIN.right &&
          box.top >= WITHIN.top &&
          box.bottom <= WITHIN.bottom;
        if (fits) expect(place).toEqual(wanted);
      }),
    );
  });

  it('take the next row where they would meet, and go without where all rows are taken', () => {
    const names = ['left wall', 'right wall', 'floor', 'ceiling'];
    const places = spreadLabels(
      names.map((name) => label(name, 200)),
      { within: WITHIN, gap: 7 },
    );
    expect(places.map((place) => place?.y ?? null)).toEqual([12, 26, 40, null]);
  });

  it('are moved in from an edge, and take no place that is too high', () => {
    const [place] = spreadLabels(
      [
        {
          width: 60,
          places: [
            { x: 20, y: 4 },
            { x: 20, y: 30 },
          ],
        },
      ],
      {
        within: WITHIN,
      },
    );
    expect(place).toEqual({ x: 60, y: 30 });
  });

  it('are kept apart by the gap within a row', () => {
    const two = (gap: number): readonly (number | undefined)[] =>
      spreadLabels(
        [
          { width: 40, places: inRows(100, ROWS) },
          { width: 40, places: inRows(143, ROWS) },
        ],
        { within: WITHIN, gap },
      ).map((place) => place?.y);
    expect(two(3)).toEqual([12, 12]);
    expect(two(4)).toEqual([12, 26]);
  });
});

const inside = (name: { readonly text: string; readonly x: number } | undefined): boolean => {
  if (!name) return false;
  const half = textWidthPx(name.text) / 2;
  return name.x - half >= WITHIN.left && name.x + half <= WITHIN.right;
};
