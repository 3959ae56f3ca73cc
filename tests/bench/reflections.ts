/**
 * Early reflections: all first-order paths of 11 loudspeakers to 8 seats among 20 solids, with their
 * levels in four octaves, and the second order of one pair. Part of `npm run bench`.
 */

import { finishLookup } from '../../core/room/finishes';
import type { Point, Project, Solid } from '../../core/room/project';
import { reflectingRoom, reflectionsBetween } from '../../core/reflections/image-sources';
import { reflectionLevelDb } from '../../core/reflections/reflection-level';

/** What the drawing can take while something is dragged, ms. */
export const REFLECTIONS_AIM_MS = 5;
const SPEED_MS = 343;
const OCTAVES = [1000, 2000, 4000, 8000] as const;

/** Soffits, columns and risers that stand in the way of some paths and give others. */
const SOLIDS: readonly Solid[] = Array.from({ length: 20 }, (_, i) => {
  const [x, y] = [0.2 + (i % 5) * 1.1, 0.7 + Math.floor(i / 5) * 1.6];
  const [low, high] = i % 2 === 0 ? [0, 0.15 + i * 0.01] : [2.5 - i * 0.01, 3];
  return {
    ...{ id: `s${i}`, kind: 'other', finish: 'gyp13-stud' },
    min: [x, y, low] as const,
    max: [x + 0.7, y + 0.5, high] as const,
  };
});

const SPEAKERS: readonly Point[] = Array.from({ length: 11 }, (_, i) => {
  const turn = (2 * Math.PI * i) / 11;
  return [3 + 2.7 * Math.sin(turn), 4 + 3.7 * Math.cos(turn), i % 3 === 2 ? 2.3 : 1.2];
});

const SEATS: readonly Point[] = Array.from({ length: 8 }, (_, i) => [
  1.5 + (i % 4),
  4 + Math.floor(i / 4) * 1.5,
  1.15,
]);

export interface ReflectionWork {
  readonly allFirstOrder: () => number;
  readonly oneSecondOrder: () => number;
}

/** The two works to measure, in `bare` with a shell of 6 x 8 x 3 m; each gives the number of its paths. */
export function reflectionWork(bare: Project): ReflectionWork {
  const size = { width: 6, length: 8, height: 3 };
  const room = { ...bare.room, size, solids: SOLIDS };
  const finish = finishLookup(bare);
  const speaker: Point = [0.6, 0.3, 1.2];
  const seat: Point = [2.5, 4, 1.15];
  return {
    allFirstOrder: () => {
      const reflecting = reflectingRoom(room);
      let paths = 0;
      for (const source of SPEAKERS)
        for (const receiver of SEATS) {
          const found = reflectionsBetween(reflecting, source, receiver, SPEED_MS)?.paths ?? [];
          for (const path of found) for (const hz of OCTAVES) reflectionLevelDb(path, hz, finish);
          paths += found.length;
        }
      return paths;
    },
    oneSecondOrder: () =>
      reflectionsBetween(reflectingRoom(room), speaker, seat, SPEED_MS, { order: 2 })?.paths
        .length ?? 0,
  };
}
