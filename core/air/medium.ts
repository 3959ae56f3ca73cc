/** The air in the room: speed of sound and density. */

export interface Air {
  readonly temperatureC: number;
  readonly humidityPercent: number;
  readonly pressureKPa: number;
}

/** Default air of a room file. */
export const DEFAULT_AIR: Air = { temperatureC: 20, humidityPercent: 50, pressureKPa: 101.325 };

const ZERO_CELSIUS_K = 273.15;
const REFERENCE_K = 293.15;
const GAS_CONSTANT_DRY_AIR = 287.05; // J/(kg K)

/** Speed of sound in m/s at `temperatureC`, 343.2 (T/293.15 K)^(1/2). Source: ISO 9613-1:1993. */
export function speedOfSoundMS(temperatureC: number): number {
  return 343.2 * Math.sqrt((temperatureC + ZERO_CELSIUS_K) / REFERENCE_K);
}

/** Density in kg/m3 of dry air as an ideal gas (the vapour at room climate takes off under 1 %). */
export function densityKgM3(air: Air): number {
  return (air.pressureKPa * 1000) / (GAS_CONSTANT_DRY_AIR * (air.temperatureC + ZERO_CELSIUS_K));
}
