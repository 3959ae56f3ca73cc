/** What a window and its worker say to each other: tasks go in, progress and results come out. */

import type { ProportionMap } from '../../core/proportions/map';
import type { SearchResult } from '../../core/proportions/search';
import type { Bay, ShellSize } from '../../core/room/project';

/** Every long computation by name: what it needs and what it gives. */
export interface Tasks {
  readonly map: {
    readonly input: {
      readonly heightM: number;
      readonly speedMS: number;
      readonly columns: number;
      readonly rows: number;
    };
    readonly output: ProportionMap;
  };
  readonly search: {
    readonly input: { readonly bay: Bay; readonly present: ShellSize; readonly speedMS: number };
    readonly output: SearchResult;
  };
}

export type TaskName = keyof Tasks;

export type ToWorker =
  | {
      readonly kind: 'start';
      readonly job: number;
      readonly name: TaskName;
      readonly input: unknown;
    }
  | { readonly kind: 'stop'; readonly job: number };

export type FromWorker =
  | { readonly kind: 'progress'; readonly job: number; readonly share: number }
  | { readonly kind: 'done'; readonly job: number; readonly output: unknown }
  | { readonly kind: 'failed'; readonly job: number; readonly sentence: string };
