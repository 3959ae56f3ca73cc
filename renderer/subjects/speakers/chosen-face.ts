/** The face whose reflection is looked at: chosen in a table, a chart or a finding, or pointed at. */

import { create } from 'zustand';
import { onOtherRoom } from '../../state/session';

export interface FaceStore {
  /** A shell face, or `solid-id:face`; null leaves the choice to the view. */
  readonly face: string | null;
  readonly chooseFace: (face: string | null) => void;
  readonly pointed: string | null;
  readonly pointFace: (face: string | null) => void;
}

export const useFace = create<FaceStore>((set) => ({
  face: null,
  chooseFace: (face) => set({ face }),
  pointed: null,
  pointFace: (pointed) => set({ pointed }),
}));

onOtherRoom(() => useFace.setState({ face: null, pointed: null }));
