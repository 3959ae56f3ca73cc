/** Faults of a file as lines for the person. */

import type { Fault } from '../../core/room/open-room';

const SHOWN_FAULTS = 6;

/** `room.size.width: must be ...` lines of at most six faults. */
export function faultLines(faults: readonly Fault[]): readonly string[] {
  const shown = faults
    .slice(0, SHOWN_FAULTS)
    .map((fault) => (fault.path === '' ? fault.sentence : `${fault.path}: ${fault.sentence}`));
  const more = faults.length - shown.length;
  return more > 0 ? [...shown, `and ${more} more`] : shown;
}
