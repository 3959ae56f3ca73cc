/** Subwoofers that stand outside the room or inside a fitting. */

import { roundLength } from '../quantity/length';
import { farCorner } from '../room/point';
import type { Point, Project } from '../room/project';
import { isInside, isInTheOpen, outsideShellM } from '../room/space';
import type { FindingContext } from './context';
import type { Finding } from './finding';

/** Half a box off the faces it stands against, m (common practice). */
const OFF_FACE_M = 0.25;

export function subwooferFindings({ project, lengthText }: FindingContext): readonly Finding[] {
  return project.speakers.subwoofers.flatMap(({ id, position }): readonly Finding[] => {
    if (isInTheOpen(position, project.room)) return [];
    const out = outsideShellM(project.room.size, position);
    const solid = project.room.solids.find(({ min, max }) => isInside(position, min, max));
    const place = nearestOpen(position, project);
    return [
      {
        id: `subwoofer-outside:${id}`,
        severity: 'fault',
        subject: 'bass',
        where: `subwoofer ${id}`,
        message:
          out > 0
            ? `It stands ${lengthText(out)} outside the room.`
            : `It stands inside the ${solid?.kind ?? 'fitting'} "${solid?.id ?? ''}".`,
        figureName: 'outside',
        value: out > 0 ? out : null,
        limit: out > 0 ? 0 : null,
        unit: out > 0 ? 'm' : '',
        source: 'geometry',
        remedies: place
          ? [
              {
                text: 'Bring it to the nearest free place on the floor.',
                edit: { kind: 'subwoofer', id, position: place },
              },
            ]
          : [{ text: 'Make room for it: no free place on the floor was found.' }],
        place: { kind: 'subwoofer', id },
      },
    ];
  });
}

/** The free place nearest to `at`, half a box off walls and fittings; null where there is none. */
function nearestOpen(at: Point, project: Project): Point | null {
  const { room } = project;
  const far = farCorner(room.size);
  const along = (axis: 0 | 1 | 2): readonly number[] => {
    const high = far[axis] - OFF_FACE_M;
    const edges = room.solids.flatMap((solid) => [
      solid.min[axis] - OFF_FACE_M,
      solid.max[axis] + OFF_FACE_M,
    ]);
    return [Math.min(Math.max(at[axis], OFF_FACE_M), high), OFF_FACE_M, high, ...edges].filter(
      (value) => value >= Math.min(OFF_FACE_M, far[axis] / 2) && value <= high,
    );
  };
  let best: { readonly place: Point; readonly distance: number } | null = null;
  for (const x of along(0))
    for (const y of along(1))
      for (const z of along(2)) {
        const place: Point = [roundLength(x), roundLength(y), roundLength(z)];
        const distance = Math.hypot(x - at[0], y - at[1], z - at[2]);
        if (distance < (best?.distance ?? Infinity) && isInTheOpen(place, room)) {
          best = { place, distance };
        }
      }
  return best?.place ?? null;
}
