/**
 * Textbook resonances of a mass on an air cushion. They are for a cavity that is shallow against
 * the wavelength and free of damping; the program's own curve needs neither.
 */

export interface HelmholtzPanel {
  /** Open part of the panel, 0 to 1. */
  readonly openArea: number;
  /** Depth of the cavity, m. */
  readonly depthM: number;
  readonly panelThicknessM: number;
  readonly holeDiameterM: number;
  readonly speedMS: number;
}

/**
 * Resonance in Hz of a panel with round holes, (c/2 pi) (p/(D t'))^(1/2) with t' = t + 0.85 d for
 * both mouths. Validity: small open area, D below a tenth of the wavelength. Source: textbook; the
 * 0.85 from memory (a handbook has 0.8).
 */
export function helmholtzHz(panel: HelmholtzPanel): number {
  const { openArea, depthM, panelThicknessM, holeDiameterM, speedMS } = panel;
  const neckM = panelThicknessM + 0.85 * holeDiameterM;
  return (speedMS / (2 * Math.PI)) * Math.sqrt(openArea / (depthM * neckM));
}

/**
 * Resonance in Hz of a limp panel of m kg/m2 over D metres of air: 60/(m D)^(1/2), or with the
 * cavity filled, where the air stays at one temperature, 50/(m D)^(1/2). Source: the 60 in an
 * engineering handbook (Audio Engineering, p. 863), the 50 from memory.
 */
export function membraneHz(surfaceMassKgM2: number, depthM: number, filled: boolean): number {
  return (filled ? 50 : 60) / Math.sqrt(surfaceMassKgM2 * depthM);
}
