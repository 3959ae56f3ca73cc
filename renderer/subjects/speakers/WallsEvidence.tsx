/** What the walls near the chosen loudspeaker do to its low frequencies at the seat looked at. */

import type { ReactElement } from 'react';
import { SeatChoice } from '../../kit/controls/SeatChoice';
import { BoundaryChart } from './BoundaryChart';
import { NotchTable } from './NotchTable';
import { useProject, useSession } from '../../state/session';
import { seatName } from '../../state/seat-names';
import { useWalls, worstNotch } from './near-walls';

export function WallsEvidence(): ReactElement {
  const project = useProject();
  const units = useSession((session) => session.units);
  const walls = useWalls();
  const face = useSession((session) => session.face);
  const chooseFace = useSession((session) => session.chooseFace);
  if (!walls) {
    return <p className="empty">No loudspeaker or no seat has a place yet: see the findings.</p>;
  }
  const { speaker, seat, near } = walls;
  const seatChoice = <SeatChoice label="at" />;
  if (!near) {
    return (
      <div className="no-walls">
        <p className="empty">
          {speaker.name} or this seat is outside the free space: nothing can be told.
        </p>
        {seatChoice}
      </div>
    );
  }
  const { notches, curve } = near;
  const chosen = notches.find(({ hit }) => hit.face === face) ?? worstNotch(notches);
  const shared = { notches, face: chosen?.hit.face ?? null, onChoose: chooseFace };
  return (
    <>
      <BoundaryChart
        {...shared}
        of={`${speaker.name} at ${seatName(project, seat)}`}
        curve={curve}
      />
      <NotchTable {...shared} units={units} seat={seatChoice} />
    </>
  );
}
