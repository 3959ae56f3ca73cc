import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sketch } from '../../../../core/drawing/sketch';
import { svgPicture } from '../../../../core/drawing/svg';
import { FLAT_VIEWS, type FlatViewId } from '../../../../core/drawing/views';
import type { LengthUnits } from '../../../../core/quantity/length';
import { measuresIn } from '../../../../core/quantity/measures';
import { example, type Example } from '../../support/rooms';

const ROOMS = ['basement-bay', 'long-room', 'under-the-ducts'] as const;
const VIEWS = ['plan', 'section', 'front'] as const;

interface Picture {
  readonly room: Example;
  readonly view: FlatViewId;
  readonly units: LengthUnits;
}

/** Every picture that is kept: plan and sections of each room, once more in feet, and walls and ceiling of one. */
const PICTURES: readonly Picture[] = [
  ...ROOMS.flatMap((room) => VIEWS.map((view) => ({ room, view, units: 'metric' as const }))),
  ...VIEWS.map((view) => ({ room: 'under-the-ducts' as const, view, units: 'imperial' as const })),
  ...(
    ['elevation-front', 'elevation-back', 'elevation-left', 'elevation-right', 'ceiling'] as const
  ).map((view) => ({ room: 'under-the-ducts' as const, view, units: 'metric' as const })),
];

describe('drawings of the example rooms', () => {
  const named = PICTURES.map((picture) => ({
    ...picture,
    file: `${picture.room}-${picture.view}${picture.units === 'imperial' ? '-feet' : ''}.svg`,
  }));
  it.each(named)(
    '$file is what was looked at and agreed to (UPDATE_GOLDEN=1 writes it anew)',
    ({ room, view, units, file }) => {
      const project = example(room);
      const { title } = FLAT_VIEWS[view];
      const drawing = sketch(project, FLAT_VIEWS[view], units === 'imperial' ? 48 : 50, {
        measures: measuresIn(units),
      });
      const text = svgPicture(drawing, `${project.name}: ${title}, 1:${drawing.scale}`);
      const golden = new URL(`../../../golden/drawings/${file}`, import.meta.url);
      if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, text);
      expect(text).toBe(readFileSync(golden, 'utf8'));
    },
  );
});
