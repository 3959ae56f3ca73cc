/** The painting of the chosen tone in the present room. */

import { useMemo } from 'react';
import { spaceOf } from '../../core/analysis/built-modes';
import { drivenSource, roomField, type RoomField } from '../../core/analysis/room-field';
import { shapedField, shellField } from '../../core/response/field';
import { LISTED_TO_HZ } from '../../core/modes/axial-spacing';
import type { ShapeModes } from '../../core/shape-modes/shape-modes';
import { useAnalysis, useProject } from '../state/session';
import { builtOf, shownBuilt, spaceKey, useBuilt, type ShownBuilt } from './built-store';
import { paintFrequency, paintMode, type Painting } from './painting';
import { sheetsOf } from './sheets';
import { modeMeant, useTone } from './tone';

/** The modes as built of the present room; null where they are not known, or nothing fills the shell. */
export function useBuiltModes() {
  const project = useProject();
  const key = useMemo(() => spaceKey(project), [project]);
  return useBuilt((store) => builtOf(store, key));
}

/** The modes to show: of the present room, or of the one just before while a hand drags. */
export function useShownModes(): ShownBuilt | null {
  const project = useProject();
  const outcome = useBuilt((store) => store.outcome);
  const of = useBuilt((store) => store.project);
  return useMemo(() => shownBuilt({ outcome, project: of }, project), [outcome, of, project]);
}

/** The field that pressure is summed from: as built where that is known, else the plain shell's. */
export function useRoomField(): RoomField {
  const project = useProject();
  const built = useBuiltModes();
  return useMemo(() => roomField(project, built?.shape ?? null), [project, built]);
}

/** Modes to this many times a frequency make its pressure; a coarse solution ends early. */
const REACH = 1.2;
const reaches = ({ limitHz, quality }: ShapeModes, frequencyHz: number): boolean =>
  quality === 'fine' || REACH * frequencyHz <= limitHz;

export interface ShownPainting extends Painting {
  /** Frequency that it was computed for, which may have moved with the room. */
  readonly frequencyHz: number;
}

export function usePainting(): ShownPainting | null {
  const project = useProject();
  const { listening } = useAnalysis();
  const built = useBuiltModes();
  const shown = useShownModes();
  const tone = useTone((store) => store.tone);
  const earsM = listening?.[2] ?? null;
  const { subwoofers } = project.speakers;
  const ofBuilt = tone?.kind === 'mode' && tone.of === 'built';
  // A mode as built is painted on the faces that it was solved with.
  const painted = ofBuilt ? (shown?.project ?? project) : project;
  const sheets = useMemo(() => (tone ? sheetsOf(painted, earsM) : []), [tone, painted, earsM]);
  const ofMode = useMemo((): ShownPainting | null => {
    if (tone?.kind !== 'mode') return null;
    if (tone.of === 'built') {
      if (!shown) return null;
      const { modes, shape } = shown.built;
      const mode = modeMeant(
        tone,
        modes.map(({ frequencyHz, likeShell }) => ({ frequencyHz, order: likeShell })),
      );
      const frequencyHz = modes[mode ?? -1]?.frequencyHz;
      if (mode === null || frequencyHz === undefined) return null;
      return { ...paintMode({ field: shapedField(shape) }, mode, sheets), frequencyHz };
    }
    const { size, speedMS } = spaceOf(project);
    const field = shellField(size, speedMS, LISTED_TO_HZ);
    const mode = modeMeant(
      tone,
      field.orders.map((order, n) => ({ order, frequencyHz: field.frequenciesHz[n] ?? 0 })),
    );
    if (mode === null) return null;
    return { ...paintMode({ field }, mode, sheets), frequencyHz: field.frequenciesHz[mode] ?? 0 };
    // The shell's modes depend on its size and the air alone, but the sheets follow the fittings.
  }, [tone, shown, sheets, project]);
  const toneHz = tone?.kind === 'frequency' ? tone.frequencyHz : null;
  const wanted = toneHz !== null;
  const enough = toneHz !== null && built !== null && reaches(built.shape, toneHz);
  const whole = useMemo(
    () => (wanted ? roomField(project, enough ? (built?.shape ?? null) : null) : null),
    [wanted, enough, project, built],
  );
  const ofFrequency = useMemo((): ShownPainting | null => {
    if (tone?.kind !== 'frequency' || !whole || subwoofers.length === 0) return null;
    const { frequencyHz } = tone;
    const sources = subwoofers.map(drivenSource);
    return { ...paintFrequency(whole, sources, frequencyHz, sheets), frequencyHz };
  }, [tone, whole, subwoofers, sheets]);
  return ofMode ?? ofFrequency;
}
