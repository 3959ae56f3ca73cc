/** What a row of results would make of the room, dashed over the room as it is. */

import { useMemo, type ReactElement } from 'react';
import { usePreview } from '../../state/preview';
import type { Palette } from '../palette';
import { previewEdges } from '../preview-edges';
import { Strokes } from './Strokes';

export function PreviewMarks({ palette }: { readonly palette: Palette }): ReactElement | null {
  const preview = usePreview((store) => store.preview);
  const pairs = useMemo(() => (preview ? previewEdges(preview) : null), [preview]);
  return pairs ? <Strokes pairs={pairs} color={palette.accent} dashed onTop /> : null;
}
