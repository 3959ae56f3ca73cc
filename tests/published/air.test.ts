import { describe, expect, it } from 'vitest';
import { attenuationDbPerM, energyAttenuationPerM } from '../../core/air/attenuation';
import { densityKgM3, speedOfSoundMS } from '../../core/air/medium';
import { decayOf } from '../../core/decay/decay';
import { exactOctaveHz, OCTAVES_HZ } from '../../core/quantity/bands';
import { freeSpace } from '../../core/room/space';
import { roomOf } from '../unit/support/rooms';

const air = (temperatureC: number, humidityPercent: number) => ({
  temperatureC,
  humidityPercent,
  pressureKPa: 101.325,
});

describe('attenuation of sound in air', () => {
  // ISO 9613-1:1993, Table 1, in dB/km at 101.325 kPa. The standard's tables hold at the exact
  // midbands 1000 * 10^(k/10) Hz; they print three figures.
  it.each([
    { temperatureC: -20, humidityPercent: 50, hz: 1000, dbPerKm: 9.14 },
    { temperatureC: 0, humidityPercent: 50, hz: 1000, dbPerKm: 6.83 },
    { temperatureC: 0, humidityPercent: 20, hz: 1995.262, dbPerKm: 34.6 },
    { temperatureC: 5, humidityPercent: 50, hz: 1000, dbPerKm: 5.08 },
    { temperatureC: 10, humidityPercent: 70, hz: 1000, dbPerKm: 3.66 },
    { temperatureC: 10, humidityPercent: 50, hz: 3981.072, dbPerKm: 46.7 },
    { temperatureC: 15, humidityPercent: 50, hz: 1000, dbPerKm: 4.16 },
    { temperatureC: 15, humidityPercent: 100, hz: 10_000, dbPerKm: 105 },
    { temperatureC: 20, humidityPercent: 50, hz: 1000, dbPerKm: 4.66 },
    { temperatureC: 20, humidityPercent: 50, hz: 1995.262, dbPerKm: 9.86 },
    { temperatureC: 25, humidityPercent: 50, hz: 1000, dbPerKm: 5.68 },
    { temperatureC: 30, humidityPercent: 50, hz: 3981.072, dbPerKm: 24.5 },
    { temperatureC: 50, humidityPercent: 50, hz: 1995.262, dbPerKm: 24.8 },
  ])(
    'is $dbPerKm dB/km at $temperatureC C, $humidityPercent %, $hz Hz',
    ({ temperatureC, humidityPercent, hz, dbPerKm }) => {
      const found = 1000 * attenuationDbPerM(hz, air(temperatureC, humidityPercent));
      expect(Math.abs(found / dbPerKm - 1)).toBeLessThan(0.005);
    },
  );

  // ISO 9613-2:1996, Table 2, octaves 63 Hz to 8 kHz in dB/km, from memory. One decimal, and the
  // table's own rounding leaves another hundredth (23.65 is printed as 23.7).
  it.each([
    { temperatureC: 10, humidityPercent: 70, row: [0.1, 0.4, 1.0, 1.9, 3.7, 9.7, 32.8, 117] },
    { temperatureC: 20, humidityPercent: 70, row: [0.1, 0.3, 1.1, 2.8, 5.0, 9.0, 22.9, 76.6] },
    { temperatureC: 30, humidityPercent: 70, row: [0.1, 0.3, 1.0, 3.1, 7.4, 12.7, 23.1, 59.3] },
    { temperatureC: 15, humidityPercent: 50, row: [0.1, 0.5, 1.2, 2.2, 4.2, 10.8, 36.2, 129] },
    { temperatureC: 15, humidityPercent: 80, row: [0.1, 0.3, 1.1, 2.4, 4.1, 8.3, 23.7, 82.8] },
  ])(
    'fills the row of octaves at $temperatureC C and $humidityPercent %',
    ({ temperatureC, humidityPercent, row }) => {
      OCTAVES_HZ.forEach((octaveHz, i) => {
        const found =
          1000 * attenuationDbPerM(exactOctaveHz(octaveHz), air(temperatureC, humidityPercent));
        const printed = row[i] ?? 0;
        expect(Math.abs(found - printed)).toBeLessThan(printed > 100 ? 0.5 : 0.06);
      });
    },
  );

  it('becomes the energy constant m by division by 10 lg e = 4.343', () => {
    // EN ISO 354, 8.1.2.1: m = alpha / (10 lg e). 4.66 dB/km at 20 C, 50 %, 1 kHz: ISO 9613-1.
    const perM = energyAttenuationPerM(1000, air(20, 50));
    expect(Math.abs(perM / (0.00466 / 4.343) - 1)).toBeLessThan(0.005);
  });
});

describe('air in a room of 60 m3', () => {
  it('absorbs at 20 C and 70 % in the 8 kHz octave like 4.23 m2 of open window', () => {
    // 4mV from 76.6 dB/km at the exact midband (ISO 9613-2:1996, Table 2, from memory); at the
    // nominal 8000 Hz it would be 4.29 m2.
    const project = roomOf({}, { air: { humidityPercent: 70 } });
    const band = decayOf(project, freeSpace(project.room)).bands.find(({ hz }) => hz === 8000);
    expect(Math.abs((band?.airAbsorptionM2 ?? 0) - 4.233)).toBeLessThan(0.01);
  });
});

describe('exact midbands of the octaves', () => {
  // IEC 61260-1, base ten: 1000 * 10^(3k/10) Hz, to five figures.
  it.each([
    [63, 63.096],
    [125, 125.89],
    [250, 251.19],
    [500, 501.19],
    [1000, 1000],
    [2000, 1995.3],
    [4000, 3981.1],
    [8000, 7943.3],
  ] as const)('of the %i Hz octave is %f Hz', (nominalHz, exactHz) => {
    expect(Math.abs(exactOctaveHz(nominalHz) / exactHz - 1)).toBeLessThan(5e-5);
  });
});

describe('speed of sound', () => {
  it('is 343.2 m/s at 20 C', () => {
    // ISO 9613-1:1993: the reference value at 293.15 K.
    expect(speedOfSoundMS(20)).toBeCloseTo(343.2, 3);
  });

  // 331.3 + 0.606 t: from memory, the linear form of the textbooks, good to half a metre per second.
  it.each([
    [0, 331.3],
    [10, 337.4],
    [25, 346.5],
    [30, 349.5],
  ])('at %i C is %f m/s by the linear rule', (temperatureC, speedMS) => {
    expect(Math.abs(speedOfSoundMS(temperatureC) - speedMS)).toBeLessThan(0.5);
  });

  it('is 340.3 m/s in the standard atmosphere of 15 C', () => {
    // ISO 2533 standard atmosphere at sea level: 340.294 m/s, from memory.
    expect(Math.abs(speedOfSoundMS(15) - 340.294)).toBeLessThan(0.05);
  });
});

describe('density of air', () => {
  it('is 1.225 kg/m3 in the standard atmosphere of 15 C', () => {
    // ISO 2533 standard atmosphere at sea level: 1.225 kg/m3, from memory.
    expect(densityKgM3(air(15, 0))).toBeCloseTo(1.225, 3);
  });

  it('is 1.204 kg/m3 at 20 C', () => {
    // Common practice.
    expect(densityKgM3(air(20, 50))).toBeCloseTo(1.204, 3);
  });
});
