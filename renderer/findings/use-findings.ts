/** Every finding of the present room, of all results that are known of it. */

import { useMemo } from 'react';
import { allFindings } from '../../core/analysis/all-findings';
import type { Finding } from '../../core/findings/finding';
import { useFoundPlaces } from '../subjects/bass/places-store';
import { useBassOfRoom } from '../subjects/bass/response-store';
import { useBuilt, useSolved } from '../pressure/built-store';
import { results } from '../state/results';
import { useProject, useSession } from '../state/session';

export function useFindings(): readonly Finding[] {
  const project = useProject();
  const units = useSession((session) => session.units);
  const wanted = useBuilt((store) => store.limitHz);
  const solved = useSolved();
  const bass = useBassOfRoom();
  const search = useFoundPlaces();
  return useMemo(
    () => allFindings(results, project, { units, modesToHz: solved?.limitHz ?? wanted, search }),
    // The slow results are read from what is known: they are named here for when one comes in.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [project, units, wanted, solved?.limitHz, solved?.outcome, bass, search],
  );
}
