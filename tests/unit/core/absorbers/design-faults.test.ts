import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STARTING_DESIGNS, type Design } from '../../../../core/absorbers/design';
import { DESIGN_LIMITS, designFaults } from '../../../../core/absorbers/design-faults';
import { evaluateDesign } from '../../../../core/absorbers/evaluate';
import { CLOTHS, POROUS_MATERIALS } from '../../../../core/absorbers/materials';
import { DEFAULT_AIR } from '../../../../core/air/medium';
import { only } from '../../support/rooms';

const { porous, perforated, slotted, membrane } = STARTING_DESIGNS;
const withSigma = (flowResistivity: number): Design => ({
  ...porous,
  layers: [{ thicknessM: 0.1, flowResistivity }],
});

describe('a flow resistivity out of range', () => {
  it.each([
    [200, 1000],
    [-5, 1000],
    [0, 1000],
    [250_000, 100_000],
    [NaN, 1000],
    [Infinity, 100_000],
  ])('%f Pa s/m2 is refused with %f as the nearest', (typed, nearest) => {
    const found = evaluateDesign(withSigma(typed), DEFAULT_AIR);
    const fault = only(found.faults);
    expect(fault.field).toBe('layers.0.flowResistivity');
    expect(fault.nearest).toBe(nearest);
    expect(fault.sentence).toBe(
      `Flow resistivity can be 1000 Pa s/m2 to 100000 Pa s/m2. The nearest is ${nearest} Pa s/m2.`,
    );
    expect(found.curve).toEqual([]);
    expect(found.octaves).toEqual({});
    expect(designFaults(withSigma(fault.nearest))).toEqual([]);
  });
});

describe('a front of another thickness than can be computed', () => {
  it.each([
    ['Panel thickness', { ...perforated, panelThicknessM: 0.2 }],
    ['Slat thickness', { ...slotted, panelThicknessM: 0.2 }],
  ] as const)('is complained of as the %s', (name, design) => {
    const fault = only(designFaults(design));
    expect(fault.field).toBe('panelThicknessM');
    expect(fault.sentence.startsWith(`${name} can be `)).toBe(true);
  });
});

describe('a build that cannot be', () => {
  it.each<[string, Design, string, number]>([
    [
      'a thickness of nothing',
      { ...porous, layers: [{ thicknessM: 0, flowResistivity: 9000 }] },
      'layers.0.thicknessM',
      0.003,
    ],
    ['no layer', { ...porous, layers: [] }, 'layers', 1],
    ['a membrane without fill', { ...membrane, layers: [] }, 'layers', 1],
    [
      'three layers',
      { ...porous, layers: [...porous.layers, ...porous.layers, ...porous.layers] },
      'layers',
      2,
    ],
    ['a negative gap', { ...porous, airGapM: -0.1 }, 'airGapM', 0],
    ['a dense cloth', { ...porous, clothResistance: 9000 }, 'clothResistance', 5000],
    ['a weightless panel', { ...membrane, surfaceMassKgM2: 0 }, 'surfaceMassKgM2', 0.3],
    ['a thick panel', { ...perforated, panelThicknessM: 0.2 }, 'panelThicknessM', 0.06],
    ['holes that meet', { ...perforated, holeSpacingM: 0.007 }, 'holeSpacingM', 0.01121],
    [
      'a hole now and then',
      { ...perforated, holeDiameterM: 0.001, holeSpacingM: 0.2 },
      'holeSpacingM',
      0.02802,
    ],
    ['slats like laths', { ...slotted, slatWidthM: 0.003 }, 'slatWidthM', 0.009],
    [
      'a panel on the wall',
      { ...perforated, layers: [], clearanceM: 0, airGapM: 0.001 },
      'airGapM',
      0.005,
    ],
  ])('%s', (_, design, field, nearest) => {
    const fault = only(designFaults(design));
    expect(fault.field).toBe(field);
    expect(fault.nearest).toBeCloseTo(nearest, 9);
    expect(fault.sentence).toMatch(/\. The nearest .*\d.*\.$/);
  });

  it('is told in the units on the screen', () => {
    const design = { ...perforated, holeSpacingM: 0.007 };
    expect(only(designFaults(design)).sentence).toContain('11.21 mm');
    expect(only(designFaults(design, 'imperial')).sentence).toContain('29/64 in');
  });

  it('can be built with the nearest value in its place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.0005, max: 0.3, noNaN: true }),
        fc.double({ min: 0.0002, max: 0.05, noNaN: true }),
        (holeSpacingM, holeDiameterM) => {
          const design = { ...perforated, holeSpacingM, holeDiameterM };
          const [fault] = designFaults(design);
          fc.pre(fault !== undefined && fault.nearest <= DESIGN_LIMITS.holeSpacingM[1]);
          expect(designFaults({ ...design, holeSpacingM: fault?.nearest ?? 0 })).toEqual([]);
        },
      ),
    );
  });
});

describe('the materials to choose from', () => {
  it.each([...POROUS_MATERIALS])('$name lies within what is computed', (row) => {
    expect(row.low).toBeLessThan(row.typical);
    expect(row.typical).toBeLessThan(row.high);
    for (const value of [row.low, row.typical, row.high]) {
      expect(designFaults(withSigma(value))).toEqual([]);
    }
    expect(row.source).not.toBe('');
  });

  it.each([...CLOTHS])('$name lies within what is computed', (row) => {
    expect(row.low).toBeLessThan(row.typical);
    expect(row.typical).toBeLessThan(row.high);
    expect(designFaults({ ...porous, clothResistance: row.high })).toEqual([]);
  });

  it('have names of their own', () => {
    const ids = [...POROUS_MATERIALS, ...CLOTHS].map((row) => row.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
