/** Solids, subwoofers and the screen. What hangs overhead is drawn through, with dashed edges. */

import { useMemo, type ReactElement } from 'react';
import type { Patch, Point, Project, Solid } from '../../../core/room/project';
import { screenRect } from '../../../core/room/screen';
import { leafStrokes, patchOutline } from '../patch-strokes';
import type { Palette } from '../palette';
import { Box } from './Box';
import { Strokes } from './Strokes';

const SUB_HALF_M = 0.2;

export function Fittings({
  project,
  palette,
  chosenPatch,
}: {
  readonly project: Project;
  readonly palette: Palette;
  readonly chosenPatch: string | null;
}): ReactElement {
  return (
    <group>
      {project.room.solids.map((solid) => (
        <SolidBox key={solid.id} solid={solid} project={project} palette={palette} />
      ))}
      {project.speakers.subwoofers.map((sub) => (
        <SubwooferBox key={sub.id} position={sub.position} palette={palette} />
      ))}
      <Patches project={project} palette={palette} chosen={chosenPatch} />
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

/** Outlines of doors, windows and panels with one diagonal, and how the leaves of the doors swing. */
function Patches({
  project,
  palette,
  chosen,
}: {
  readonly project: Project;
  readonly palette: Palette;
  readonly chosen: string | null;
}): ReactElement {
  const { room } = project;
  const [others, marked] = useMemo(() => {
    const strokes = (patch: Patch): readonly (readonly [Point, Point])[] => [
      ...patchOutline(room, patch),
      ...leafStrokes(room, patch),
    ];
    return [
      room.patches.filter(({ id }) => id !== chosen).flatMap(strokes),
      room.patches.filter(({ id }) => id === chosen).flatMap(strokes),
    ];
  }, [room, chosen]);
  return (
    <>
      <Strokes pairs={others} color={palette['ink-soft']} />
      <Strokes pairs={marked} color={palette.accent} />
    </>
  );
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
