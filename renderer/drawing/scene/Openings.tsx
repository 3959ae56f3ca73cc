/** Outlines of doors, windows and panels with one diagonal, and how the leaves of the doors swing. */

import { useMemo, type ReactElement } from 'react';
import type { Patch, Point, Project } from '../../../core/room/project';
import { leafLines, patchOutline } from '../../../core/drawing/space-lines';
import type { Palette } from '../palette';
import { Strokes } from './Strokes';

export function Openings({
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
      ...leafLines(room, patch),
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
