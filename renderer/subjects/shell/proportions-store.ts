/** What the proportions view knows beside the room: the search in the bay. */

import { create } from 'zustand';
import { bayOf } from '../../../core/proportions/bay';
import { followerOf } from '../../state/jobs';
import { onOtherRoom, projectOf, useSession } from '../../state/session';

/** The search in the bay. */
export const useBaySearch = followerOf('baySearch');

export interface ProportionsState {
  readonly start: () => void;
}

export const useProportions = create<ProportionsState>(() => ({
  start: () => {
    const session = useSession.getState();
    const project = projectOf(session);
    session.show('shell', 'proportions');
    void useBaySearch.getState().start(project, { bay: bayOf(project, session.units) });
  },
}));

onOtherRoom(() => useBaySearch.getState().forget());
