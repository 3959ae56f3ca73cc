/** Luminance of a projected picture. Lumens, square metres, candela a square metre. */

/** One foot-lambert: 1/pi candela a square foot. */
export const FOOT_LAMBERT_CD_M2 = 1 / (Math.PI * 0.3048 * 0.3048);

/** White of digital cinema (SMPTE ST 431-1, ISO 26431-1), cd/m2; tolerance of a theatre. */
export const CINEMA_WHITE = { luminanceCdM2: 48, toleranceCdM2: 10.2 } as const;

/**
 * Luminance of white straight on, cd/m2: L = flux x gain / (pi x area). `lumens` are those that land
 * on the picture; gain 1 is the ideal matt white.
 */
export const luminanceCdM2 = (lumens: number, gain: number, areaM2: number): number =>
  (lumens * gain) / (Math.PI * areaM2);

/** Lumens on the picture for a wished luminance. */
export const lumensFor = (cdM2: number, gain: number, areaM2: number): number =>
  (cdM2 * Math.PI * areaM2) / gain;

/**
 * Gain seen `offDeg` from straight on by a screen whose gain falls to half at `halfGainDeg`: the power
 * of the cosine that does so (our own convention between the two figures that a data sheet states). A
 * matt screen (no half-gain angle) is alike from everywhere.
 */
export function gainAt(gain: number, offDeg: number, halfGainDeg: number | null): number {
  if (halfGainDeg === null) return gain;
  const cos = (deg: number): number => Math.cos((Math.min(Math.abs(deg), 89.9) * Math.PI) / 180);
  return gain * cos(offDeg) ** (Math.log(0.5) / Math.log(cos(halfGainDeg)));
}

/**
 * Share of a projector's light that lands on the picture where the chip has aspect `chip` and the
 * picture `picture` (width over height each) and the chip is filled in one direction.
 */
export const lightShare = (chip: number, picture: number): number =>
  Math.min(chip, picture) / Math.max(chip, picture);
