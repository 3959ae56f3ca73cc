/** The map for the present ceiling height, made in the worker; the one before stays until it is there. */

import { useEffect, useState } from 'react';
import type { ProportionMap } from '../../../core/proportions/map';
import { compute } from '../../workers/compute';

const CELLS = 200;

export interface MapState {
  readonly map: ProportionMap | null;
  /** Share done while a newer map is on its way; null when it is up to date. */
  readonly progress: number | null;
  readonly failed: string | null;
  readonly retry: () => void;
}

export function useProportionMap(heightM: number, speedMS: number): MapState {
  const [state, setState] = useState<Omit<MapState, 'retry'>>({
    map: null,
    progress: 0,
    failed: null,
  });
  const [attempt, setAttempt] = useState(0);
  useEffect(() => {
    const job = compute('map', { heightM, speedMS, columns: CELLS, rows: CELLS }, (progress) =>
      setState((before) => ({ ...before, progress })),
    );
    job.result.then(
      (map) => {
        if (map) setState({ map, progress: null, failed: null });
      },
      (error: unknown) =>
        setState((before) => ({
          ...before,
          progress: null,
          failed: error instanceof Error ? error.message : String(error),
        })),
    );
    return job.stop;
  }, [heightM, speedMS, attempt]);
  return { ...state, retry: () => setAttempt((count) => count + 1) };
}
