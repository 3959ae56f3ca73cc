/** The painting of what is chosen to be painted, in the present room. */

import { useMemo } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { spaceOf, type NamedModes } from '../../core/analysis/named-modes';
import type { Sounding } from '../../core/analysis/modal';
import { drivenSource, roomField, type RoomField } from '../../core/analysis/room-field';
import { roomModesField, shellField } from '../../core/response/field';
import { LISTED_TO_HZ } from '../../core/modes/axial-spacing';
import type { RoomModes } from '../../core/room-modes/room-modes';
import { builtModeName, modeName } from '../kit/chart/mode-name';
import { projectOf, useAnalysis, useProject, useSession, type View } from '../state/session';
import { builtOf, fineOf, shownBuilt, spaceKey, useBuilt, type ShownBuilt } from './built-store';
import { paintFrequency, paintMode, type Painting } from './painting';
import { planesIn, planesOf } from './planes';
import { builtMeant, modeMeant, type Painted } from './painted';

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

/** The fine modes as built of the present room, which pressure is summed from; null without. */
export function useFineModes(): NamedModes | null {
  const project = useProject();
  const key = useMemo(() => spaceKey(project), [project]);
  return useBuilt((store) => fineOf(store, key));
}

/** The parts of the present room that its sound depends on, the same object while none of them changes. */
function useSounding(): Sounding {
  return useSession(
    useShallow((session) => {
      const { room, air, objects, finishesCustom } = projectOf(session);
      return { room, air, objects, finishesCustom };
    }),
  );
}

/** The field that pressure is summed from: as built where that is known, else the plain shell's. */
export function useRoomField(): RoomField {
  const sounding = useSounding();
  const shape = useFineModes()?.shape ?? null;
  return useMemo(() => roomField(sounding, shape), [sounding, shape]);
}

/** Modes to this many times a frequency make its pressure; a coarse solution ends early. */
const REACH = 1.2;
const reaches = ({ limitHz, quality }: RoomModes, frequencyHz: number): boolean =>
  quality === 'fine' || REACH * frequencyHz <= limitHz;

export interface ShownPainting extends Painting {
  /** Frequency that it was computed for, which may have moved with the room. */
  readonly frequencyHz: number;
  /** What is painted, in words. */
  readonly name: string;
}

/** The painting as `view` shows it; null where nothing is chosen or can be painted. */
export function usePainting(view: View): ShownPainting | null {
  const painted = useSession((session) => session.painted);
  const ofMode = useModePainting(painted?.kind === 'mode' ? painted : null);
  const ofFrequency = useFrequencyPainting(
    painted?.kind === 'frequency' ? painted.frequencyHz : null,
    view,
  );
  return ofMode ?? ofFrequency;
}

function useEarsM(): number | null {
  const { listening } = useAnalysis();
  return listening?.[2] ?? null;
}

function useModePainting(painted: Extract<Painted, { kind: 'mode' }> | null): ShownPainting | null {
  const shown = useShownModes();
  const sounding = useSounding();
  const earsM = useEarsM();
  return useMemo((): ShownPainting | null => {
    if (!painted) return null;
    if (painted.of === 'built') {
      if (!shown) return null;
      const { modes, shape } = shown.built;
      const number = builtMeant(painted, modes);
      const mode = modes[number ?? -1];
      if (number === null || !mode) return null;
      // On the faces that it was solved with.
      const planes = planesOf(shown.project.room, earsM);
      return {
        ...paintMode({ field: roomModesField(shape) }, number, planes),
        frequencyHz: mode.frequencyHz,
        name: `${builtModeName(mode)}, as built`,
      };
    }
    const { size, speedMS } = spaceOf(sounding);
    const field = shellField(size, speedMS, LISTED_TO_HZ);
    const number = modeMeant(
      painted,
      field.orders.map((order, n) => ({ order, frequencyHz: field.frequenciesHz[n] ?? 0 })),
    );
    const order = field.orders[number ?? -1];
    if (number === null || !order) return null;
    return {
      ...paintMode({ field }, number, planesOf(sounding.room, earsM)),
      frequencyHz: field.frequenciesHz[number] ?? 0,
      name: `${modeName(order)}, plain shell`,
    };
  }, [painted, shown, sounding, earsM]);
}

function useFrequencyPainting(frequencyHz: number | null, view: View): ShownPainting | null {
  const sounding = useSounding();
  const subwoofers = useSession((session) => projectOf(session).speakers.subwoofers);
  const built = useBuiltModes();
  const earsM = useEarsM();
  const wanted = frequencyHz !== null;
  const enough = frequencyHz !== null && built !== null && reaches(built.shape, frequencyHz);
  const shape = enough ? (built?.shape ?? null) : null;
  const whole = useMemo(
    () => (wanted ? roomField(sounding, shape) : null),
    [wanted, sounding, shape],
  );
  return useMemo((): ShownPainting | null => {
    if (frequencyHz === null || !whole) return null;
    const where = planesIn(view);
    const planes = planesOf(sounding.room, earsM).filter((plane) => plane.where === where);
    const painted = paintFrequency(whole, subwoofers.map(drivenSource), frequencyHz, planes);
    const name = `all subwoofers, ${shape ? 'as built' : 'plain shell'}`;
    return painted ? { ...painted, frequencyHz, name } : null;
  }, [frequencyHz, whole, shape, sounding, subwoofers, earsM, view]);
}
