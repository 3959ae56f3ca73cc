/** The frequency above which a decay may be treated as statistical. */

/**
 * Schroeder frequency in Hz, 2000 (T/V)^(1/2), T in s, V in m3: three modes within one bandwidth.
 * Source: M. R. Schroeder, JASA 99 (1996) 3240, eq. 1. In a small, well damped room it is a guide.
 */
export function schroederHz(reverberationS: number, volumeM3: number): number {
  return 2000 * Math.sqrt(reverberationS / volumeM3);
}

/** Half-power bandwidth in Hz of a mode with decay time T: ln(10^6)/(2 pi T), about 2.2/T (eq. 2). */
export function modalBandwidthHz(reverberationS: number): number {
  return Math.log(1e6) / (2 * Math.PI * reverberationS);
}
