/** Reverberation time per octave band of what is in the room, against its target. */

import { energyAttenuationPerM } from '../air/attenuation';
import { speedOfSoundMS } from '../air/medium';
import { exactOctaveHz, OCTAVES_HZ, type OctaveHz } from '../quantity/bands';
import { finishLookup } from '../room/finishes';
import type { Project } from '../room/project';
import type { FreeSpace } from '../room/space';
import { bandAbsorption, type SurfaceAbsorption } from './absorption-area';
import { methodAdvice, type MethodAdvice } from './advice';
import { facePairs, type FacePair, type FacesInput } from './face-absorption';
import { methodTimes, spreadOf, type MethodTimes } from './methods';
import { objectAbsorption, type ObjectAbsorption } from './objects';
import { targetBand } from './target';
import { coefficientBandS } from './uncertainty';

export interface DecayBand {
  readonly hz: OctaveHz;
  /** Null where a finish or an object has no figure in this band, or no free space is left. */
  readonly sabineS: number | null;
  readonly eyringS: number | null;
  readonly targetS: number | null;
  readonly lowS: number | null;
  readonly highS: number | null;
  /** Every method's time, s. */
  readonly methods: MethodTimes;
  /** Shortest and longest time over the methods, s. */
  readonly spreadS: readonly [number, number] | null;
  /** Eyring's time with the error of the coefficients carried through, s. */
  readonly coefficientBandS: readonly [number, number] | null;
  /** Absorption of the surfaces from raw coefficients, m2. */
  readonly absorptionM2: number | null;
  /** Absorption of people, chairs and the like, m2. */
  readonly objectsM2: number | null;
  /** Absorption of the air itself, 4mV, m2. */
  readonly airAbsorptionM2: number;
  readonly meanCoefficient: number | null;
  readonly surfaces: readonly SurfaceAbsorption[];
  readonly objects: readonly ObjectAbsorption[];
  /** The pairs of faces by axis; empty where the band is unknown. */
  readonly pairs: readonly FacePair[];
}

export interface Decay {
  readonly bands: readonly DecayBand[];
  /** Mean of the times at 500 Hz and 1 kHz (T_mid as in ISO 3382-1) by the method to read, s. */
  readonly midS: number | null;
  /** Which method to read. */
  readonly advice: MethodAdvice;
}

/**
 * Decay of `project` in the free space `space`. Eyring is the figure to go by unless `advice` says
 * otherwise; the other methods stand beside it. Air absorption after ISO 9613-1 at the exact midband.
 */
export function decayOf(project: Project, space: FreeSpace): Decay {
  const lookup = finishLookup(project);
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const bands = OCTAVES_HZ.map((hz): DecayBand => {
    const absorption = bandAbsorption(space.surfaces, lookup, hz);
    const objects = objectAbsorption(project.objects, hz);
    const airPerM = energyAttenuationPerM(exactOctaveHz(hz), project.air);
    const known = absorption.surfaces.flatMap((surface) =>
      surface.coefficient === null ? [] : [{ ...surface, coefficient: surface.coefficient }],
    );
    const input: FacesInput | null =
      absorption.areaM2 === null || objects.areaM2 === null || space.volumeM3 <= 0
        ? null
        : {
            volumeM3: space.volumeM3,
            surfaceM2: space.surfaceM2,
            absorptionM2: absorption.areaM2,
            objectsM2: objects.areaM2,
            airPerM,
            speedMS,
            faces: known,
          };
    const methods = methodTimes(input);
    return {
      hz,
      sabineS: methods.sabine,
      eyringS: methods.eyring,
      ...targetBand(project.target, hz, space.volumeM3),
      methods,
      spreadS: spreadOf(methods),
      coefficientBandS: input && coefficientBandS(input, known, hz),
      absorptionM2: absorption.areaM2,
      objectsM2: objects.areaM2,
      airAbsorptionM2: 4 * airPerM * space.volumeM3,
      meanCoefficient: absorption.mean,
      surfaces: absorption.surfaces,
      objects: objects.objects,
      pairs: input ? facePairs(known) : [],
    };
  });
  const advice = methodAdvice(bands);
  return { bands, midS: midBandS(bands, advice.method), advice };
}

function midBandS(bands: readonly DecayBand[], method: MethodAdvice['method']): number | null {
  const at = (hz: OctaveHz): number | null =>
    bands.find((band) => band.hz === hz)?.methods[method] ?? null;
  const [low, high] = [at(500), at(1000)];
  return low === null || high === null ? null : (low + high) / 2;
}
