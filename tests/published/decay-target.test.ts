import { describe, expect, it } from 'vitest';
import { bs1116NominalS, lowEndToleranceS, targetBand } from '../../core/decay/target';

describe('nominal decay time of a listening room', () => {
  // ITU-R BS.1116 8.2, also EBU Tech 3276 2.3: 0.25 s at 100 m3, growing with the cube root of the
  // volume; second-hand.
  it.each([
    [100, 0.25],
    [72, 0.2241],
    [30, 0.167],
    [300, 0.361],
  ])('of %f m3 is %f s', (volumeM3, seconds) => {
    expect(Math.abs(bs1116NominalS(volumeM3) - seconds)).toBeLessThan(0.0005);
  });

  it('of 139.6 m3 is the 0.28 s and of 60 m3 the 0.21 s that others print', () => {
    // EBU Tech 3276, worked rooms in public source text; second-hand, printed to two figures.
    expect(Math.abs(bs1116NominalS(139.6) - 0.28)).toBeLessThan(0.005);
    expect(Math.abs(bs1116NominalS(60) - 0.21)).toBeLessThan(0.005);
  });
});

describe('corridor around it', () => {
  it('is 0.05 s either way at 1 kHz', () => {
    // ITU-R BS.1116 8.2, mask from memory; 72 m3.
    const band = targetBand({ kind: 'bs1116' }, 1000, 72);
    expect(band.lowS).toBeCloseTo(0.174, 3);
    expect(band.highS).toBeCloseTo(0.274, 3);
  });

  it('is 0.1 s either way above 4 kHz', () => {
    // ITU-R BS.1116 8.2, mask from memory; 100 m3.
    const band = targetBand({ kind: 'bs1116' }, 8000, 100);
    expect(band.lowS).toBeCloseTo(0.15, 6);
    expect(band.highS).toBeCloseTo(0.35, 6);
  });

  // ITU-R BS.1116 8.2, mask from memory: +0.05 s at 200 Hz opening to +0.3 s at 63 Hz, evenly over
  // the logarithm of frequency.
  it.each([
    [63, 0.3],
    [80, 0.2483],
    [100, 0.2],
    [125, 0.1517],
    [160, 0.0983],
    [200, 0.05],
    [1000, 0.05],
  ])('opens upwards at %i Hz by %f s', (hz, seconds) => {
    expect(Math.abs(lowEndToleranceS(hz) - seconds)).toBeLessThan(0.0002);
  });

  it('keeps its lower edge 0.05 s below the nominal time in the bass', () => {
    // ITU-R BS.1116 8.2, mask from memory; 100 m3.
    expect(targetBand({ kind: 'bs1116' }, 63, 100).lowS).toBeCloseTo(0.2, 6);
    expect(targetBand({ kind: 'bs1116' }, 125, 100).lowS).toBeCloseTo(0.2, 6);
  });
});
