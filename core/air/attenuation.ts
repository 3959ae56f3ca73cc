/**
 * Absorption of sound by still air, ISO 9613-1:1993: pure tones, -20 to 50 C, 10 to 100 % humidity,
 * 50 Hz to 10 kHz, below 200 kPa.
 */

import type { Air } from './medium';

const REFERENCE_PRESSURE_KPA = 101.325;
const REFERENCE_K = 293.15;
const TRIPLE_POINT_K = 273.16;

/** Molar concentration of water vapour in percent (ISO 9613-1, annex B). */
export function vapourConcentrationPercent(air: Air): number {
  const kelvin = air.temperatureC + 273.15;
  const saturation = 10 ** (-6.8346 * (TRIPLE_POINT_K / kelvin) ** 1.261 + 4.6151);
  return (air.humidityPercent * saturation) / (air.pressureKPa / REFERENCE_PRESSURE_KPA);
}

/** Relaxation frequencies of oxygen and nitrogen in Hz (ISO 9613-1, eqs. 3 and 4). */
export function relaxationHz(air: Air): { readonly oxygen: number; readonly nitrogen: number } {
  const pressure = air.pressureKPa / REFERENCE_PRESSURE_KPA;
  const temperature = (air.temperatureC + 273.15) / REFERENCE_K;
  const h = vapourConcentrationPercent(air);
  return {
    oxygen: pressure * (24 + (4.04e4 * h * (0.02 + h)) / (0.391 + h)),
    nitrogen:
      pressure *
      temperature ** -0.5 *
      (9 + 280 * h * Math.exp(-4.17 * (temperature ** (-1 / 3) - 1))),
  };
}

/** Attenuation of a pure tone of `frequencyHz` in dB per metre (ISO 9613-1, eq. 5). */
export function attenuationDbPerM(frequencyHz: number, air: Air): number {
  const kelvin = air.temperatureC + 273.15;
  const pressure = air.pressureKPa / REFERENCE_PRESSURE_KPA;
  const temperature = kelvin / REFERENCE_K;
  const relaxation = relaxationHz(air);
  const squared = frequencyHz * frequencyHz;
  const classical = (1.84e-11 / pressure) * Math.sqrt(temperature);
  const oxygen =
    (0.01275 * Math.exp(-2239.1 / kelvin)) / (relaxation.oxygen + squared / relaxation.oxygen);
  const nitrogen =
    (0.1068 * Math.exp(-3352 / kelvin)) / (relaxation.nitrogen + squared / relaxation.nitrogen);
  return 8.686 * squared * (classical + temperature ** -2.5 * (oxygen + nitrogen));
}

/** Energy attenuation constant m in 1/m, as it stands in 4mV: attenuation in dB/m over 10 lg e. */
export function energyAttenuationPerM(frequencyHz: number, air: Air): number {
  return attenuationDbPerM(frequencyHz, air) / (10 * Math.LOG10E);
}
