/** The loudspeaker that evidence is shown of: the chosen one, else the first that has a place. */

import { useMemo } from 'react';
import type { Analysis } from '../../../core/analysis/analyze';
import type { Point } from '../../../core/room/project';
import { useAnalysis, useSelected } from '../../state/session';

export interface ChosenSpeaker {
  readonly channel: string;
  readonly name: string;
  readonly position: Point;
}

/** `channel` is the chosen one's label. Null where no loudspeaker has a place. */
export function chosenSpeaker(
  { layout, speakers }: Pick<Analysis, 'layout' | 'speakers'>,
  channel: string | null,
): ChosenSpeaker | null {
  const chosen = speakers.find((speaker) => speaker.channel === channel) ?? speakers[0];
  if (!chosen) return null;
  const known = layout?.channels.find((candidate) => candidate.label === chosen.channel);
  return {
    channel: chosen.channel,
    name: known?.name ?? chosen.channel,
    position: chosen.position,
  };
}

export function useChosenSpeaker(): ChosenSpeaker | null {
  const { layout, speakers } = useAnalysis();
  const channel = useSelected('speaker');
  return useMemo(() => chosenSpeaker({ layout, speakers }, channel), [layout, speakers, channel]);
}
