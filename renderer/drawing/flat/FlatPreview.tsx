/** What a row of results would make of the room, dashed over the plan or section as it is. */

import { useMemo, type ReactElement } from 'react';
import { linesOnPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import { usePreview } from '../../state/preview';
import { previewEdges } from '../preview-edges';
import { FlatMarks } from './FlatMarks';

export function FlatPreview({ view }: { readonly view: FlatView }): ReactElement | null {
  const preview = usePreview((store) => store.preview);
  const marks = useMemo(
    () =>
      preview
        ? linesOnPaper(view, 'evidence', previewEdges(preview), {
            tone: 'accent',
            weight: 'seen',
            dashed: true,
          })
        : null,
    [view, preview],
  );
  return marks ? <FlatMarks marks={marks} /> : null;
}
