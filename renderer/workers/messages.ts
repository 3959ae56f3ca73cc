/** What a window and its worker say to each other: results are asked for, progress and answers come back. */

import type { SlowName } from '../../core/analysis/results';
import type { Project } from '../../core/room/project';

export type ToWorker =
  | {
      readonly kind: 'start';
      readonly job: number;
      readonly name: SlowName;
      readonly project: Project;
      readonly request: unknown;
    }
  /** `keep` asks for what was found so far; an output of null says that the task has nothing. */
  | { readonly kind: 'stop'; readonly job: number; readonly keep: boolean };

export type FromWorker =
  | {
      readonly kind: 'progress';
      readonly job: number;
      readonly share: number;
      /** A first answer, where there is one. */
      readonly interim?: unknown;
    }
  | { readonly kind: 'done'; readonly job: number; readonly output: unknown }
  | { readonly kind: 'failed'; readonly job: number; readonly sentence: string };
