/** The picture on the front wall. */

import { useMemo, type ReactElement } from 'react';
import type { Point, Project } from '../../../core/room/project';
import { screenRect } from '../../../core/room/screen';
import type { Palette } from '../palette';
import { Box } from './Box';

export function ScreenFrame({
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
