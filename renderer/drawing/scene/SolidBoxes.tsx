/** Solids: soffits, risers, closets, columns. What hangs overhead is drawn through, with dashed edges. */

import type { ReactElement } from 'react';
import type { Project, Solid } from '../../../core/room/project';
import type { Palette } from '../palette';
import { Box } from './Box';

export function SolidBoxes({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  return (
    <>
      {project.room.solids.map((solid) => (
        <SolidBox key={solid.id} solid={solid} project={project} palette={palette} />
      ))}
    </>
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
