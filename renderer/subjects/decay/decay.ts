import { patchLabels } from '../../drawing/patch-labels';
import type { Subject } from '../subject';
import { DecayEvidence, DecayInputs } from './DecaySubject';

export const DECAY: Subject = {
  id: 'decay',
  title: 'Decay',
  about: 'finishes and time',
  Inputs: DecayInputs,
  Evidence: DecayEvidence,
  layer: { chooses: ['patch'], labels: (context) => patchLabels(context, () => true) },
  tells: ['decay'],
};
