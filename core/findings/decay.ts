/** Octave bands that ring too long or too short, with the one change of finish that helps most. */

import { speedOfSoundMS } from '../air/medium';
import type { DecayBand } from '../decay/decay';
import type { FaceAbsorption, FacesInput } from '../decay/face-absorption';
import { METHODS } from '../decay/methods';
import { targetSource } from '../decay/target';
import { JUDGED_BY, verdictOf, type Verdict } from '../decay/verdict';
import { bandName } from '../quantity/bands';
import { absorptionAt, finishLookup, type Finish } from '../room/finishes';
import { FACES, type Face } from '../room/project';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';

/** Finishes that a remedy may propose per face, ids of the library: from live to very absorbent. */
export const REMEDY_FINISHES: Readonly<Record<'floor' | 'wall' | 'ceiling', readonly string[]>> = {
  floor: ['floor-wood-joists', 'carpet-heavy-concrete', 'carpet-heavy-pad', 'carpet-9-felt'],
  wall: [
    'gyp13-stud',
    'panel-12-frame',
    'drape-med-half',
    'drape-heavy-half',
    'gf-25-rigid',
    'gf-50-rigid',
  ],
  ceiling: ['gyp-ceiling-battens', 'tile-mf-13-direct', 'tile-ac-19', 'tile-gf-25-cloth-e400'],
};

/** Bands that a remedy is judged by: where the statistics hold and every finish has a figure. */
const JUDGED_HZ: readonly number[] = [250, 500, 1000, 2000, 4000];

export function decayFindings(context: FindingContext): readonly Finding[] {
  const { project, decay } = context;
  // Below the Schroeder frequency the statistics mean little: those bands are shown, not judged.
  const judged = decay.bands
    .filter((band) => JUDGED_HZ.includes(band.hz))
    .map((band) => ({ band, verdict: bandVerdict(band) }))
    .filter(({ verdict }) => verdict.outsideS !== 0);
  const [first, ...others] = judged;
  if (!first) return [];
  const { band, verdict } = others.reduce(
    (a, b) => (Math.abs(b.verdict.outsideS) > Math.abs(a.verdict.outsideS) ? b : a),
    first,
  );
  const long = verdict.outsideS > 0;
  return [
    {
      id: long ? 'decay-long' : 'decay-short',
      severity: Math.abs(verdict.outsideS) > (band.targetS ?? 1) * 0.5 ? 'warning' : 'note',
      subject: 'decay',
      where: judged.map((one) => bandName(one.band.hz)).join(', '),
      message: `${bandName(band.hz)} decays in ${timesText(band)}; the target corridor is ${(band.lowS ?? 0).toFixed(2)} to ${(band.highS ?? 0).toFixed(2)} s. ${long ? 'Speech blurs and effects smear.' : 'The room sounds dead.'}`,
      figureName: `decay at ${bandName(band.hz)}`,
      value: verdict.nearestS,
      limit: long ? band.highS : band.lowS,
      unit: 's',
      source: targetSource(project.target),
      remedies: finishRemedies(context),
      place: { kind: 'band', hz: band.hz },
    },
  ];
}

const bandVerdict = (band: DecayBand): Verdict =>
  verdictOf(
    band,
    JUDGED_BY.map((id) => band.methods[id]),
  );

/** `0.67 s`, or both times where the methods part by 0.01 s or more. */
function timesText({ methods }: DecayBand): string {
  const [one, other] = [methods.eyring ?? 0, methods.arauPuchades ?? 0];
  const text = `${one.toFixed(2)} s`;
  return one.toFixed(2) === other.toFixed(2)
    ? text
    : `${text} (Eyring; ${other.toFixed(2)} s by Arau-Puchades)`;
}

interface Change {
  readonly face: Face;
  readonly finish: Finish;
}

interface Trial extends Change {
  readonly outsideS: number;
}

/** The single change of a face's finish that brings the judged bands nearest to the corridor. */
function finishRemedies(context: FindingContext): readonly Remedy[] {
  const { project, decay } = context;
  const lookup = finishLookup(project);
  const bands = decay.bands.filter((band) => JUDGED_HZ.includes(band.hz));
  const now = bands.reduce((sum, band) => sum + Math.abs(bandVerdict(band).outsideS), 0);
  let best: Trial | null = null;
  for (const face of FACES) {
    const kind = face === 'floor' || face === 'ceiling' ? face : 'wall';
    for (const id of REMEDY_FINISHES[kind]) {
      const finish = lookup(id);
      if (!finish || id === project.room.finishes[face]) continue;
      const leastS: number = best?.outsideS ?? now - 0.02;
      const outsideS = outsideAfter(context, bands, { face, finish }, leastS);
      if (outsideS < leastS) best = { face, finish, outsideS };
    }
  }
  if (!best) return [{ text: 'No single face mends it: change two finishes, or part of a wall.' }];
  return [
    {
      text: `Finish the ${best.face} with "${best.finish.name}": ${midAfterS(context, best).toFixed(2)} s in the middle bands.`,
      edit: { kind: 'finish', face: best.face, finish: best.finish.id },
    },
  ];
}

/** Seconds outside the corridor after the change, all bands together; infinite where not below `belowS`. */
function outsideAfter(
  context: FindingContext,
  bands: readonly DecayBand[],
  change: Change,
  belowS: number,
): number {
  let sum = 0;
  for (const band of bands) {
    const input = refinished(context, band, change);
    if (!input) return Infinity;
    const times = JUDGED_BY.map((id) => METHODS[id].timeS(input));
    sum += Math.abs(verdictOf(band, times).outsideS);
    if (sum >= belowS) return Infinity;
  }
  return sum;
}

/** Mean of the Eyring times at 500 Hz and 1 kHz after the change, s. */
function midAfterS(context: FindingContext, change: Change): number {
  const times = context.decay.bands
    .filter(({ hz }) => hz === 500 || hz === 1000)
    .map((band) => {
      const input = refinished(context, band, change);
      return input ? METHODS.eyring.timeS(input) : 0;
    });
  return times.reduce((a, b) => a + b, 0) / times.length;
}

/** A band with the bare part of one face refinished; null where a figure is missing. */
function refinished(
  { project, space }: FindingContext,
  band: DecayBand,
  { face, finish }: Change,
): FacesInput | null {
  const coefficient = absorptionAt(finish, band.hz);
  if (coefficient === null || band.objectsM2 === null) return null;
  const faces: FaceAbsorption[] = [];
  let absorptionM2 = 0;
  for (const surface of band.surfaces) {
    const changed = surface.face === face && surface.patch === null;
    const own = changed ? coefficient : surface.coefficient;
    if (own === null) return null;
    faces.push({ face: surface.face, areaM2: surface.areaM2, coefficient: own });
    absorptionM2 += surface.areaM2 * own;
  }
  return {
    volumeM3: space.volumeM3,
    surfaceM2: space.surfaceM2,
    absorptionM2,
    objectsM2: band.objectsM2,
    airPerM: band.airAbsorptionM2 / (4 * space.volumeM3),
    speedMS: speedOfSoundMS(project.air.temperatureC),
    faces,
  };
}
