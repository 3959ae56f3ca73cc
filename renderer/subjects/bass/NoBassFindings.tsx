/** Stands for an empty list of findings of bass: nothing is wrong, or nothing is known yet. */

import type { ReactElement } from 'react';
import { useBassPending } from './response-store';

export function NoBassFindings(): ReactElement {
  return useBassPending() ? (
    <>Not known yet: the bass at the seats is still to come.</>
  ) : (
    <>Nothing is wrong here.</>
  );
}
