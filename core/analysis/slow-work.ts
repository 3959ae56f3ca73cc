/** How the slow results are computed; apart from their table, so that the window need not load it. */

import { speedOfSoundMS } from '../air/medium';
import { placeSpeakers } from '../placing/placer';
import { proportionMap } from '../proportions/map';
import { searchRooms } from '../proportions/search';
import type { LengthUnits } from '../quantity/length';
import { scaled } from '../quantity/slices';
import type { Project } from '../room/project';
import type { Analysis } from './analyze';
import { Evaluator } from './evaluator';
import { namedModes, spaceOf } from './named-modes';
import { COARSE_LIMIT_HZ, type Ask, type OfRoom, type SlowWork } from './results';
import { seatResponses } from './seat-response';
import { searchPlaces } from './subwoofer-search';
import { wholeAnalysis } from './whole-analysis';

/** The room's shape for a response; null where it is the plain shell, or cannot be solved. */
function* shapeFor(project: Project, { modesToHz }: OfRoom, ask: Ask) {
  if (modesToHz === null || project.room.solids.length === 0) return null;
  const outcome = yield* ask.part('roomModes', project, { limitHz: modesToHz });
  return outcome.ok ? outcome.built.shape : null;
}

const SLOW_WORK: SlowWork = {
  roomModes: (project, { limitHz }) => namedModes(spaceOf(project), { limitHz, keepFactor: true }),
  coarseModes: (project) =>
    namedModes(spaceOf(project), { limitHz: COARSE_LIMIT_HZ, quality: 'coarse' }),
  *seatResponses(project, request, ask) {
    const shape = yield* scaled(shapeFor(project, request, ask), 0, 0.8);
    return yield* scaled(seatResponses(project, shape), 0.8, 1);
  },
  *subwooferSearch(project, request, ask) {
    const shape = yield* scaled(shapeFor(project, request, ask), 0, 0.1);
    return yield* scaled(searchPlaces(project, shape, request.options), 0.1, 1);
  },
  speakerPlaces: (project, { options, units }) => placeSpeakers(project, options, units),
  baySearch: ({ room, air }, { bay }) =>
    searchRooms(bay, room.size, speedOfSoundMS(air.temperatureC)),
  proportionMap: ({ room, air }, { columns, rows }) =>
    proportionMap(room.size.height, speedOfSoundMS(air.temperatureC), columns, rows),
  wholeAnalysis,
};

/** An evaluator that computes all there is by itself: in the worker, and where there is no window. */
export const wholeEvaluator = (): Evaluator => new Evaluator(SLOW_WORK);

/** The analysis with the modes as built and every finding, in one go; takes a second or two. */
export const analyzeWhole = (project: Project, units: LengthUnits = 'metric'): Analysis =>
  wholeEvaluator().finish('wholeAnalysis', project, { units });
