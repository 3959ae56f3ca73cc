/** Results of the present room, for components. */

import { useSyncExternalStore } from 'react';
import type { AnswerOf, QuickName, RequestOf, SlowName } from '../../core/analysis/results';
import { results } from './results';
import { useProject } from './session';

/** A quick result; the same object until room or request change in what matters to it. Null asks for nothing. */
export function useResult<N extends QuickName>(name: N, request: RequestOf<N>): AnswerOf<N>;
export function useResult<N extends QuickName>(
  name: N,
  request: RequestOf<N> | null,
): AnswerOf<N> | null;
export function useResult<N extends QuickName>(
  name: N,
  request: RequestOf<N> | null,
): AnswerOf<N> | null {
  const project = useProject();
  return request === null ? null : results.quick(name, project, request);
}

/** A slow result where it is known for the present room as it is now; null until then. */
export function useKnown<N extends SlowName>(
  name: N,
  request: RequestOf<N> | null,
): AnswerOf<N> | null {
  const project = useProject();
  const now = (): AnswerOf<N> | null =>
    request === null ? null : results.known(name, project, request);
  return useSyncExternalStore(results.subscribe, now, now);
}
