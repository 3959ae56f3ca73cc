/** What a row of results would make of the room, dashed over the room as it is. */

import { useMemo, type ReactElement } from 'react';
import { farCorner } from '../../../core/room/point';
import type { Point } from '../../../core/room/project';
import { usePreview, type Preview } from '../../state/preview';
import type { Palette } from '../palette';
import { boxEdges } from '../../../core/drawing/space-lines';
import { Strokes } from './Strokes';

export function PreviewMarks({ palette }: { readonly palette: Palette }): ReactElement | null {
  const preview = usePreview((store) => store.preview);
  const pairs = useMemo(() => (preview ? edgesOf(preview) : null), [preview]);
  return pairs ? <Strokes pairs={pairs} color={palette.accent} dashed onTop /> : null;
}

function edgesOf(preview: Preview): readonly (readonly [Point, Point])[] {
  if (preview.kind === 'size') return boxEdges([0, 0, 0], farCorner(preview.size));
  return preview.boxes.flatMap(({ min, max }) => boxEdges(min, max));
}
