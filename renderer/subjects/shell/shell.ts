import type { Subject } from '../subject';
import { ShellEvidence, ShellInputs } from './ShellSubject';

export const SHELL: Subject = {
  id: 'shell',
  title: 'Shell',
  about: 'size and modes',
  Inputs: ShellInputs,
  Evidence: ShellEvidence,
  layer: { chooses: [] },
  tells: ['shell', 'picture'],
};
