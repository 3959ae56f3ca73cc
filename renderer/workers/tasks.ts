/** The computations behind each task, in slices: the same ones run without a worker. */

import { proportionMap } from '../../core/proportions/map';
import { searchRooms } from '../../core/proportions/search';
import type { TaskName, Tasks } from './messages';

export type Slices<N extends TaskName> = Generator<number, Tasks[N]['output']>;

const TASKS: { readonly [N in TaskName]: (input: Tasks[N]['input']) => Slices<N> } = {
  map: ({ heightM, speedMS, columns, rows }) => proportionMap(heightM, speedMS, columns, rows),
  search: ({ bay, present, speedMS }) => searchRooms(bay, present, speedMS),
};

/** Begin a task; it runs as far as its generator is asked to. */
export function beginTask<N extends TaskName>(name: N, input: Tasks[N]['input']): Slices<N> {
  return TASKS[name](input);
}
