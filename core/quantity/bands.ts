/**
 * Frequency bands of IEC 61260-1, base ten. Bands are named by their nominal midband frequency;
 * calculations use the exact one, 1000 * 10^(k/10) Hz, and edges half a band away.
 */

/** Nominal midbands of the octaves used for decay, in Hz. */
export const OCTAVES_HZ = [63, 125, 250, 500, 1000, 2000, 4000, 8000] as const;
export type OctaveHz = (typeof OCTAVES_HZ)[number];

/** An octave or another whole frequency in words: `125 Hz`, `1 kHz`. */
export const bandName = (hz: number): string => (hz >= 1000 ? `${hz / 1000} kHz` : `${hz} Hz`);

/** The same where there is room for a mark only: `125`, `1k`. */
export const bandMark = (hz: number): string => (hz >= 1000 ? `${hz / 1000}k` : String(hz));

/** Octave bands that nearly every published absorption table covers. */
export const COMMON_OCTAVES_HZ = [125, 250, 500, 1000, 2000, 4000] as const;

/** Exact midband frequency in Hz of the octave with the given nominal frequency. */
export function exactOctaveHz(nominalHz: OctaveHz): number {
  return 1000 * 10 ** (Math.round((10 * Math.log10(nominalHz / 1000)) / 3) * 0.3);
}

export interface ThirdOctave {
  readonly nominalHz: number;
  readonly exactHz: number;
  readonly lowHz: number;
  readonly highHz: number;
}

const NOMINAL_THIRDS = [20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200] as const;

/** Third-octave bands from 20 to 200 Hz with exact midbands and edges in Hz. */
export const THIRD_OCTAVES: readonly ThirdOctave[] = NOMINAL_THIRDS.map((nominalHz, i) => {
  const k = i - 17; // 20 Hz is 17 third octaves below 1 kHz
  return {
    nominalHz,
    exactHz: 1000 * 10 ** (k / 10),
    lowHz: 1000 * 10 ** ((2 * k - 1) / 20),
    highHz: 1000 * 10 ** ((2 * k + 1) / 20),
  };
});
