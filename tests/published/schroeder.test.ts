import { describe, expect, it } from 'vitest';
import { modeDensityPerHz } from '../../core/modes/mode-count';
import { modalBandwidthHz, schroederHz } from '../../core/modes/schroeder';

describe('Schroeder frequency', () => {
  // M. R. Schroeder, JASA 99 (1996) 3240, eq. 1: 2000 (T/V)^(1/2).
  it.each([
    { reverberationS: 0.3, volumeM3: 72, hz: 129.1 },
    { reverberationS: 0.5, volumeM3: 60, hz: 182.6 },
    { reverberationS: 1, volumeM3: 200, hz: 141.4 },
  ])('of $reverberationS s in $volumeM3 m3 is $hz Hz', ({ reverberationS, volumeM3, hz }) => {
    expect(Math.abs(schroederHz(reverberationS, volumeM3) - hz)).toBeLessThan(0.1);
  });

  it('puts three modes into one bandwidth, 2000 being rounded down from 2093', () => {
    // Schroeder 1996, eqs. 2 and 3; 3 * (2000/2093)^2 = 2.74. In a cube of 100 m that rings for
    // 1000 s the modes along edges and faces, which the derivation leaves out, are under 5 %.
    const cube = { width: 100, length: 100, height: 100 };
    const overlap = modalBandwidthHz(1000) * modeDensityPerHz(cube, schroederHz(1000, 1e6), 343);
    expect(overlap).toBeGreaterThan(2.74);
    expect(overlap).toBeLessThan(2.74 * 1.05);
  });
});

describe('half-power bandwidth of a mode', () => {
  it('is 4.40 Hz at a decay time of 0.5 s', () => {
    // Schroeder 1996, eq. 2: about 2.2/T.
    expect(Math.abs(modalBandwidthHz(0.5) - 4.4)).toBeLessThan(0.01);
  });

  it('is the 5 Hz of the spacing rule at a decay time of 0.44 s', () => {
    // Handbook for Sound Engineers, ch. 6: bandwidths in small rooms are about 5 Hz; 2.2 / 5 = 0.44.
    expect(Math.abs(modalBandwidthHz(0.44) - 5)).toBeLessThan(0.01);
  });
});
