/**
 * Fibrous material as a fluid: characteristic impedance and wave number from the flow resistivity
 * alone. Time factor e^(+j omega t), so that a wave that travels on decays when Im k < 0.
 *
 * Delany and Bazley, Applied Acoustics 3 (1970) 105, and the corrected fit of Miki, Journal of the
 * Acoustical Society of Japan (E) 11 (1990) 19; coefficients read in a transcription of both
 * (apmr.matelys.com). Both fit the same measurements, for 0.01 < f/sigma < 1. Miki's is free of the
 * negative resistance that the older one gives for layers at low frequencies, and is the default.
 */

import { complex, scale, type Complex } from './complex';
import type { Gas } from './gas';

export const POROUS_MODELS = ['miki', 'delany-bazley'] as const;
export type PorousModel = (typeof POROUS_MODELS)[number];

export const POROUS_MODEL_NAMES: Readonly<Record<PorousModel, string>> = {
  miki: 'Miki 1990',
  'delany-bazley': 'Delany and Bazley 1970',
};

/** A fluid at one frequency: impedance in Pa s/m, wave number in rad/m. */
export interface Medium {
  readonly impedance: Complex;
  readonly waveNumber: Complex;
}

/** Factor and exponent of (10^3 f/sigma) for Re Z, Im Z, Re k, Im k. */
type Fit = readonly [
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
  readonly [number, number],
];

const FITS: Readonly<Record<PorousModel, Fit>> = {
  'delany-bazley': [
    [9.08, -0.75],
    [11.9, -0.73],
    [10.8, -0.7],
    [10.3, -0.59],
  ],
  miki: [
    [5.5, -0.632],
    [8.43, -0.632],
    [7.81, -0.618],
    [11.41, -0.618],
  ],
};

/**
 * The material at `hz`. `flowResistivity` in Pa s/m2. Range: any positive pair gives finite
 * figures; they are measured ones only within `validRangeHz`.
 */
export function porousMedium(
  model: PorousModel,
  flowResistivity: number,
  hz: number,
  gas: Gas,
): Medium {
  const x = (1000 * hz) / flowResistivity;
  const [reZ, imZ, reK, imK] = FITS[model];
  const term = ([factor, power]: readonly [number, number]): number => factor * x ** power;
  const airWaveNumber = (2 * Math.PI * hz) / gas.speedMS;
  return {
    impedance: scale(complex(1 + term(reZ), -term(imZ)), gas.impedance),
    waveNumber: scale(complex(1 + term(reK), -term(imK)), airWaveNumber),
  };
}

/** Air as a medium at `hz`, without losses. */
export function airMedium(hz: number, gas: Gas): Medium {
  return {
    impedance: complex(gas.impedance),
    waveNumber: complex((2 * Math.PI * hz) / gas.speedMS),
  };
}

/** Bounds of f/sigma within which both fits were made. */
export const VALID_RATIO = [0.01, 1] as const;

/** Frequencies in Hz between which a material of this flow resistivity is within the fits. */
export function validRangeHz(flowResistivity: number): readonly [number, number] {
  return [VALID_RATIO[0] * flowResistivity, VALID_RATIO[1] * flowResistivity];
}
