/** The cabinets of the subwoofers. */

import { useMemo, type ReactElement } from 'react';
import type { Project } from '../../../core/room/project';
import { subwooferBox } from '../../../core/scene/subwoofer-box';
import type { Palette } from '../palette';
import { Box } from './Box';

export function Subwoofers({
  project,
  palette,
}: {
  readonly project: Project;
  readonly palette: Palette;
}): ReactElement {
  const boxes = useMemo(
    () => project.speakers.subwoofers.map((sub) => subwooferBox(project, sub)),
    [project],
  );
  return (
    <>
      {boxes.map(({ id, box }) => (
        <Box
          key={id}
          min={box.min}
          max={box.max}
          top={palette.raised}
          side={palette.solid}
          edge={palette.ink}
        />
      ))}
    </>
  );
}
