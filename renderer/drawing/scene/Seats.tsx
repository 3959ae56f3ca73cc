/**
 * Seats with heads at ear height, facing the screen. The head at the reference place is filled; where
 * that is the middle of a row, a smaller one stands between the seats.
 */

import type { ReactElement } from 'react';
import type { Point, Project } from '../../../core/room/project';
import { isSamePlace, referencePlace, seatsOf } from '../../../core/room/seats';
import { seatKey } from '../../state/seat-names';
import { toScene } from '../axes';
import type { Palette } from '../palette';
import { Box } from './Box';

const SEAT_WIDTH_M = 0.6;
/** Of the head that stands for the ears between two seats. */
const BETWEEN_RADIUS_M = 0.07;

export function Seats({
  project,
  palette,
  onPoint,
}: {
  readonly project: Project;
  readonly palette: Palette;
  /** A seat (`row|seat`) is pointed at, or none any more; null where nobody asks. */
  readonly onPoint: ((seat: string | null) => void) | null;
}): ReactElement {
  const reference = referencePlace(project);
  return (
    <group>
      {seatsOf(project).map((seat) => {
        const row = project.seating.rows.find((candidate) => candidate.id === seat.row);
        const floor = row?.riserM ?? 0;
        const [x, y, z] = seat.position;
        const wide = Math.min(SEAT_WIDTH_M, (row?.pitchM ?? 1) - 0.06) / 2;
        const chosen = reference !== null && isSamePlace(seat, reference);
        const box = (min: Point, max: Point): ReactElement => (
          <Box min={min} max={max} top={palette.raised} side={palette.solid} edge={palette.ink} />
        );
        return (
          <group
            key={`${seat.row}-${seat.seat}`}
            {...(onPoint
              ? {
                  onPointerOver: () => onPoint(seatKey(seat)),
                  onPointerOut: () => onPoint(null),
                }
              : {})}
          >
            {box([x - wide, y - 0.5, floor], [x + wide, y + 0.08, floor + 0.42])}
            {box(
              [x - wide, y + 0.08, floor],
              [x + wide, y + 0.24, Math.max(floor + 0.5, z - 0.22)],
            )}
            <mesh position={toScene([x, y, z])}>
              <sphereGeometry args={[0.1, 20, 14]} />
              <meshBasicMaterial color={chosen ? palette.ink : palette['ink-soft']} />
            </mesh>
          </group>
        );
      })}
      {reference?.seat === null ? (
        <mesh position={toScene(reference.position)}>
          <sphereGeometry args={[BETWEEN_RADIUS_M, 20, 14]} />
          <meshBasicMaterial color={palette.ink} />
        </mesh>
      ) : null}
    </group>
  );
}
