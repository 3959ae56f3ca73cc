/** Sight lines, viewing angles and brightness against figures of standards and handbooks. */

import { describe, expect, it } from 'vitest';
import {
  CINEMA_WHITE,
  FOOT_LAMBERT_CD_M2,
  lightShare,
  lumensFor,
  luminanceCdM2,
} from '../../core/picture/brightness';
import {
  angleAtDistanceDeg,
  distanceForAngleM,
  minuteDistanceInHeights,
} from '../../core/picture/viewing';
import { buildableHeights, NOMINAL_STOCK } from '../../core/seating/platforms';
import { clearanceM, riseForM } from '../../core/seating/sight-line';
import { GUARD_FROM_M, stepsOver, STEP_LIMITS_M } from '../../core/seating/steps';

describe('the C-value', () => {
  // N = (R + C)(D + T)/D - R: University of Bath, worksheet on stadium sight lines, as published; the
  // cases are worked by hand from it.
  it.each([
    [3, 0.52, 1.8, 0.12, 0.504],
    [3.5, 0.37, 1.6, 0.09, 0.300285714],
    [3, 0.37, 1.8, 0.06, 0.318],
    [3, -0.08, 1.8, 0.12, 0.144],
    [20, 3, 0.8, 0.12, 0.2448],
  ])('eye %f m off and %f m up, row %f m deep, C %f m: riser %f m', (D, R, T, C, N) => {
    const line = { distanceM: D, overFocusM: R, rowDepthM: T };
    expect(riseForM(line, C)).toBeCloseTo(N, 6);
    expect(clearanceM(line, N)).toBeCloseTo(C, 6);
  });
});

describe('viewing', () => {
  it.each([
    // d/w by angle, from the tangent, worked by hand; SMPTE EG 18 asks at least 30 degrees.
    [26, 2.1657],
    [30, 1.866],
    [36, 1.5388],
    [40, 1.3737],
    [60, 0.866],
  ])('%f degrees are %f widths away', (angleDeg, widths) => {
    expect(distanceForAngleM(1, angleDeg)).toBeCloseTo(widths, 4);
    expect(angleAtDistanceDeg(1, widths)).toBeCloseTo(angleDeg, 2);
  });

  it.each([
    // ITU-R BS.775-3: 33 and 48 degrees at three and two picture heights, rounded; from the tangent.
    [3, 33.01],
    [2, 47.92],
  ])('%f picture heights of 16:9 are %f degrees', (heights, angleDeg) => {
    expect(angleAtDistanceDeg(16 / 9, heights)).toBeCloseTo(angleDeg, 2);
  });

  it.each([
    // ITU-R BT.500: the design distance, one pixel to a minute of arc; BT.1845 rounds to 4.8, 3.1, 1.5, 0.75.
    [720, 4.775],
    [1080, 3.183],
    [2160, 1.592],
    [4320, 0.796],
  ])('%i lines: %f picture heights', (lines, heights) => {
    expect(minuteDistanceInHeights(lines)).toBeCloseTo(heights, 3);
  });
});

describe('brightness', () => {
  it('of digital cinema is 14 foot-lamberts', () => {
    // SMPTE ST 431-1, ISO 26431-1: 48 cd/m2, 14 fL.
    expect(CINEMA_WHITE.luminanceCdM2 / FOOT_LAMBERT_CD_M2).toBeCloseTo(14.009, 3);
    expect(FOOT_LAMBERT_CD_M2).toBeCloseTo(3.42626, 5);
  });

  it.each([
    // Photometry of a matt surface, L = flux x gain / (pi A), worked by hand.
    [2000, 1, 2.2138, 1.2453, 230.9],
    [1500, 1.3, 2.6568, 1.4944, 156.3],
  ])('%i lm, gain %f on %f x %f m: %f cd/m2', (lumens, gain, width, height, cdM2) => {
    expect(luminanceCdM2(lumens, gain, width * height)).toBeCloseTo(cdM2, 1);
  });

  it('asks for 415.7 lm for 48 cd/m2 on 2.757 m2', () => {
    expect(lumensFor(48, 1, 2.757)).toBeCloseTo(415.7, 1);
  });

  it('of a 2.40:1 picture within a 16:9 chip uses 74 percent of the light', () => {
    expect(lightShare(16 / 9, 2.4)).toBeCloseTo(0.7407, 4);
  });
});

describe('platforms', () => {
  it('of 2x6 on edge under 3/4 in plywood are 6 1/4 in high (common practice)', () => {
    const heights = buildableHeights(NOMINAL_STOCK, 0.5);
    const sixes = heights.find(
      ({ tiers }) => tiers.length === 1 && tiers[0]?.lumber.name === '2x6',
    );
    expect(sixes?.heightM).toBeCloseTo(6.25 * 0.0254, 9);
  });

  it('half a metre high take three equal steps', () => {
    // IRC R311.7.5: at most 7 3/4 in of rise, at least 10 in of run; R312 (from memory): guards from 30 in.
    const { count, riseM, reachM } = stepsOver(0.504);
    expect(count).toBe(3);
    expect(riseM).toBeCloseTo(0.168, 9);
    expect(reachM).toBeCloseTo(2 * 0.254, 9);
    expect(STEP_LIMITS_M.rise).toBeCloseTo(0.19685, 9);
    expect(GUARD_FROM_M).toBeCloseTo(0.762, 9);
  });
});
