import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { summary } from '../../../../core/report/summary';
import { EXAMPLES, example, notFinite, roomOf } from '../../support/rooms';

describe('the analysis of a room', () => {
  it.each(EXAMPLES)('of %s has finite figures only, and comes out the same twice', (name) => {
    const analysis = analyze(example(name));
    expect(notFinite(analysis)).toEqual([]);
    expect(analyze(example(name))).toEqual(analysis);
  });

  it('lists modes to 200 Hz, counts them in bands beyond it, and says so beside the formula', () => {
    const { modes } = analyze(example('basement-bay'));
    expect(modes.shell.at(-1)?.frequencyHz).toBeLessThanOrEqual(200);
    expect(modes.thirdOctaves.map((band) => band.nominalHz).at(-1)).toBe(200);
    const counted = modes.thirdOctaves.reduce((sum, band) => sum + band.count, 0);
    // The last band ends at 223.9 Hz.
    expect(counted).toBeGreaterThan(modes.shell.length);
    expect(Math.abs(modes.expectedCount / modes.shell.length - 1)).toBeLessThan(0.1);
  });

  it('takes the mid-band time and the free volume for the Schroeder frequency', () => {
    const { modes, decay, geometry } = analyze(example('under-the-ducts'));
    // The room is so uneven that Arau-Puchades is read: 0.294 s in 63.0 m3, 2000 (T/V)^(1/2) = 137 Hz.
    expect(decay.advice.method).toBe('arauPuchades');
    expect(decay.midS).toBeCloseTo(0.294, 2);
    expect(geometry.volumeM3).toBeCloseTo(63, 0);
    expect(modes.schroederHz).toBeGreaterThan(135);
    expect(modes.schroederHz).toBeLessThan(139);
  });

  it('leaves the Schroeder frequency open where the decay is unknown', () => {
    const own = { id: 'own', name: 'Own', absorption: { '500': 0.3 } };
    const project = roomOf({ finishes: { back: 'own' } }, { finishesCustom: [own] });
    expect(analyze(project).modes.schroederHz).toBeNull();
  });

  it('says whether the list of modes knows the real shape', () => {
    expect(analyze(example('basement-bay')).modes.exactShape).toBe(true);
    expect(analyze(example('under-the-ducts')).modes.exactShape).toBe(false);
  });

  it('judges the spacing of the axial modes by two limits', () => {
    const good = analyze(roomOf({ size: { width: 3.6, length: 6, height: 2.6 } })).modes.spacing;
    expect([good.axialClosest.limit, good.axialWidestGap.limit]).toEqual([5, 20]);
    const cube = analyze(roomOf({ size: { width: 3, length: 3, height: 3 } })).modes.spacing;
    expect(cube.axialClosest).toMatchObject({ value: 0, pass: false });
    expect(cube.axialWidestGap.value).toBeCloseTo(57.2, 6);
    expect(cube.axialWidestGap.pass).toBe(false);
  });

  it('speaks in the units of the person', () => {
    const project = roomOf({ size: { width: 4, length: 5, height: 2 } });
    const messages = (units: 'metric' | 'imperial'): string =>
      analyze(project, units)
        .findings.map((finding) => finding.message)
        .join();
    expect(messages('metric')).toContain('A ceiling at 2.00 m is');
    expect(messages('imperial')).toContain(`A ceiling at 6' 6 3/4" is`);
  });
});

describe('a layer of air thinner than anything', () => {
  const LEAST = 5e-324;

  it.each([
    ['along one wall', [LEAST, 0, 0]],
    ['along two', [LEAST, LEAST, 0]],
    ['along three', [LEAST, LEAST, LEAST]],
    ['a thousandth of a millimetre thick', [1e-6, 0, 0]],
  ] as const)('%s gives no figure that is none', (_where, min) => {
    const project = roomOf({ solids: [{ id: 'block', kind: 'other', min, max: [4, 5, 3] }] });
    expect(notFinite(analyze(project))).toEqual([]);
  });

  it('is no free space', () => {
    const min = [LEAST, 0, 0];
    const project = roomOf({ solids: [{ id: 'block', kind: 'other', min, max: [4, 5, 3] }] });
    expect(analyze(project).geometry).toEqual({ volumeM3: 0, surfaceM2: 0, surfaces: [] });
  });

  it('before a fitting leaves the fitting against its wall', () => {
    const closet = (x: number) =>
      roomOf({ solids: [{ id: 'closet', kind: 'closet', min: [x, 0, 0], max: [1, 1, 3] }] });
    expect(analyze(closet(LEAST)).geometry).toEqual(analyze(closet(0)).geometry);
  });

  it('under a patch is no surface', () => {
    const patch = { id: 'strip', face: 'left', rect: [0, 0, LEAST, 1], finish: 'door-solid' };
    const { surfaces } = analyze(roomOf({ patches: [patch] })).geometry;
    expect(surfaces.filter((surface) => surface.areaM2 < 1e-9)).toEqual([]);
  });
});

describe('a room without any free space', () => {
  const project = roomOf({
    solids: [{ id: 'block', kind: 'other', min: [0, 0, 0], max: [4, 5, 3] }],
  });

  it('has no decay and no Schroeder frequency instead of figures that are none', () => {
    const analysis = analyze(project);
    expect(notFinite(analysis)).toEqual([]);
    expect(analysis.modes.schroederHz).toBeNull();
    expect(analysis.decay.bands.map((band) => band.eyringS)).toEqual(Array(8).fill(null));
  });

  it('is told so without "NaN"', () => {
    expect(summary(project, analyze(project))).not.toContain('NaN');
  });
});
