/**
 * Figures in words, in the units that a person has chosen: feet and inches with all that goes with
 * them, or metric. The one way in which core and the window say a quantity.
 */

import { formatLength, METRES_PER_FOOT, METRES_PER_INCH, type LengthUnits } from './length';

/** Kilograms in a pound (avoirdupois): exact by definition, NIST SP 811 Appendix B. */
export const KILOGRAMS_PER_POUND = 0.45359237;

/** Every method takes SI units and gives a figure with its unit. */
export interface Measures {
  readonly units: LengthUnits;
  /** Metres: `4.03 m` or `13' 2 5/8"`. */
  readonly length: (lengthM: number) => string;
  /** The size of a part, metres: `60 cm`, `12 mm`, or `2' 0"`, `1/2"`. */
  readonly part: (lengthM: number) => string;
  /** A limit, metres: as it is where it stands on the tape, else to a handy figure. */
  readonly limit: (lengthM: number) => string;
  /** A computed length that nobody sets by tape, metres: to a centimetre or half an inch. */
  readonly rounded: (lengthM: number) => string;
  /** A rule or an estimate, metres, to a handy figure: `2 cm`, `1.2 m`, or `3/4"`, `4' 0"`. */
  readonly about: (lengthM: number) => string;
  /** Square metres: `12.4 m²` or `133 sq ft`. */
  readonly area: (areaM2: number) => string;
  /** Cubic metres: `64.5 m³` or `2,278 cu ft`. */
  readonly volume: (volumeM3: number) => string;
  /** Degrees Celsius: `20 °C` or `68 °F`. */
  readonly temperature: (temperatureC: number) => string;
  /** Metres a second: `343.2 m/s` or `1,126 ft/s`. */
  readonly speed: (speedMS: number) => string;
  /** Kilograms: `11.3 kg` or `25 lb`. */
  readonly mass: (massKg: number) => string;
  /** Kilograms a square metre: `4.0 kg/m²` or `0.82 lb/sq ft`. */
  readonly massPerArea: (massKgM2: number) => string;
  /** A range of densities, kilograms a cubic metre: `30 to 60 kg/m³` or `1.9 to 3.7 lb/cu ft`. */
  readonly densities: (range: { readonly low: number; readonly high: number }) => string;
}

const SQUARE_FOOT_M2 = METRES_PER_FOOT ** 2;
const CUBIC_FOOT_M3 = METRES_PER_FOOT ** 3;

/** `value` with `digits` decimals and commas between thousands, as feet and inches go with. */
function grouped(value: number, digits: number): string {
  const [whole = '', rest] = Math.abs(value).toFixed(digits).split('.');
  const text = whole.replace(/\B(?=(\d{3})+$)/g, ',') + (rest === undefined ? '' : `.${rest}`);
  return value < 0 && /[1-9]/.test(text) ? `-${text}` : text;
}

/** More decimals where the figure is small: three figures that count, no more than `most` decimals. */
const digitsFor = (value: number, most: number): number =>
  Math.max(0, Math.min(most, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9)))));

const METRIC: Measures = {
  units: 'metric',
  length: (lengthM) => formatLength(lengthM, 'metric'),
  part: (lengthM) => {
    const millimetres = Math.round(lengthM * 10_000) / 10;
    return millimetres >= 100 && millimetres % 10 === 0
      ? `${millimetres / 10} cm`
      : `${millimetres} mm`;
  },
  limit: (lengthM) => formatLength(lengthM, 'metric'),
  rounded: (lengthM) => formatLength(Math.round(lengthM * 100) / 100, 'metric'),
  about: (lengthM) => {
    if (lengthM >= 0.995) return `${Number(lengthM.toFixed(1))} m`;
    return lengthM >= 0.0095
      ? `${Math.round(lengthM * 100)} cm`
      : `${Math.round(lengthM * 1000)} mm`;
  },
  area: (areaM2) => `${areaM2.toFixed(Math.max(1, digitsFor(areaM2, 2)))} m²`,
  volume: (volumeM3) => `${volumeM3.toFixed(1)} m³`,
  temperature: (temperatureC) => `${Math.round(temperatureC * 10) / 10} °C`,
  speed: (speedMS) => `${speedMS.toFixed(1)} m/s`,
  mass: (massKg) => `${massKg.toFixed(1)} kg`,
  massPerArea: (massKgM2) => `${massKgM2.toFixed(1)} kg/m²`,
  densities: ({ low, high }) => `${low} to ${high} kg/m³`,
};

const IMPERIAL: Measures = {
  units: 'imperial',
  length: (lengthM) => formatLength(lengthM, 'imperial'),
  // A part under two feet is told in inches alone, as it is bought.
  part: (lengthM) =>
    Math.abs(lengthM) < 2 * METRES_PER_FOOT - METRES_PER_INCH / 32
      ? inchesAlone(lengthM)
      : formatLength(lengthM, 'imperial'),
  limit: (lengthM) => {
    const sixteenths = (lengthM / METRES_PER_INCH) * 16;
    // Lengths are kept to a hundredth of a millimetre: within 0.004 of a sixteenth.
    return Math.abs(sixteenths - Math.round(sixteenths)) < 0.005
      ? formatLength(lengthM, 'imperial')
      : IMPERIAL.about(lengthM);
  },
  rounded: (lengthM) => formatLength(lengthM, 'imperial', 2),
  about: (lengthM) => {
    const inches = lengthM / METRES_PER_INCH;
    const parts = inches < 1 ? 8 : inches < 4 ? 2 : 1;
    return IMPERIAL.part((Math.round(inches * parts) / parts) * METRES_PER_INCH);
  },
  area: (areaM2) => {
    const feet = areaM2 / SQUARE_FOOT_M2;
    return `${grouped(feet, feet < 100 ? digitsFor(feet, 1) : 0)} sq ft`;
  },
  volume: (volumeM3) => `${grouped(volumeM3 / CUBIC_FOOT_M3, 0)} cu ft`,
  temperature: (temperatureC) => `${Math.round(temperatureC * 18 + 320) / 10} °F`,
  speed: (speedMS) => `${grouped(speedMS / METRES_PER_FOOT, 0)} ft/s`,
  mass: (massKg) => `${grouped(massKg / KILOGRAMS_PER_POUND, 0)} lb`,
  massPerArea: (massKgM2) => {
    const pounds = (massKgM2 / KILOGRAMS_PER_POUND) * SQUARE_FOOT_M2;
    return `${grouped(pounds, digitsFor(pounds, 2))} lb/sq ft`;
  },
  densities: ({ low, high }) => {
    const pounds = (density: number): string =>
      ((density / KILOGRAMS_PER_POUND) * CUBIC_FOOT_M3).toFixed(1);
    return `${pounds(low)} to ${pounds(high)} lb/cu ft`;
  },
};

/** `20"`, `3 1/2"`: a length in inches without feet. */
function inchesAlone(lengthM: number): string {
  const sixteenths = Math.round(lengthM / (METRES_PER_INCH / 16));
  const whole = Math.trunc(sixteenths / 16);
  const fraction = formatLength((Math.abs(sixteenths % 16) / 16) * METRES_PER_INCH, 'imperial');
  if (sixteenths % 16 === 0) return `${whole}"`;
  return whole === 0 ? `${sixteenths < 0 ? '-' : ''}${fraction}` : `${whole} ${fraction}`;
}

/** The words of `units`. */
export const measuresIn = (units: LengthUnits): Measures =>
  units === 'metric' ? METRIC : IMPERIAL;
