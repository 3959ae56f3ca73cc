/** Edges of what a row of results would make of the room. */

import type { SpaceLines } from '../../core/drawing/on-paper';
import { boxEdges } from '../../core/drawing/space-lines';
import { farCorner } from '../../core/room/point';
import type { Preview } from '../state/preview';

export function previewEdges(preview: Preview): SpaceLines {
  if (preview.kind === 'size') return boxEdges([0, 0, 0], farCorner(preview.size));
  return preview.boxes.flatMap(({ min, max }) => boxEdges(min, max));
}
