/** Which evidence of the bass is open. */

import { useShown } from '../../state/session';

export type BassEvidence = 'behind' | 'places';

export const useBassEvidence = (): [BassEvidence, (what: BassEvidence) => void] =>
  useShown<BassEvidence>('bass', 'behind');
