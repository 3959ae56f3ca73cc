/**
 * The findings of a room from all results that are known of it: the quick ones and those of slow answers,
 * joined in one place, so that the window and the batch command tell the same.
 */

import { asSubwoofers } from '../bass/as-subwoofers';
import { DEFAULT_BAND_HZ } from '../bass/transfer';
import { bassFindings, type FoundBass } from '../findings/bass';
import type { Finding } from '../findings/finding';
import { refusalFinding, simplifiedFinding } from '../findings/fittings';
import { sortFindings } from '../findings/order';
import type { LengthUnits } from '../quantity/length';
import { measuresIn, type Measures } from '../quantity/measures';
import type { Project } from '../room/project';
import { isSame } from '../room/same';
import { SLIVER_M } from '../room-modes/grid';
import type { NamedModesOutcome } from './named-modes';
import type { Ask, ModeLimitHz, OfRoom } from './results';
import type { SeatResponses } from './seat-response';
import type { PlaceSearch } from './subwoofer-search';

export interface FindingsRequest {
  readonly units: LengthUnits;
  /** The modes as built count to here, Hz. */
  readonly modesToHz: ModeLimitHz;
  /** What a search for subwoofer places found for this room; null without one. */
  readonly search: PlaceSearch | null;
}

/**
 * What a response is asked with that findings may go by: of the room as built where fittings fill part
 * of the shell, else of the shell.
 */
export const settledRoom = ({ room }: Project, modesToHz: ModeLimitHz): OfRoom => ({
  modesToHz: room.solids.length > 0 ? modesToHz : null,
});

/** The bass at the seats that findings go by; null until it is known. */
export const settledBass = (
  ask: Pick<Ask, 'known'>,
  project: Project,
  modesToHz: ModeLimitHz,
): SeatResponses | null => ask.known('seatResponses', project, settledRoom(project, modesToHz));

/** In their order. Slow results that are not known (yet) tell nothing. */
export function allFindings(
  ask: Pick<Ask, 'quick' | 'known'>,
  project: Project,
  { units, modesToHz, search }: FindingsRequest,
): readonly Finding[] {
  const { findings: quick } = ask.quick('analysis', project, { units });
  const modes =
    project.room.solids.length > 0 ? ask.known('roomModes', project, { limitHz: modesToHz }) : null;
  const bass = settledBass(ask, project, modesToHz);
  const slow = [
    ...(modes ? modesFindings(modes, measuresIn(units)) : []),
    ...(bass?.figures
      ? bassFindings({ figures: bass.figures, of: bass.of }, foundBass(search, project, bass.of))
      : []),
  ];
  // What both tell is told once.
  const more = slow.filter(({ id }) => !quick.some((finding) => finding.id === id));
  return more.length === 0 ? quick : sortFindings([...quick, ...more]);
}

function modesFindings(outcome: NamedModesOutcome, measures: Measures): readonly Finding[] {
  if (!outcome.ok) return [refusalFinding(outcome.refusal)];
  const { shape, errorPercent } = outcome.built;
  return shape.sliverM > SLIVER_M ? [simplifiedFinding(shape.sliverM, errorPercent, measures)] : [];
}

/** The best set where it was found over the band that findings judge, and for the same kind of room. */
function foundBass(
  search: PlaceSearch | null,
  project: Project,
  of: PlaceSearch['of'],
): FoundBass | null {
  const best = search?.search?.sets[0];
  if (!search?.best || !best || search.of !== of) return null;
  if (!isSame(search.bandHz, DEFAULT_BAND_HZ)) return null;
  const { allowed } = search.places;
  return {
    subwoofers: asSubwoofers(best.subwoofers, allowed, project.speakers.subwoofers, search.boxM),
    figures: search.best,
  };
}
