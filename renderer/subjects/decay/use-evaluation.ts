/** What a design absorbs in the room's air. The panel and the chart ask for the same one. */

import type { Design } from '../../../core/absorbers/design';
import type { Evaluation } from '../../../core/absorbers/evaluate';
import { useSession } from '../../state/session';
import { useResult } from '../../state/use-result';

export function useEvaluation(design: Design): Evaluation {
  const units = useSession((session) => session.units);
  return useResult('absorber', { design, units });
}
