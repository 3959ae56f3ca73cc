/** The drawing under a strip of its own: what belongs to the view, and the key of what is painted. */

import type { ReactElement, ReactNode } from 'react';
import { RoomPart } from '../kit/controls/PartBoundary';
import { usePainting } from '../pressure/use-painting';
import { useSession } from '../state/session';
import { Drawing } from './Drawing';
import type { Layer } from './layer';
import { PaintKey } from './PaintKey';

export interface DrawingPaneProps {
  /** What belongs to the view. */
  readonly tools: ReactNode;
  /** What the open subject adds. */
  readonly layer: Layer;
}

export function DrawingPane({ tools, layer }: DrawingPaneProps): ReactElement {
  const view = useSession((session) => session.view);
  const painting = usePainting(view);
  return (
    <>
      <div className="drawing-strip">
        {tools}
        {painting ? <PaintKey painting={painting} /> : null}
      </div>
      <RoomPart part="The drawing">
        <Drawing painting={painting} layer={layer} />
      </RoomPart>
    </>
  );
}
