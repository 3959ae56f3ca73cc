/** Solids, subwoofers and the screen. What hangs overhead is drawn through, with dashed edges. */

import { useMemo, type ReactElement } from 'react';
import { farCorner } from '../../../core/room/point';
import type { Point, Project, Solid } from '../../../core/room/project';
import { screenRect } from '../../../core/room/screen';
import { FACE_NORMALS, faceAxes, patchSide } from '../../../core/room/faces';
import type { Palette } from '../palette';
import { Box } from './Box';
import { Strokes } from './Strokes';

const SUB_HALF_M = 0.2;

export function Fittings({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  return (
    <group>
      {project.room.solids.map((solid) => (
        <SolidBox key={solid.id} solid={solid} project={project} palette={palette} />
      ))}
      {project.speakers.subwoofers.map((sub) => (
        <SubwooferBox key={sub.id} position={sub.position} palette={palette} />
      ))}
      <Patches project={project} palette={palette} />
      <ScreenFrame project={project} palette={palette} />
    </group>
  );
}

function SolidBox({
  solid,
  project,
  palette,
}: {
  readonly solid: Solid;
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  const overhead = solid.min[2] > 1 && solid.max[2] >= project.room.size.height - 0.01;
  const tall = solid.max[2] - solid.min[2] > 1.2;
  return (
    <Box
      min={solid.min}
      max={solid.max}
      top={palette.floor}
      side={palette.solid}
      edge={overhead ? palette['ink-soft'] : palette.ink}
      opacity={overhead ? 0.3 : tall ? 0.8 : 1}
      dashed={overhead}
    />
  );
}

function SubwooferBox({
  position,
  palette,
}: {
  readonly position: Point;
  readonly palette: Palette;
}): ReactElement {
  const [min, max] = useMemo(() => {
    const shifted = (by: number): Point => [position[0] + by, position[1] + by, position[2] + by];
    return [shifted(-SUB_HALF_M), shifted(SUB_HALF_M)];
  }, [position]);
  return <Box min={min} max={max} top={palette.raised} side={palette.solid} edge={palette.ink} />;
}

/** Outlines of doors, windows and panels on the shell, with one diagonal. */
function Patches({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  const pairs = useMemo(() => {
    const { size, patches } = project.room;
    const far = farCorner(size);
    return patches
      .filter((patch) => !patch.face.includes(':'))
      .flatMap((patch) => {
        const face = patchSide(patch.face);
        const { axis, side } = FACE_NORMALS[face];
        const [u, v] = faceAxes(face);
        const at = (a: number, b: number): Point => {
          const place: [number, number, number] = [0, 0, 0];
          place[axis] = side === 1 ? far[axis] - 0.01 : 0.01;
          place[u] = a;
          place[v] = b;
          return place;
        };
        const [u0, v0, u1, v1] = patch.rect;
        return [
          [at(u0, v0), at(u1, v0)],
          [at(u1, v0), at(u1, v1)],
          [at(u1, v1), at(u0, v1)],
          [at(u0, v1), at(u0, v0)],
          [at(u0, v0), at(u1, v1)],
        ] as const;
      });
  }, [project.room]);
  return <Strokes pairs={pairs} color={palette['ink-soft']} />;
}

function ScreenFrame({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  const { leftX, rightX, bottomZ, topZ } = screenRect(project);
  const [min, max] = useMemo(
    (): [Point, Point] => [
      [leftX, 0.005, bottomZ],
      [rightX, 0.04, topZ],
    ],
    [leftX, rightX, bottomZ, topZ],
  );
  return <Box min={min} max={max} top={palette.raised} side={palette.raised} edge={palette.ink} />;
}
