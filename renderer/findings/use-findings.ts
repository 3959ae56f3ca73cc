/** Every finding of the present room: the quick ones, and those of what the worker has answered for it. */

import { useMemo } from 'react';
import { joinFindings, slowFindings } from '../../core/analysis/whole';
import type { Finding } from '../../core/findings/finding';
import { useBassOfRoom } from '../subjects/bass/response-store';
import { foundBassOf, usePlaces } from '../subjects/bass/places-store';
import { spaceKey, useBuilt } from '../pressure/built-store';
import { useAnalysis, useProject, useSession } from '../state/session';

/** In their order. Answers for another room, and coarse ones under a dragging hand, tell nothing. */
export function useFindings(): readonly Finding[] {
  const project = useProject();
  const { findings } = useAnalysis();
  const key = useMemo(() => spaceKey(project), [project]);
  const built = useBuilt((store) =>
    store.key === key && store.quality === 'fine' ? store.outcome : null,
  );
  const bass = useBassOfRoom();
  const units = useSession((session) => session.units);
  const answer = usePlaces((store) => store.answer);
  return useMemo(() => {
    const found = bass ? foundBassOf(answer, project, bass.of) : null;
    return joinFindings(findings, slowFindings({ built, bass, found }, units));
  }, [project, findings, built, bass, answer, units]);
}
