import { describe, expect, it } from 'vitest';
import {
  chosenThing,
  selectedId,
  withoutKind,
  withSelected,
  type Selected,
  type Selection,
} from '../../../renderer/state/selection';
import { exampleRoom } from '../../../renderer/state/examples';

const sub: Selected = { kind: 'subwoofer', id: 'sub-1' };
const row: Selected = { kind: 'row', row: 'row-1' };
const soffit: Selected = { kind: 'solid', id: 'soffit-1' };
const door: Selected = { kind: 'patch', id: 'door-1' };
const centre: Selected = { kind: 'speaker', channel: 'M+000' };

const select = (...things: readonly Selected[]): Selection =>
  things.reduce<Selection>(withSelected, []);

describe('what is chosen', () => {
  it('is one thing of each kind, so that a subject finds its own again', () => {
    const selection = select(centre, sub, { kind: 'subwoofer', id: 'sub-2' });
    expect(selectedId(selection, 'subwoofer')).toBe('sub-2');
    expect(selectedId(selection, 'speaker')).toBe('M+000');
    expect(selectedId(selection, 'row')).toBeNull();
    expect(selectedId(withoutKind(selection, 'speaker'), 'speaker')).toBeNull();
  });

  it('is never a fitting and a door together, whichever comes last', () => {
    expect(select(soffit, door)).toEqual([door]);
    expect(select(door, soffit)).toEqual([soffit]);
  });

  it('lets a row go when anything else is chosen', () => {
    expect(select(row, sub)).toEqual([sub]);
    expect(select(sub, row)).toEqual([row, sub]);
  });
});

describe('the thing that the hand is at', () => {
  const { project } = exampleRoom('under-the-ducts', 'metric');
  const first = project.speakers.subwoofers[0]?.id ?? '';
  const rowId = project.seating.rows[0]?.id ?? '';

  it('is of a kind that is chosen in the open subject', () => {
    const selection = select({ kind: 'subwoofer', id: first });
    expect(chosenThing(project, selection, ['subwoofer'])).toEqual({
      kind: 'subwoofer',
      id: first,
    });
    expect(chosenThing(project, selection, ['speaker'])).toBeNull();
  });

  it('is a row in any subject', () => {
    const selection = select({ kind: 'subwoofer', id: first }, { kind: 'row', row: rowId });
    expect(chosenThing(project, selection, ['subwoofer'])).toEqual({ kind: 'row', row: rowId });
    expect(chosenThing(project, selection, [])).toEqual({ kind: 'row', row: rowId });
  });

  it('is nothing once it is gone from the room', () => {
    const selection = select({ kind: 'subwoofer', id: 'sub-99' });
    expect(chosenThing(project, selection, ['subwoofer'])).toBeNull();
  });
});
