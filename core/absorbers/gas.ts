/** The air as a medium for waves. */

import { densityKgM3, speedOfSoundMS, type Air } from '../air/medium';

export interface Gas {
  readonly densityKgM3: number;
  readonly speedMS: number;
  /** Dynamic viscosity, Pa s. */
  readonly viscosityPaS: number;
  /** Characteristic impedance rho c, Pa s/m. */
  readonly impedance: number;
}

/**
 * Density and speed of sound as everywhere in the program; viscosity by Sutherland's formula with
 * the constants of the U.S. Standard Atmosphere 1976 (from memory; 1.81e-5 Pa s at 20 C).
 */
export function gasOf(air: Air): Gas {
  const density = densityKgM3(air);
  const speed = speedOfSoundMS(air.temperatureC);
  const kelvin = air.temperatureC + 273.15;
  return {
    densityKgM3: density,
    speedMS: speed,
    viscosityPaS: (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4),
    impedance: density * speed,
  };
}
