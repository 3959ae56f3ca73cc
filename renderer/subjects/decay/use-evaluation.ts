/** What a design absorbs in the room's air. The panel and the chart ask for the same one. */

import type { Design } from '../../../core/absorbers/design';
import { evaluateDesign, type Evaluation } from '../../../core/absorbers/evaluate';
import type { Air } from '../../../core/air/medium';
import type { LengthUnits } from '../../../core/quantity/length';
import { useProject, useSession } from '../../state/session';

interface Kept {
  readonly design: Design;
  readonly air: Air;
  readonly units: LengthUnits;
  readonly evaluation: Evaluation;
}

let kept: Kept | null = null;

export function useEvaluation(design: Design): Evaluation {
  const { air } = useProject();
  const units = useSession((session) => session.units);
  if (kept?.design !== design || kept.air !== air || kept.units !== units) {
    kept = { design, air, units, evaluation: evaluateDesign(design, air, units) };
  }
  return kept.evaluation;
}
