/** Seats of a plan or section that say when they are pointed at; nothing of them is seen. */

import type { ReactElement } from 'react';
import { seatShapes } from '../../../core/drawing/bodies';
import { rectOnPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import type { Project } from '../../../core/room/project';
import { seatKey } from '../../state/seat-names';
import { UNITS_PER_M } from './FlatMarks';

export function SeatAreas({
  view,
  project,
  onPoint,
}: {
  readonly view: FlatView;
  readonly project: Project;
  /** The key of the seat that is pointed at; null where none is any more. */
  readonly onPoint: (seat: string | null) => void;
}): ReactElement {
  return (
    <>
      {seatShapes(project).flatMap((shape) =>
        shape.boxes.map((box, n) => {
          const { min, max } = rectOnPaper(view, box);
          return (
            <rect
              key={`${seatKey(shape)} ${n}`}
              x={min[0] * UNITS_PER_M}
              y={-max[1] * UNITS_PER_M}
              width={(max[0] - min[0]) * UNITS_PER_M}
              height={(max[1] - min[1]) * UNITS_PER_M}
              fill="none"
              pointerEvents="all"
              onPointerOver={() => onPoint(seatKey(shape))}
              onPointerOut={() => onPoint(null)}
            />
          );
        }),
      )}
    </>
  );
}
