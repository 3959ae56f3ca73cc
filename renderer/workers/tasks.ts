/** The computations behind each task, in slices: the same ones run without a worker. */

import { seatResponses } from '../../core/analysis/seat-response';
import { searchPlaces } from '../../core/analysis/subwoofer-search';
import { placeSpeakers } from '../../core/placing/placer';
import { proportionMap } from '../../core/proportions/map';
import { searchRooms } from '../../core/proportions/search';
import { scaled } from '../../core/quantity/slices';
import { builtForPage, solvedShape } from './built-cache';
import type { TaskName, Tasks } from './messages';

export type Slices<N extends TaskName> = Generator<number, Tasks[N]['output']>;

const TASKS: { readonly [N in TaskName]: (input: Tasks[N]['input']) => Slices<N> } = {
  map: ({ heightM, speedMS, columns, rows }) => proportionMap(heightM, speedMS, columns, rows),
  search: ({ bay, present, speedMS }) => searchRooms(bay, present, speedMS),
  placing: ({ project, options, units }) => placeSpeakers(project, options, units),
  built: ({ space, limitHz, quality }) => builtForPage(space, limitHz, quality),
  *response({ project, asBuilt, limitHz }) {
    const shape = asBuilt ? yield* scaled(solvedShape(project, limitHz), 0, 0.8) : null;
    return yield* scaled(seatResponses(project, shape), 0.8, 1);
  },
  *subwoofers({ project, asBuilt, limitHz, options }) {
    const shape = asBuilt ? yield* scaled(solvedShape(project, limitHz), 0, 0.1) : null;
    return yield* scaled(searchPlaces(project, shape, options), 0.1, 1);
  },
};

/** Begin a task; it runs as far as its generator is asked to. */
export function beginTask<N extends TaskName>(name: N, input: Tasks[N]['input']): Slices<N> {
  return TASKS[name](input);
}
