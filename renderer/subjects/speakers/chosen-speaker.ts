/** The loudspeaker that evidence is shown of: the chosen one, else the first that has a place. */

import { useMemo } from 'react';
import type { Point } from '../../../core/room/project';
import { useAnalysis, useSession } from '../../state/session';

export interface ChosenSpeaker {
  readonly channel: string;
  readonly name: string;
  readonly position: Point;
}

export function useChosenSpeaker(): ChosenSpeaker | null {
  const { layout, speakers } = useAnalysis();
  const channel = useSession((session) => session.channel);
  const chosen = speakers.find((speaker) => speaker.channel === channel) ?? speakers[0];
  return useMemo(() => {
    if (!chosen) return null;
    const known = layout?.channels.find((candidate) => candidate.label === chosen.channel);
    return {
      channel: chosen.channel,
      name: known?.name ?? chosen.channel,
      position: chosen.position,
    };
  }, [layout, chosen]);
}
