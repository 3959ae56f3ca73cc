/** The gestures of the keys that one handle or field takes. */

import { useRef } from 'react';
import { startBursts, type Burst } from '../../state/burst';
import { useSession } from '../../state/session';

export function useKeyGesture(): Burst {
  const bursts = useRef<Burst | null>(null);
  const of = (): Burst => (bursts.current ??= startBursts(useSession.getState().begin));
  return { press: () => of().press(), end: () => bursts.current?.end() };
}
