/** In the room: the windows, what a window casts onto the faces, and where reflections meet them. */

import { useMemo, type ReactElement } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { windowArcs } from '../../../core/drawing/space-lines';
import { stripsOf } from '../../../core/speakers/strips';
import type { SceneProps } from '../../drawing/layer';
import { Strokes } from '../../drawing/scene/Strokes';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { useShownSeat } from '../../state/shown-seat';
import { useChosenSpeaker } from './chosen-speaker';
import { reflectionMarks } from './early-reflections';
import { ReflectionPoints } from './ReflectionPoints';
import { Strips } from './Strips';

export function SpeakersScene({ palette }: SceneProps): ReactElement {
  const { room } = useProject();
  const { layout, listening } = useAnalysis();
  const chosen = useChosenSpeaker()?.channel ?? null;
  const ears = useShownSeat()?.position ?? null;
  const window = layout?.channels.find(({ label }) => label === chosen);
  const strips = useMemo(
    () => (window && ears ? stripsOf(room, ears, window) : null),
    [room, ears, window],
  );
  const arcs = useMemo(
    () => (listening && layout ? windowArcs(layout, listening) : []),
    [layout, listening],
  );
  const asked = useSession(
    useShallow(({ work, analysis, selected, shown, seat, pointedSeat, face, pointedFace }) => ({
      work,
      analysis,
      selected,
      shown,
      seat,
      pointedSeat,
      face,
      pointedFace,
    })),
  );
  const reflections = useMemo(() => reflectionMarks(asked), [asked]);
  return (
    <>
      {strips && ears ? <Strips strips={strips} ears={ears} palette={palette} /> : null}
      <Strokes pairs={arcs} color={palette.ink} onTop />
      {reflections ? <ReflectionPoints reflections={reflections} palette={palette} /> : null}
    </>
  );
}
