/**
 * Lengths as a builder says them: metres, or feet and inches with a fraction. The project keeps
 * metres; these two functions are the only way in and out.
 */

export type LengthUnits = 'metric' | 'imperial';

export const METRES_PER_INCH = 0.0254;
export const METRES_PER_FOOT = 0.3048;

/**
 * What is measured: the room itself, which is told in feet; a part of it (a duct, a panel, a box, a
 * place by tape), which is told in inches; or a hole or a slot, which is too fine for either. It
 * decides how a bare number is read, and nothing else.
 */
export type LengthKind = 'room' | 'part' | 'fine';
export type LengthUnit = 'm' | 'cm' | 'mm' | 'ft' | 'in';

export const METRES_IN: Readonly<Record<LengthUnit, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: METRES_PER_FOOT,
  in: METRES_PER_INCH,
};

/** The unit of a number that was typed without one. */
export function bareUnit(units: LengthUnits, kind: LengthKind): LengthUnit {
  if (units === 'metric') return kind === 'fine' ? 'mm' : 'm';
  return kind === 'room' ? 'ft' : 'in';
}

/** A length without the dust of binary arithmetic: rounded to a hundredth of a millimetre. */
export function roundLength(lengthM: number): number {
  return Math.round(lengthM * 1e5) / 1e5 || 0; // never -0, which a file could not keep
}

/** `4.03 m` or `13' 2 5/8"`: rounded to 1 mm, or to the given part of an inch. */
export function formatLength(lengthM: number, units: LengthUnits, inchParts = 16): string {
  if (units === 'metric') {
    const millimetres = Math.round(Math.abs(lengthM) * 1000);
    const digits = millimetres % 10 === 0 ? 2 : 3;
    return `${lengthM < 0 && millimetres > 0 ? '-' : ''}${(millimetres / 1000).toFixed(digits)} m`;
  }
  const parts = Math.round((Math.abs(lengthM) / METRES_PER_INCH) * inchParts);
  const feet = Math.floor(parts / (12 * inchParts));
  const inches = Math.floor((parts - feet * 12 * inchParts) / inchParts);
  const fraction = formatFraction(parts % inchParts, inchParts);
  const inchText = [inches > 0 || fraction === '' ? String(inches) : '', fraction]
    .filter((part) => part !== '')
    .join(' ');
  const sign = lengthM < 0 && parts > 0 ? '-' : '';
  return feet > 0 ? `${sign}${feet}' ${inchText}"` : `${sign}${inchText}"`;
}

function formatFraction(numerator: number, denominator: number): string {
  if (numerator === 0) return '';
  let [top, bottom] = [numerator, denominator];
  while (top % 2 === 0 && bottom % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${top}/${bottom}`;
}

export type ParsedLength =
  | {
      readonly ok: true;
      readonly metres: number;
      /** The number as typed, where its unit was not typed with it. */
      readonly bare?: number;
    }
  | { readonly ok: false; readonly sentence: string };

const NUMBER = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const FRACTION = String.raw`(\d+)\s*/\s*(\d+)`;
const METRIC = new RegExp(`^(${NUMBER})\\s*(mm|cm|m|metres?|meters?)$`);
const FEET = new RegExp(`^(${NUMBER})\\s*(?:'|ft|feet|foot)\\s*-?\\s*`);
/** Feet and inches without their marks: `13-9`, `13 9 1/2`. */
const FEET_INCHES = new RegExp(`^(\\d+)(?:\\s*-\\s*|\\s+)(${NUMBER})(?:(?:\\s+|-)${FRACTION})?$`);
const INCHES = new RegExp(
  `^(?:(${NUMBER})(?:\\s+|-|$|(?=["i])))?(?:${FRACTION})?\\s*(?:"|in|inch|inches)?$`,
);
const BARE = new RegExp(`^(${NUMBER})$`);
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * Read a length as typed: `4.03 m`, `403 cm`, `13' 2 1/2"`, `13-2 1/2`, `158 1/2"`. A bare number is
 * in the unit that `kind` is told in; of the room, a bare number with a fraction is asked about. A sign is
 * refused: a place is measured from a corner.
 */
export function parseLength(
  text: string,
  units: LengthUnits,
  kind: LengthKind = 'room',
): ParsedLength {
  const clean = text
    .trim()
    .toLowerCase()
    .replace(/⁄/g, '/')
    .replace(/\b(in|ft)\./g, '$1')
    .replace(/[’′]/g, "'")
    .replace(/''|[”″“]/g, '"')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark] ?? ''}`)
    .replace(/\s+/g, ' ')
    .trim();
  if (clean === '') return refuse(text, units);
  const doubt = commaDoubt(clean);
  if (doubt !== null) return { ok: false, sentence: doubt };

  const metric = METRIC.exec(clean);
  if (metric) return accept(toNumber(metric[1]) * METRES_IN[metricUnit(metric[2])]);

  const unit = bareUnit(units, kind);
  const bare = BARE.exec(clean);
  if (bare) {
    const value = toNumber(bare[1]);
    return { ...accept(value * METRES_IN[unit]), bare: value };
  }
  if (units === 'imperial' && kind !== 'fine') {
    const both = FEET_INCHES.exec(clean);
    const inches = both ? inchesOf(both.slice(2)) : null;
    // Twelve inches or more without a mark are nobody's guess.
    if (inches !== null && inches < 12) {
      return accept(toNumber(both?.[1]) * METRES_PER_FOOT + inches * METRES_PER_INCH);
    }
  }

  const feet = FEET.exec(clean);
  const rest = feet ? clean.slice(feet[0].length) : clean;
  // With metres on the screen, inches must say that they are inches.
  if (units === 'metric' && !feet && !/["n]|inches/.test(clean)) return refuse(text, units);
  const feetM = feet ? toNumber(feet[1]) * METRES_PER_FOOT : 0;
  if (rest === '') return feet ? accept(feetM) : refuse(text, units);
  const inches = INCHES.exec(rest);
  if (!inches || (inches[1] === undefined && inches[2] === undefined)) return refuse(text, units);
  // Where a bare number is feet, one with a fraction is nobody's guess.
  if (!feet && !/["n]|inches/.test(clean) && unit === 'ft') return refuseBare(text);
  const count = inchesOf(inches.slice(1));
  return count === null ? refuse(text, units) : accept(feetM + count * METRES_PER_INCH);
}

/** Whole inches and a fraction, as matched; null over nothing. */
function inchesOf([whole, top, below]: readonly (string | undefined)[]): number | null {
  if (Number(below ?? 1) === 0) return null;
  return toNumber(whole ?? '0') + Number(top ?? 0) / Number(below ?? 1);
}

const metricUnit = (word: string | undefined): LengthUnit =>
  word === 'mm' || word === 'cm' ? word : 'm';

const toNumber = (text: string | undefined): number => Number((text ?? '0').replace(',', '.'));

/**
 * A comma before exactly three digits parts thousands for one reader and is a decimal point for
 * another: the sentence that asks, or null where there is no such doubt.
 */
export function commaDoubt(text: string): string | null {
  const [typed] = /(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d.,])/.exec(text) ?? [];
  if (typed === undefined) return null;
  const whole = typed.replaceAll(',', '');
  const decimal = /^\d+,\d{3}$/.test(typed) ? typed.replace(',', '.') : null;
  return decimal === null
    ? `"${typed}" has commas between its digits. Type it without them: ${whole}.`
    : `"${typed}" could be ${whole} or ${decimal}. Type it without the comma, or with a point.`;
}

const accept = (metres: number): { readonly ok: true; readonly metres: number } => ({
  ok: true,
  metres: roundLength(metres),
});

function refuseBare(text: string): ParsedLength {
  const typed = text.trim().slice(0, 30);
  return {
    ok: false,
    sentence: `"${typed}" could be feet or inches. Mark it, like 13 1/2" or 13' 6".`,
  };
}

function refuse(text: string, units: LengthUnits): ParsedLength {
  const shown =
    text.trim() === '' ? 'Nothing was typed' : `"${text.trim().slice(0, 30)}" is not a length`;
  const example = units === 'metric' ? '4.03 m or 403 cm' : '13\' 2 1/2" or 158 1/2 in';
  return { ok: false, sentence: `${shown}. Type it like ${example}.` };
}
