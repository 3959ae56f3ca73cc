/** What a window and its worker say to each other: tasks go in, progress and results come out. */

import type { NamedModesOutcome } from '../../core/analysis/named-modes';
import type { PlaceSearch, PlaceSearchOptions } from '../../core/analysis/subwoofer-search';
import type { SeatResponses } from '../../core/analysis/seat-response';
import type { PlacerOptions, PlacerResult } from '../../core/placing/placer';
import type { ProportionMap } from '../../core/proportions/map';
import type { SearchResult } from '../../core/proportions/search';
import type { LengthUnits } from '../../core/quantity/length';
import type { Bay, Project, ShellSize } from '../../core/room/project';
import type { Quality } from '../../core/room-modes/elements';
import type { RoomSpace } from '../../core/room-modes/room-modes';

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
  /** Modes of the free space with its fittings. */
  readonly built: {
    readonly input: {
      readonly space: RoomSpace;
      readonly limitHz: number;
      readonly quality: Quality;
    };
    readonly output: NamedModesOutcome;
  };
  /** The subwoofers at every seat: of the room as built if that is asked for and can be solved. */
  readonly response: {
    readonly input: {
      readonly project: Project;
      readonly asBuilt: boolean;
      readonly limitHz: number;
    };
    readonly output: SeatResponses;
  };
  /** Places for the loudspeakers of the layout. */
  readonly placing: {
    readonly input: {
      readonly project: Project;
      readonly options: PlacerOptions;
      readonly units: LengthUnits;
    };
    readonly output: PlacerResult;
  };
  /** Better places for the subwoofers, likewise. */
  readonly subwoofers: {
    readonly input: {
      readonly project: Project;
      readonly asBuilt: boolean;
      readonly limitHz: number;
      readonly options: PlaceSearchOptions;
    };
    readonly output: PlaceSearch;
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
  /** `keep` asks for what was found so far; an output of null says that the task has nothing. */
  | { readonly kind: 'stop'; readonly job: number; readonly keep: boolean };

export type FromWorker =
  | { readonly kind: 'progress'; readonly job: number; readonly share: number }
  | { readonly kind: 'done'; readonly job: number; readonly output: unknown }
  | { readonly kind: 'failed'; readonly job: number; readonly sentence: string };
