/** The example rooms open in whole figures of the person's own units. */

import { describe, expect, it } from 'vitest';
import { formatLength } from '../../../core/quantity/length';
import { EXAMPLES, exampleRoom } from '../../../renderer/state/examples';
import { example } from '../support/rooms';

describe.each(EXAMPLES)('the example $id', ({ id }) => {
  it('opens in metric as its file has it', () => {
    expect(exampleRoom(id, 'metric').project).toEqual(example(id));
  });

  it('opens in feet in whole inches and halves, with nothing left to save', () => {
    const { project, file } = exampleRoom(id, 'imperial');
    const { size, solids, patches } = project.room;
    const { rows } = project.seating;
    const { placed, subwoofers } = project.speakers;
    const lengths = [
      size.width,
      size.length,
      size.height,
      ...solids.flatMap(({ min, max }) => [...min, ...max]),
      ...patches.flatMap(({ rect }) => rect),
      ...rows.flatMap((row) => [row.y, row.pitchM, row.riserM, row.earHeightM, row.eyeHeightM]),
      ...[...placed, ...subwoofers].flatMap(({ position }) => position),
      project.screen.widthM,
      project.screen.bottomM,
    ];
    const told = lengths.map((lengthM) => formatLength(lengthM, 'imperial'));
    expect(told.filter((text) => /\/(4|8|16)"/.test(text))).toEqual([]);
    expect(told.slice(0, 3).filter((text) => text.includes('/'))).toEqual([]);
    expect(file.saved).toBe(project);
  });
});
