/** Which evidence of the speakers is open, and the seat that it is looked at from. */

import { create } from 'zustand';
import { useMemo } from 'react';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../../../core/room/seats';
import { seatKey } from '../../state/seat-names';
import { useProject } from '../../state/session';

export const SPEAKER_EVIDENCE = ['angles', 'seats', 'walls', 'early'] as const;
export type SpeakerEvidence = (typeof SPEAKER_EVIDENCE)[number];

export interface EvidenceStore {
  readonly shown: SpeakerEvidence;
  readonly show: (shown: SpeakerEvidence) => void;
  /** Seat that is pointed at for the moment, as `row|seat`. */
  readonly pointed: string | null;
  readonly point: (seat: string | null) => void;
}

export const useSpeakerEvidence = create<EvidenceStore>((set) => ({
  shown: 'angles',
  show: (shown) => set({ shown }),
  pointed: null,
  point: (pointed) => set({ pointed }),
}));

/** The seat that rays are drawn from: the one pointed at, else the reference place. */
export function useHearingSeat(): ListeningPlace | null {
  const project = useProject();
  const pointed = useSpeakerEvidence((store) => store.pointed);
  return useMemo(
    () =>
      listeningPlaces(project).find((seat) => seatKey(seat) === pointed) ?? referencePlace(project),
    [project, pointed],
  );
}
