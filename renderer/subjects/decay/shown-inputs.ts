/** Whether the absorber bench stands open in place of the inputs of decay. */

import { useShown } from '../../state/session';

export type ShownInputs = 'all' | 'bench';

export const useShownInputs = (): [ShownInputs, (what: ShownInputs) => void] =>
  useShown<ShownInputs>('decay-inputs', 'all');
