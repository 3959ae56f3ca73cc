/** The painting of what is chosen to be painted, in the present room. */

import { useMemo } from 'react';
import { useShallow } from 'zustand/react/shallow';
import { spaceOf } from '../../core/analysis/named-modes';
import type { SolvedModes } from '../../core/analysis/results';
import type { Sounding } from '../../core/analysis/modal-room';
import { drivenSource } from '../../core/analysis/room-field';
import { roomModesField, shellField } from '../../core/response/field';
import { LISTED_TO_HZ } from '../../core/modes/axial-spacing';
import { builtModeName, modeName } from '../kit/chart/mode-name';
import { projectOf, useAnalysis, useSession, type View } from '../state/session';
import { useKnown, useResult } from '../state/use-result';
import { useFineRequest, useShownModes } from './built-store';
import { paintFrequency, paintMode, type Painting } from './painting';
import { planesIn, planesOf } from './planes';
import { builtMeant, modeMeant, type Painted } from './painted';

/** The parts of the present room that its sound depends on, the same object while none of them changes. */
function useSounding(): Sounding {
  return useSession(
    useShallow((session) => {
      const { room, air, objects, finishesCustom } = projectOf(session);
      return { room, air, objects, finishesCustom };
    }),
  );
}

/** Modes to this many times a frequency make its pressure; a coarse solution ends early. */
const REACH = 1.2;

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
  const earsM = useEarsM();
  const modes = useModesFor(frequencyHz ?? 0);
  const field = useResult('roomField', frequencyHz === null ? null : { modes });
  return useMemo((): ShownPainting | null => {
    if (frequencyHz === null || !field) return null;
    const where = planesIn(view);
    const planes = planesOf(sounding.room, earsM).filter((plane) => plane.where === where);
    const painted = paintFrequency(field, subwoofers.map(drivenSource), frequencyHz, planes);
    const name = `all subwoofers, ${modes ? 'as built' : 'plain shell'}`;
    return painted ? { ...painted, frequencyHz, name } : null;
  }, [frequencyHz, field, modes, sounding, subwoofers, earsM, view]);
}

/** The modes that make `frequencyHz`: the fine ones as built, coarse ones that reach so far, else the shell's. */
function useModesFor(frequencyHz: number): SolvedModes | null {
  const fine = useFineRequest();
  const coarse = useKnown('coarseModes', {});
  if (fine) return fine;
  const reaches = coarse?.ok && REACH * frequencyHz <= coarse.built.shape.limitHz;
  return reaches ? { result: 'coarseModes' } : null;
}
