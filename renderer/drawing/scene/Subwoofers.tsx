/** The cabinets of the subwoofers. */

import { useMemo, type ReactElement } from 'react';
import type { Point, Project } from '../../../core/room/project';
import type { Palette } from '../palette';
import { Box } from './Box';

const SUB_HALF_M = 0.2;

export function Subwoofers({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  return (
    <>
      {project.speakers.subwoofers.map((sub) => (
        <SubwooferBox key={sub.id} position={sub.position} palette={palette} />
      ))}
    </>
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
