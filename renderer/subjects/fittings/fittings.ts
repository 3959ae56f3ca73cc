import { isOpening } from '../../../core/room/patch-kinds';
import { patchLabels } from '../../drawing/patch-labels';
import type { Subject } from '../subject';
import { fittingLabels } from './fitting-labels';
import { FittingsEvidence, FittingsInputs } from './FittingsSubject';

export const FITTINGS: Subject = {
  id: 'fittings',
  title: 'Fittings',
  about: 'ducts, risers, closets',
  Inputs: FittingsInputs,
  Evidence: FittingsEvidence,
  layer: {
    chooses: ['solid', 'patch'],
    labels: (context) => [...fittingLabels(context), ...patchLabels(context, isOpening)],
  },
  tells: ['fittings'],
};
