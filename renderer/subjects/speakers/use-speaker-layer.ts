/** What the subject draws in the room: the windows, what a window casts onto the faces, and reflections. */

import { useMemo } from 'react';
import { useShallow } from 'zustand/react/shallow';
import type { SpaceLines } from '../../../core/drawing/on-paper';
import { windowArcs } from '../../../core/drawing/space-lines';
import type { Point } from '../../../core/room/project';
import type { Strip } from '../../../core/speakers/strips';
import { useAnalysis, useSession } from '../../state/session';
import { useShownSeat } from '../../state/shown-seat';
import { useResult } from '../../state/use-result';
import { useChosenSpeaker } from './chosen-speaker';
import { reflectionMarks, type ReflectionMarks } from './early-reflections';

export interface SpeakerLayer {
  /** Windows of the layout around the ears. */
  readonly arcs: SpaceLines;
  /** Of the window of the chosen loudspeaker; null where it has none, or nobody hears it. */
  readonly strips: readonly Strip[] | null;
  readonly ears: Point | null;
  readonly reflections: ReflectionMarks | null;
}

export function useSpeakerLayer(): SpeakerLayer {
  const { layout, listening } = useAnalysis();
  const chosen = useChosenSpeaker()?.channel ?? null;
  const ears = useShownSeat()?.position ?? null;
  const window = layout?.channels.find(({ label }) => label === chosen);
  const strips = useResult(
    'windowStrips',
    window && ears
      ? {
          ears,
          window: {
            azimuth: window.azimuth,
            elevation: window.elevation,
            nominalAzimuth: window.nominalAzimuth,
          },
        }
      : null,
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
  return { arcs, strips, ears, reflections };
}
