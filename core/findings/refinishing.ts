/** Which faces to finish anew so that the decay comes nearest to its corridor: one face, or two. */

import { speedOfSoundMS } from '../air/medium';
import { bandWith } from '../decay/band-with';
import type { DecayBand } from '../decay/decay';
import type { FacesInput } from '../decay/face-absorption';
import { METHODS } from '../decay/methods';
import { JUDGED_BY, verdictOf, type Verdict } from '../decay/verdict';
import { finishLookup, type Finish } from '../room/finishes';
import { roleOf } from '../room/faces';
import { FACES, type Face } from '../room/project';
import type { FindingContext } from './context';
import { practice } from '../room/practice/practice';

/**
 * Finishes that a remedy may propose per face, ids of the library: from live to very absorbent. All are
 * figures of a finish as it is built here: fixed flat, in framing, laid or hung against its face. What
 * was tested with a plenum above it takes that height, and is no remedy.
 */
export const REMEDY_FINISHES: Readonly<Record<'floor' | 'wall' | 'ceiling', readonly string[]>> = {
  floor: ['floor-wood-joists', 'carpet-heavy-concrete', 'carpet-heavy-pad', 'carpet-9-felt'],
  wall: [
    'gyp13-stud',
    'panel-12-frame',
    'drape-med-half',
    'drape-heavy-half',
    'gf-25-rigid',
    'gf-50-rigid',
    'gf48-25-A',
    'gf48-50-A',
  ],
  ceiling: [
    'gyp-ceiling-battens',
    'tile-mf-13-direct',
    'tile-ac-19',
    'fabric-gf-25',
    'gf48-25-A',
    'gf48-50-A',
  ],
};

/** Bands that a remedy is judged by: where the statistics hold and every finish has a figure. */
export const JUDGED_HZ: readonly number[] = [250, 500, 1000, 2000, 4000];

export interface Change {
  readonly face: Face;
  readonly finish: Finish;
}

export interface Refinishing {
  readonly changes: readonly Change[];
}

/** A second face has to lessen the score by this to be worth its work, s. */
const WORTH_A_FACE_S = practice('second-face-worth');

export const bandVerdict = (band: DecayBand): Verdict =>
  verdictOf(
    band,
    JUDGED_BY.map((id) => band.methods[id]),
  );

/**
 * The worst band counts as it is judged, by the nearer of the two methods. Absorption on one pair of
 * faces pleases Eyring alone, so what the other method says of the worst band counts half as much; the
 * other bands part changes that are alike in it.
 */
const FARTHER_SHARE = practice('farther-method-share');
const OTHERS_SHARE = practice('other-bands-share');

/**
 * The best change of one face, and the best change of two where that is worth a second face; each only
 * where it brings the worst band nearer to its corridor than it is.
 */
export function bestRefinishings(context: FindingContext): readonly Refinishing[] {
  const changes = possibleChanges(context);
  const bands = context.decay.bands.filter((band) => JUDGED_HZ.includes(band.hz));
  const outside = bands.map((band) => Math.abs(bandVerdict(band).outsideS));
  const now = { worstS: Math.max(0, ...outside), sumS: outside.reduce((a, b) => a + b, 0) };
  const best = (sets: Iterable<readonly Change[]>, belowScore: number): Scored | null => {
    let found: Scored | null = null;
    for (const set of sets) {
      const score = scoreAfter(context, bands, set, now);
      if (score !== null && score < (found?.score ?? belowScore)) found = { changes: set, score };
    }
    return found;
  };
  const one = best(
    changes.map((change) => [change]),
    Infinity,
  );
  if (one && one.score < WORTH_A_FACE_S) return [one];
  const two = best(pairsOf(changes), (one?.score ?? Infinity) - WORTH_A_FACE_S);
  return [two, one].filter((found) => found !== null);
}

interface Scored extends Refinishing {
  readonly score: number;
}

function possibleChanges({ project }: FindingContext): readonly Change[] {
  const lookup = finishLookup(project);
  return FACES.flatMap((face) =>
    REMEDY_FINISHES[roleOf(face)].flatMap((id): readonly Change[] => {
      const finish = lookup(id);
      return finish && id !== project.room.finishes[face] ? [{ face, finish }] : [];
    }),
  );
}

function* pairsOf(changes: readonly Change[]): Generator<readonly Change[]> {
  for (const [i, first] of changes.entries()) {
    for (const second of changes.slice(i + 1)) {
      if (second.face !== first.face) yield [first, second];
    }
  }
}

interface Outside {
  /** Seconds that the worst band is outside its corridor, and all together. */
  readonly worstS: number;
  readonly sumS: number;
}

/** Null where the bands are not nearer to their corridors than `now`, or one is unknown. */
function scoreAfter(
  context: FindingContext,
  bands: readonly DecayBand[],
  changes: readonly Change[],
  now: Outside,
): number | null {
  let [nearS, farS, sumS] = [0, 0, 0];
  for (const band of bands) {
    const input = refinished(context, band, changes);
    if (!input) return null;
    const times = JUDGED_BY.map((id) => METHODS[id].timeS(input));
    const outsideS = Math.abs(verdictOf(band, times).outsideS);
    nearS = Math.max(nearS, outsideS);
    sumS += outsideS;
    if (nearS >= now.worstS || sumS >= now.sumS) return null;
    for (const time of times) farS = Math.max(farS, Math.abs(verdictOf(band, [time]).outsideS));
  }
  return nearS + FARTHER_SHARE * farS + OTHERS_SHARE * sumS;
}

/** A band with the bare parts of some faces refinished; null where a figure is missing. */
const refinished = (
  { project, space }: FindingContext,
  band: DecayBand,
  changes: readonly Change[],
): FacesInput | null =>
  bandWith(space, speedOfSoundMS(project.air.temperatureC), band, (surface) =>
    surface.patch === null
      ? (changes.find(({ face }) => face === surface.face)?.finish ?? null)
      : null,
  );
