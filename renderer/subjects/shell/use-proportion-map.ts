/** The map for the present ceiling height, made in the worker; the one before stays until it is there. */

import { useEffect } from 'react';
import { resultKey } from '../../../core/analysis/evaluator';
import type { ProportionMap } from '../../../core/proportions/map';
import { failureOf, followerOf, shareOf } from '../../state/jobs';
import { fileOf, onOtherRoom, projectOf, useProject, useSession } from '../../state/session';
import { useKnown } from '../../state/use-result';

const CELLS = 200;
const REQUEST = { columns: CELLS, rows: CELLS };

const useFollower = followerOf('proportionMap');

export interface MapState {
  readonly map: ProportionMap | null;
  /** Share done while a newer map is on its way; null when it is up to date. */
  readonly progress: number | null;
  readonly failed: string | null;
  readonly retry: () => void;
}

export function useProportionMap(): MapState {
  const known = useKnown('proportionMap', REQUEST);
  const { newest, start, stop, again: retry } = useFollower();
  const share = useFollower(shareOf);
  const failed = useFollower(failureOf);
  const key = resultKey('proportionMap', useProject(), REQUEST);
  const opening = useSession((session) => fileOf(session).opening);
  const isKnown = known !== null;
  useEffect(() => {
    if (isKnown) return undefined;
    void start(projectOf(useSession.getState()), REQUEST);
    return stop;
    // The room by what its map depends on; another one of the same height was forgotten all the same.
  }, [key, opening, isKnown, start, stop]);
  return {
    map: known ?? newest?.answer ?? null,
    progress: known || failed ? null : (share ?? 0),
    failed: known ? null : failed,
    retry,
  };
}

onOtherRoom(() => useFollower.getState().forget());
