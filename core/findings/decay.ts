/** Octave bands that ring too long or too short, with the one change of finish that helps most. */

import { speedOfSoundMS } from '../air/medium';
import type { DecayBand } from '../decay/decay';
import { eyringS } from '../decay/reverberation';
import { targetSource } from '../decay/target';
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
  const off = decay.bands.filter((band) => distanceS(band, band.eyringS) !== 0);
  // Below the Schroeder frequency the statistics mean little: those bands are shown, not judged.
  const judged = off.filter((band) => JUDGED_HZ.includes(band.hz));
  if (judged.length === 0) return [];
  const worst = judged.reduce((a, b) =>
    Math.abs(distanceS(b, b.eyringS)) > Math.abs(distanceS(a, a.eyringS)) ? b : a,
  );
  const over = distanceS(worst, worst.eyringS);
  const long = over > 0;
  return [
    {
      id: long ? 'decay-long' : 'decay-short',
      severity: Math.abs(over) > (worst.targetS ?? 1) * 0.5 ? 'warning' : 'note',
      subject: 'decay',
      where: judged.map((band) => bandName(band.hz)).join(', '),
      message: `${bandName(worst.hz)} decays in ${(worst.eyringS ?? 0).toFixed(2)} s; the target corridor is ${(worst.lowS ?? 0).toFixed(2)} to ${(worst.highS ?? 0).toFixed(2)} s. ${long ? 'Speech blurs and effects smear.' : 'The room sounds dead.'}`,
      value: worst.eyringS,
      limit: long ? worst.highS : worst.lowS,
      unit: 's',
      source: targetSource(project.target),
      remedies: finishRemedies(context),
      place: { kind: 'band', hz: worst.hz },
    },
  ];
}

/** Seconds outside the corridor: positive too long, negative too short, 0 within or unknown. */
function distanceS(band: DecayBand, seconds: number | null): number {
  if (seconds === null || band.lowS === null || band.highS === null) return 0;
  if (seconds > band.highS) return seconds - band.highS;
  if (seconds < band.lowS) return seconds - band.lowS;
  return 0;
}

export function bandName(hz: number): string {
  return hz >= 1000 ? `${hz / 1000} kHz` : `${hz} Hz`;
}

interface Trial {
  readonly face: Face;
  readonly finish: Finish;
  readonly outsideS: number;
  readonly midS: number;
}

/** The single change of a face's finish that brings the judged bands nearest to the corridor. */
function finishRemedies(context: FindingContext): readonly Remedy[] {
  const { project, decay } = context;
  const lookup = finishLookup(project);
  const now = outsideSum(context, null);
  let best: Trial | null = null;
  for (const face of FACES) {
    const kind = face === 'floor' || face === 'ceiling' ? face : 'wall';
    for (const id of REMEDY_FINISHES[kind]) {
      const finish = lookup(id);
      if (!finish || id === project.room.finishes[face]) continue;
      const outsideS = outsideSum(context, { face, finish });
      if (outsideS < (best?.outsideS ?? now - 0.02)) {
        const mid = [500, 1000].map(
          (hz) => trialS(context, bandAt(decay.bands, hz), { face, finish }) ?? 0,
        );
        best = { face, finish, outsideS, midS: ((mid[0] ?? 0) + (mid[1] ?? 0)) / 2 };
      }
    }
  }
  if (!best) return [{ text: 'No single face mends it: change two finishes, or part of a wall.' }];
  return [
    {
      text: `Finish the ${best.face} with "${best.finish.name}": ${best.midS.toFixed(2)} s in the middle bands.`,
      edit: { kind: 'finish', face: best.face, finish: best.finish.id },
    },
  ];
}

const bandAt = (bands: readonly DecayBand[], hz: number): DecayBand | undefined =>
  bands.find((band) => band.hz === hz);

function outsideSum(
  context: FindingContext,
  change: { readonly face: Face; readonly finish: Finish } | null,
): number {
  return context.decay.bands
    .filter((band) => JUDGED_HZ.includes(band.hz))
    .reduce((sum, band) => {
      const seconds = change ? trialS(context, band, change) : band.eyringS;
      return seconds === null ? Infinity : sum + Math.abs(distanceS(band, seconds));
    }, 0);
}

/** Eyring time of a band with the bare part of one face refinished; null where a figure is missing. */
function trialS(
  { project, space }: FindingContext,
  band: DecayBand | undefined,
  { face, finish }: { readonly face: Face; readonly finish: Finish },
): number | null {
  const coefficient = band ? absorptionAt(finish, band.hz) : null;
  if (!band || coefficient === null || band.absorptionM2 === null) return null;
  const changed = band.surfaces
    .filter((surface) => surface.face === face && surface.patch === null)
    .reduce((sum, surface) => sum + surface.areaM2 * (coefficient - (surface.coefficient ?? 0)), 0);
  return eyringS({
    volumeM3: space.volumeM3,
    surfaceM2: space.surfaceM2,
    absorptionM2: band.absorptionM2 + changed,
    airPerM: band.airAbsorptionM2 / (4 * space.volumeM3),
    speedMS: speedOfSoundMS(project.air.temperatureC),
  });
}
