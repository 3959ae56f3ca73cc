/**
 * Colours of painted pressure. A mode shades from quiet at its nodal lines to full in the one colour where
 * pressure rises and in the other where it falls at that moment; a frequency shades in steps from
 * loud to quiet. Both read in grey: darker (on dark paper lighter) is louder.
 */

import { BAND_DB, BANDS, type Painting } from '../pressure/painting';

/** `#rrggbb` each. */
export interface PaintColors {
  readonly loud: string;
  /** Of a mode, where pressure is the other way round. */
  readonly other: string;
  readonly quiet: string;
}

/** The fullest shade still shows what lies beneath. */
const FULLEST = 0.82;
const OPACITY = 235;

/** Red, green and blue of `#rrggbb`. */
export function channels(color: string): readonly [number, number, number] {
  const value = parseInt(color.trim().slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** Shade of one value, 0 to 1, and whether it is of the other colour. */
export function shadeOf(value: number, kind: Painting['kind']): { share: number; other: boolean } {
  if (kind === 'mode') return { share: FULLEST * Math.abs(value), other: value < 0 };
  const band = Math.min(BANDS, Math.floor(-value / BAND_DB));
  return { share: FULLEST * (1 - band / BANDS), other: false };
}

/** Four bytes a sample; clear outside the free space. */
export function paintOf(
  values: Float32Array,
  kind: Painting['kind'],
  colors: PaintColors,
): Uint8Array<ArrayBuffer> {
  const [loud, other, quiet] = [colors.loud, colors.other, colors.quiet].map(channels);
  const bytes = new Uint8Array(4 * values.length);
  values.forEach((value, n) => {
    if (Number.isNaN(value)) {
      quiet?.forEach((channel, c) => (bytes[4 * n + c] = channel));
      return;
    }
    const shade = shadeOf(value, kind);
    const full = shade.other ? other : loud;
    for (let c = 0; c < 3; c++) {
      const from = quiet?.[c] ?? 0;
      bytes[4 * n + c] = from + shade.share * ((full?.[c] ?? 0) - from);
    }
    bytes[4 * n + 3] = OPACITY;
  });
  return bytes;
}
