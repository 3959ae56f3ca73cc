import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Evaluator } from '../../../core/analysis/evaluator';
import { wholeEvaluator } from '../../../core/analysis/slow-work';
import type { PlaceSearchOptions } from '../../../core/analysis/subwoofer-search';
import { USUAL_SUBWOOFER_M } from '../../../core/scene/subwoofer-box';
import { bayOf } from '../../../core/proportions/bay';
import { openRoom } from '../../../core/room/open-room';
import type { Project } from '../../../core/room/project';
import { LOOK_MS, SILENT_LOOKS } from '../../../renderer/workers/compute';

function roomOf(text: string): Project {
  const opened = openRoom(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.project;
}

const ROOM = roomOf(
  readFileSync(
    new URL('../../../resources/examples/under-the-ducts.room.json', import.meta.url),
    'utf8',
  ),
);

/** About as large as can be solved: a hall with boxes that line up nowhere. */
const HALL = roomOf(
  JSON.stringify({
    format: 'roomwright-room',
    version: 1,
    room: {
      size: { width: 9.2, length: 10.7, height: 4.1 },
      solids: [
        { id: 'duct', kind: 'soffit', min: [0, 0, 3.7], max: [1.13, 10.7, 4.1] },
        { id: 'step', kind: 'riser', min: [3.1, 9, 0], max: [6.17, 10.7, 0.43] },
        { id: 'closet', kind: 'closet', min: [8.2, 4.4, 0], max: [9.2, 5.31, 2.77] },
      ],
    },
    seating: { rows: [{ id: 'front', seats: 4, y: 5 }] },
  }),
);

/** Longest work between two words of a task, ms of processor time; looked at for `mostMs` at most. */
function longestSilenceMs(task: Generator<unknown, unknown>, mostMs = Infinity): number {
  const until = performance.now() + mostMs;
  let longest = 0;
  while (performance.now() < until) {
    const before = process.cpuUsage();
    const { done } = task.next();
    const { user, system } = process.cpuUsage(before);
    longest = Math.max(longest, (user + system) / 1000);
    if (done) break;
  }
  return longest;
}

/** A computer five times as slow still speaks before it is given up. */
const MOST_MS = (SILENT_LOOKS * LOOK_MS) / 5;

/** A fresh evaluator has nothing to fall back on. */
const begin: Evaluator['begin'] = (...asked) => wholeEvaluator().begin(...asked);
const places: PlaceSearchOptions = {
  count: 2,
  stepM: 0.2,
  boxM: USUAL_SUBWOOFER_M,
  drives: true,
  bandHz: [20, 120],
};

describe('honest work reports its progress long before it is taken for dead', () => {
  it.each([
    ['the coarse modes', () => begin('coarseModes', ROOM, {})],
    ['the fine modes', () => begin('roomModes', ROOM, { limitHz: 200 })],
    ['the response', () => begin('seatResponses', ROOM, { modesToHz: 200 })],
    [
      'places for loudspeakers',
      () => begin('speakerPlaces', ROOM, { options: {}, units: 'metric' }),
    ],
    ['the search in the bay', () => begin('baySearch', ROOM, { bay: bayOf(ROOM) })],
    ['the map', () => begin('proportionMap', ROOM, { columns: 200, rows: 200 })],
    ['the whole analysis', () => begin('wholeAnalysis', ROOM, { units: 'metric' })],
  ])(
    '%s',
    (_what, task) => {
      expect(longestSilenceMs(task())).toBeLessThan(MOST_MS);
    },
    60_000,
  );

  it('the search for subwoofer places, of every set', () => {
    const task = begin('subwooferSearch', HALL, { modesToHz: null, options: places });
    expect(longestSilenceMs(task, 5_000)).toBeLessThan(MOST_MS);
  }, 60_000);

  it('the modes of a hall that takes long to solve', () => {
    const task = begin('roomModes', HALL, { limitHz: 200 });
    expect(longestSilenceMs(task, 8_000)).toBeLessThan(MOST_MS);
  }, 60_000);
});
