/** Reverberation time per octave band of the room's surfaces, against its target. */

import { energyAttenuationPerM } from '../air/attenuation';
import { speedOfSoundMS } from '../air/medium';
import { exactOctaveHz, OCTAVES_HZ, type OctaveHz } from '../quantity/bands';
import { finishLookup } from '../room/finishes';
import type { Project } from '../room/project';
import type { FreeSpace } from '../room/space';
import { bandAbsorption, type SurfaceAbsorption } from './absorption-area';
import { eyringS, sabineS } from './reverberation';
import { targetBand } from './target';

export interface DecayBand {
  readonly hz: OctaveHz;
  /** Null where a finish has no figure in this band, or no free space is left. */
  readonly sabineS: number | null;
  readonly eyringS: number | null;
  readonly targetS: number | null;
  readonly lowS: number | null;
  readonly highS: number | null;
  readonly absorptionM2: number | null;
  /** Absorption of the air itself, 4mV, m2. */
  readonly airAbsorptionM2: number;
  readonly meanCoefficient: number | null;
  readonly surfaces: readonly SurfaceAbsorption[];
}

export interface Decay {
  readonly bands: readonly DecayBand[];
  /** Mean of the Eyring times at 500 Hz and 1 kHz (T_mid as in ISO 3382-1), s. */
  readonly midS: number | null;
}

/**
 * Decay of `project` in the free space `space`. Eyring is the figure to go by, Sabine stands beside
 * it. Air absorption after ISO 9613-1 at the exact midband.
 */
export function decayOf(project: Project, space: FreeSpace): Decay {
  const lookup = finishLookup(project);
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const bands = OCTAVES_HZ.map((hz): DecayBand => {
    const absorption = bandAbsorption(space.surfaces, lookup, hz);
    const airPerM = energyAttenuationPerM(exactOctaveHz(hz), project.air);
    const input =
      absorption.areaM2 === null || space.volumeM3 <= 0 || space.surfaceM2 <= 0
        ? null
        : {
            volumeM3: space.volumeM3,
            surfaceM2: space.surfaceM2,
            absorptionM2: absorption.areaM2,
            airPerM,
            speedMS,
          };
    return {
      hz,
      sabineS: input && sabineS(input),
      eyringS: input && eyringS(input),
      ...targetBand(project.target, hz, space.volumeM3),
      absorptionM2: absorption.areaM2,
      airAbsorptionM2: 4 * airPerM * space.volumeM3,
      meanCoefficient: absorption.mean,
      surfaces: absorption.surfaces,
    };
  });
  return { bands, midS: midBandS(bands) };
}

function midBandS(bands: readonly DecayBand[]): number | null {
  const at = (hz: OctaveHz): number | null => bands.find((band) => band.hz === hz)?.eyringS ?? null;
  const [low, high] = [at(500), at(1000)];
  return low === null || high === null ? null : (low + high) / 2;
}
