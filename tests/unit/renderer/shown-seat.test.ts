import { beforeAll, describe, expect, it } from 'vitest';
import type { Project } from '../../../core/room/project';
import { isSamePlace, referencePlace, seatsOf } from '../../../core/room/seats';
import { exampleRoom } from '../../../renderer/state/examples';
import { seatKey } from '../../../renderer/state/seat-names';
import type { shownSeat as ShownSeat } from '../../../renderer/state/shown-seat';
import { stubPage } from './support/window-stubs';

let shownSeat: typeof ShownSeat;
beforeAll(async () => {
  stubPage();
  ({ shownSeat } = await import('../../../renderer/state/shown-seat'));
});

describe('the seat that everything is shown of', () => {
  const { project } = exampleRoom('under-the-ducts', 'metric');
  const reference = referencePlace(project);
  const [one, other] = seatsOf(project)
    .filter((seat) => reference === null || !isSamePlace(seat, reference))
    .map(seatKey);
  const keyOf = (of: Project, seat: string | null, pointedSeat: string | null): string | null => {
    const found = shownSeat(of, { seat, pointedSeat });
    return found && seatKey(found);
  };

  it('is the one pointed at, else the chosen one, else the reference place', () => {
    expect(one).not.toBe(other);
    expect(keyOf(project, one ?? '', other ?? '')).toBe(other);
    expect(keyOf(project, one ?? '', null)).toBe(one);
    expect(keyOf(project, null, null)).toBe(reference && seatKey(reference));
  });

  it('is the reference place where the chosen one is gone, and none where nobody sits', () => {
    expect(keyOf(project, 'row-9|0', 'row-9|1')).toBe(reference && seatKey(reference));
    expect(keyOf({ ...project, seating: { ...project.seating, rows: [] } }, one ?? '', null)).toBe(
      null,
    );
  });
});
