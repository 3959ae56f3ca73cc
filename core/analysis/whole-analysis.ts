/** Everything at once, with what the window leaves to its worker: for the batch command. */

import { scaled } from '../quantity/slices';
import type { LengthUnits } from '../quantity/length';
import type { Project } from '../room/project';
import { MODES_LIMIT_HZ } from '../room-modes/room-modes';
import { allFindings, settledRoom } from './all-findings';
import type { Analysis } from './analyze';
import type { NamedModesOutcome } from './named-modes';
import type { Ask } from './results';

/** The analysis with the modes as built and all findings, in slices. Takes a second or two. */
export function* wholeAnalysis(
  project: Project,
  { units }: { readonly units: LengthUnits },
  ask: Ask,
): Generator<number, Analysis> {
  const modesToHz = MODES_LIMIT_HZ;
  const modes =
    project.room.solids.length > 0
      ? yield* scaled(ask.part('roomModes', project, { limitHz: modesToHz }), 0, 0.9)
      : null;
  const room = settledRoom(project, modesToHz);
  yield* scaled(ask.part('seatResponses', project, room), 0.9, 1);
  const analysis = withRoomModes(ask.quick('analysis', project, { units }), modes);
  return { ...analysis, findings: allFindings(ask, project, { units, modesToHz, search: null }) };
}

/** The analysis with the modes as built in it. */
function withRoomModes(analysis: Analysis, outcome: NamedModesOutcome | null): Analysis {
  if (!outcome?.ok) return analysis;
  const { modes, errorPercent } = outcome.built;
  const shaped = modes.map(({ frequencyHz, likeShell: order, shiftHz, errorPercent: error }) => ({
    frequencyHz,
    likeShell: order,
    shiftHz,
    errorPercent: error,
  }));
  return {
    ...analysis,
    modes: { ...analysis.modes, shaped, shapedErrorPercent: errorPercent },
  };
}
