import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { complex, ZERO } from '../../../../core/absorbers/complex';
import { cavityDepthM, STARTING_DESIGNS, type Design } from '../../../../core/absorbers/design';
import { stackOf } from '../../../../core/absorbers/design-stack';
import { diffuseMean, diffuseOfLocal } from '../../../../core/absorbers/diffuse';
import { evaluateDesign } from '../../../../core/absorbers/evaluate';
import { holeEndM, holeOpenArea } from '../../../../core/absorbers/facing';
import { gasOf } from '../../../../core/absorbers/gas';
import { porousMedium } from '../../../../core/absorbers/porous';
import { stackAt } from '../../../../core/absorbers/stack';
import { DEFAULT_AIR } from '../../../../core/air/medium';
import { exactOctaveHz, OCTAVES_HZ, type OctaveHz } from '../../../../core/quantity/bands';
import { given, notFinite } from '../../support/rooms';
import { legalDesign } from './arbitrary-design';

const GAS = gasOf(DEFAULT_AIR);
const evaluate = (design: Design) => evaluateDesign(design, DEFAULT_AIR);

function layerOn(thicknessM: number, flowResistivity: number): Design {
  return {
    ...STARTING_DESIGNS.porous,
    layers: [{ thicknessM, flowResistivity }],
    airGapM: 0,
  };
}

describe('any design without faults', () => {
  it('absorbs 0 to 1 everywhere, in figures that are all finite', () => {
    fc.assert(
      fc.property(
        legalDesign,
        fc.record({
          temperatureC: fc.integer({ min: -20, max: 50 }),
          humidityPercent: fc.constant(50),
          pressureKPa: fc.integer({ min: 50, max: 120 }),
        }),
        (design, air) => {
          const found = evaluateDesign(design, air);
          expect(notFinite(found)).toEqual([]);
          expect(found.curve).toHaveLength(72);
          for (const point of found.curve) {
            expect(point.normal).toBeGreaterThanOrEqual(0);
            expect(point.normal).toBeLessThanOrEqual(1);
            expect(point.diffuse).toBeGreaterThanOrEqual(0);
            expect(point.diffuse).toBeLessThanOrEqual(1);
          }
          expect(Object.keys(found.octaves)).toEqual(OCTAVES_HZ.map(String));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is told where Miki leaves 0 to 1 and never does so by more than 0.01', () => {
    fc.assert(
      fc.property(legalDesign, fc.integer({ min: 46, max: 10_800 }), (design, hz) => {
        const { absorption } = stackAt(stackOf({ ...design, model: 'miki' }), hz, GAS);
        expect(absorption(0)).toBeGreaterThan(-0.01);
        expect(absorption(0)).toBeLessThanOrEqual(1 + 1e-9);
        expect(diffuseMean(absorption)).toBeGreaterThan(-0.01);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a porous layer on a wall', () => {
  it('never absorbs less at 63 Hz for being thicker, up to a quarter wave in the material', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 100_000 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (flowResistivity, partA, partB) => {
          // The wave is shortest in the upper part of the octave.
          const { waveNumber } = porousMedium('miki', flowResistivity, 85, GAS);
          const quarterM = Math.min(1, Math.PI / 2 / waveNumber.re);
          const [thin, thick] = [partA, partB].sort((a, b) => a - b) as [number, number];
          const at = (part: number): number =>
            given(
              evaluate(layerOn(Math.max(0.003, part * quarterM), flowResistivity)).octaves['63'],
            );
          expect(at(thick)).toBeGreaterThanOrEqual(at(thin) - 1e-9);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('beyond that loses at most 0.03 by being thicker still', () => {
    for (const flowResistivity of [1000, 10_000, 40_000, 100_000]) {
      let most = 0;
      for (const thicknessM of [0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1]) {
        const found = given(evaluate(layerOn(thicknessM, flowResistivity)).octaves['63']);
        expect(found).toBeGreaterThan(most - 0.03);
        most = Math.max(most, found);
      }
    }
  });

  it('of half the thickness and twice the flow resistivity is the same an octave higher', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.integer({ min: 1000, max: 50_000 }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.integer({ min: 50, max: 4000 }),
        (thicknessM, flowResistivity, airGapM, hz) => {
          const at = (scale: number): number => {
            const design = {
              ...STARTING_DESIGNS.porous,
              layers: [
                { thicknessM: thicknessM / scale, flowResistivity: flowResistivity * scale },
              ],
              airGapM: airGapM / scale,
            };
            return diffuseMean(stackAt(stackOf(design), hz * scale, GAS).absorption);
          };
          expect(at(2)).toBeCloseTo(at(1), 9);
        },
      ),
    );
  });

  it('tends to a hard wall as it gets thin', () => {
    const at = (thicknessM: number): number => {
      const { absorption } = stackAt(stackOf(layerOn(thicknessM, 20_000)), 500, GAS);
      return diffuseMean(absorption);
    };
    expect(at(0)).toBe(0);
    expect(at(1e-6)).toBeLessThan(1e-4);
    expect(at(1e-4)).toBeLessThan(at(1e-3));
  });

  it('cut in two behaves as one', () => {
    const whole = evaluate(layerOn(0.12, 15_000)).curve;
    const cut = evaluate({
      ...STARTING_DESIGNS.porous,
      layers: [
        { thicknessM: 0.05, flowResistivity: 15_000 },
        { thicknessM: 0.07, flowResistivity: 15_000 },
      ],
      airGapM: 0,
    }).curve;
    cut.forEach((point, i) => expect(point.diffuse).toBeCloseTo(given(whole[i]).diffuse, 9));
  });

  it('says from where its formulas hold and which octaves are extrapolated', () => {
    const found = evaluate(layerOn(0.1, 12_000));
    expect(found.extrapolated).toEqual([63, 125]);
    expect(found.notes[0]).toContain('hold from 120 Hz up');
    expect(found.curve.filter((point) => !point.valid).every((point) => point.hz < 120)).toBe(true);
    expect(found.resonanceHz).toBeNull();
  });
});

describe('the figure of an octave', () => {
  /** Mean over the octave from many points and angles, all alike. */
  function denseMean(design: Design, hz: OctaveHz): number {
    const stack = stackOf(design);
    const points = 1000;
    let sum = 0;
    for (let i = 0; i < points; i++) {
      const { absorption } = stackAt(
        stack,
        exactOctaveHz(hz) * 10 ** (0.3 * ((i + 0.5) / points - 0.5)),
        GAS,
      );
      sum += Math.min(1, Math.max(0, diffuseMean(absorption, 160)));
    }
    return sum / points;
  }

  const { perforated, slotted } = STARTING_DESIGNS;
  const cells = { layers: [], clearanceM: 0, clothResistance: 20, divided: true } as const;
  const smallHoles = { panelThicknessM: 0.003, holeDiameterM: 0.003, holeSpacingM: 0.012 };
  const fineSlats = { panelThicknessM: 0.006, slotWidthM: 0.002, slatWidthM: 0.01 };
  it.each([
    ['slats over cells of air', { ...slotted, ...cells, ...fineSlats, airGapM: 0.2 }],
    ['holes over cells of air', { ...perforated, ...cells, ...smallHoles, airGapM: 0.3 }],
    ['bare holes', { ...perforated, ...cells, ...smallHoles, clothResistance: null, airGapM: 0.3 }],
    ['a thin layer far from the wall', { ...layerOn(0.01, 5_000), airGapM: 0.5 }],
    ['slats over fill', slotted],
  ] as const satisfies readonly (readonly [string, Design])[])(
    'is the mean of what lies between the points of the curve too: %s',
    (_, design) => {
      const { octaves } = evaluate(design);
      for (const hz of [1000, 4000, 8000] as const) {
        expect(Math.abs(given(octaves[`${hz}`]) - denseMean(design, hz))).toBeLessThan(0.01);
      }
    },
  );
});

describe('a perforated panel over an empty cavity', () => {
  it('resonates where its mass and the air cushion meet', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.003, max: 0.02, noNaN: true }),
        fc.double({ min: 3, max: 10, noNaN: true }),
        fc.double({ min: 0.003, max: 0.02, noNaN: true }),
        fc.double({ min: 0.02, max: 0.08, noNaN: true }),
        (holeDiameterM, wider, panelThicknessM, airGapM) => {
          const design: Design = {
            ...STARTING_DESIGNS.perforated,
            holeDiameterM,
            holeSpacingM: holeDiameterM * wider,
            panelThicknessM,
            clearanceM: 0,
            layers: [],
            airGapM,
          };
          const open = holeOpenArea(holeDiameterM, holeDiameterM * wider, 'square');
          const neckM = panelThicknessM + 2 * holeEndM(holeDiameterM, open);
          const simple = (GAS.speedMS / (2 * Math.PI)) * Math.sqrt(open / (airGapM * neckM));
          const found = given(evaluate(design).resonanceHz);
          // Friction adds mass; a cavity that is deep against the wave is softer than its volume.
          const depthInWaves = (2 * Math.PI * simple * airGapM) / GAS.speedMS;
          fc.pre(depthInWaves < 0.5);
          expect(found / simple).toBeGreaterThan(0.85);
          expect(found / simple).toBeLessThan(1.01);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('absorbs most near that frequency', () => {
    const found = evaluate({ ...STARTING_DESIGNS.perforated, layers: [], airGapM: 0.08 });
    const top = found.curve.reduce((a, b) => (b.normal > a.normal ? b : a));
    expect(Math.abs(top.hz / given(found.resonanceHz) - 1)).toBeLessThan(0.08);
    expect(found.notes.join(' ')).toContain('cavity is empty');
  });

  it('is damped by a fill that touches it', () => {
    const at = (clearanceM: number) =>
      evaluate({
        ...STARTING_DESIGNS.perforated,
        clearanceM,
        airGapM: 0.1 - clearanceM,
      }).octaves;
    expect(given(at(0)['1000'])).toBeGreaterThan(given(at(0.05)['1000']) + 0.05);
  });
});

describe('a divided cavity', () => {
  it('has the diffuse absorption of one impedance at all angles', () => {
    const design: Design = { ...STARTING_DESIGNS.membrane, divided: true };
    const stack = stackOf(design);
    for (const hz of [63, 80, 100, 250]) {
      const at = stackAt(stack, hz, GAS);
      const y = at.admittance(0);
      const size = (y.re ** 2 + y.im ** 2) * GAS.impedance;
      const z = complex(y.re / size, -y.im / size);
      expect(diffuseMean(at.absorption, 60)).toBeCloseTo(diffuseOfLocal(z), 4);
    }
  });
});

describe('a cloth', () => {
  it('alone in front of a wall does nothing, and before a deep gap much', () => {
    const cloth = (gapM: number) =>
      stackAt(
        {
          facing: () => complex(GAS.impedance),
          divided: false,
          layers: [{ kind: 'air', thicknessM: gapM }],
        },
        343.2,
        GAS,
      ).absorption(0);
    expect(cloth(0)).toBe(0);
    // A resistance of rho c a quarter wave off the wall takes all.
    expect(cloth(0.25)).toBeCloseTo(1, 9);
  });
});

describe('the depth of a design', () => {
  it('is all that lies behind the facing', () => {
    expect(cavityDepthM(STARTING_DESIGNS.perforated)).toBeCloseTo(0.15, 12);
    expect(cavityDepthM(STARTING_DESIGNS.porous)).toBeCloseTo(0.2, 12);
  });

  it('of nothing is a hard wall', () => {
    const wall = { facing: () => ZERO, layers: [], divided: false };
    expect(stackAt(wall, 500, GAS).absorption(1)).toBe(0);
  });
});

describe('the diffuse mean', () => {
  it('to 78 degrees leaves out the grazing part', () => {
    const absorption = (angle: number): number => Math.cos(angle);
    // Integrals of cos sin 2 theta: 2/3 to 90 degrees, and (2/3)(1 - cos^3 78)/sin^2 78.
    expect(diffuseMean(absorption)).toBeCloseTo(2 / 3, 9);
    const edge = (78 * Math.PI) / 180;
    const expected = ((2 / 3) * (1 - Math.cos(edge) ** 3)) / Math.sin(edge) ** 2;
    expect(diffuseMean(absorption, 32, 78)).toBeCloseTo(expected, 9);
  });

  it('needs no more angles than it takes', () => {
    for (const design of Object.values(STARTING_DESIGNS)) {
      for (const { hz, diffuse } of evaluate(design).curve) {
        const exact = diffuseMean(stackAt(stackOf(design), hz, GAS).absorption, 300);
        expect(Math.abs(diffuse - exact)).toBeLessThan(0.005);
      }
    }
  });
});
