/**
 * Data and conventions held to the copy that they were taken from, so that no figure changes unseen.
 * A match says that the transcription is kept, not that a formula is right: none of it counts as a check.
 */

import { describe, expect, it } from 'vitest';
import { FREE_PATH_VARIANCE } from '../../core/decay/kuttruff';
import { METHOD_IDS, METHODS } from '../../core/decay/methods';
import { objectAbsorption } from '../../core/decay/objects';
import { targetBand } from '../../core/decay/target';
import { coefficientUncertainty } from '../../core/decay/uncertainty';
import { GOOD_RATIOS, isInArea } from '../../core/proportions/proportion-rules';

describe('published good ratios', () => {
  it.each([
    ['Sepmeyer A', 1.14, 1.39],
    ['Sepmeyer B', 1.28, 1.54],
    ['Sepmeyer C', 1.6, 2.33],
    ['Louden 1', 1.4, 1.9],
    ['Louden 2', 1.3, 1.9],
    ['Louden 3', 1.5, 2.1],
    ['Bolt 2:3:5', 1.5, 2.5],
  ])('%s is 1 : %f : %f (Sepmeyer 1965, Louden 1971, Bolt 1946)', (name, width, length) => {
    expect(GOOD_RATIOS.find((ratio) => ratio.name === name)).toMatchObject({ width, length });
  });
});

describe('the outline of Bolt’s area (redrawn from memory)', () => {
  it.each([
    [1.14, 1.39, true],
    [1.28, 1.54, true],
    [1.6, 2.33, true],
    [1.26, 1.59, true],
    [1.4, 1.9, true],
    [1.5, 2.5, true],
    [1, 1, false],
    [1, 2, false],
    [2, 3, false],
  ])('1 : %f : %f lies within: %s', (width, length, within) => {
    expect(isInArea({ width, length })).toBe(within);
  });
});

describe('people', () => {
  it.each([
    [125, 0.23],
    [250, 0.37],
    [500, 0.44],
    [1000, 0.45],
    [4000, 0.45],
  ] as const)('at %i Hz a seated one absorbs %f m2', (hz, eachM2) => {
    // Bies, Hansen & Howard, Engineering Noise Control, 5th ed., Table 6.2, in a transcription.
    const six = objectAbsorption([{ id: 'a', item: 'person-seated', count: 6 }], hz);
    expect(six.areaM2).toBeCloseTo(6 * eachM2, 9);
  });
});

describe('the error of a coefficient', () => {
  it.each([
    [63, 0.33],
    [125, 0.17],
    [500, 0.1],
    [4000, 0.1],
  ] as const)('is at %i Hz about %f', (hz, expanded) => {
    // ISO 12999-2:2020, worked table of expanded uncertainties (k = 2), in a transcription; rounded up.
    expect(coefficientUncertainty(hz)).toBe(expanded);
  });
});

describe('every method', () => {
  it.each(METHOD_IDS)('%s says after whom, and what it holds for', (id) => {
    expect(METHODS[id].source.length).toBeGreaterThan(10);
    expect(METHODS[id].holds).not.toBe('');
  });
});

describe('Kuttruff’s variance of the free paths', () => {
  it('is kept between what rays in diffusely reflecting rooms of usual shape give', () => {
    // Monte Carlo, 3 million paths each: cube 0.346, 1:1:5 0.396, 1:2:5 0.409, 1:5:5 0.485.
    expect(FREE_PATH_VARIANCE).toBeGreaterThan(0.346);
    expect(FREE_PATH_VARIANCE).toBeLessThan(0.485);
  });
});

describe('own target', () => {
  it('is met within 25 %', () => {
    // Our own convention, where the person gives no other.
    expect(targetBand({ kind: 'custom', seconds: { '500': 0.4 } }, 500, 72)).toEqual({
      targetS: 0.4,
      lowS: expect.closeTo(0.3, 10) as number,
      highS: expect.closeTo(0.5, 10) as number,
    });
  });
});
