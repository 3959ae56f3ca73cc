/**
 * What a design absorbs: a curve at ninths of an octave, a figure per octave, its resonance, and in
 * plain words what the figures are worth.
 */

import type { Air } from '../air/medium';
import { exactOctaveHz, OCTAVES_HZ, type OctaveHz } from '../quantity/bands';
import type { LengthUnits } from '../quantity/length';
import type { AbsorptionByBand } from '../room/project';
import { cavityDepthM, type Design } from './design';
import { designFaults, type DesignFault } from './design-faults';
import { stackOf } from './design-stack';
import { designNotes } from './design-notes';
import { diffuseMean } from './diffuse';
import { gasOf, type Gas } from './gas';
import { LEAST_POINTS, octaveMean } from './octave-mean';
import { validRangeHz } from './porous';
import { stackAt, type Stack } from './stack';

export interface CurvePoint {
  readonly hz: number;
  /** Absorption coefficient at normal incidence, 0 to 1. */
  readonly normal: number;
  /** In a diffuse field, 0 to 90 degrees, 0 to 1. */
  readonly diffuse: number;
  /** Within the range that the formulas were made for. */
  readonly valid: boolean;
}

export interface Evaluation {
  /** 46 Hz to 10.8 kHz in steps of a ninth of an octave; empty where the design has a fault. */
  readonly curve: readonly CurvePoint[];
  /** Diffuse-field coefficient: mean over each octave, of more points than the curve has (octave-mean). */
  readonly octaves: AbsorptionByBand;
  /** Octaves with a point outside the range of the formulas. */
  readonly extrapolated: readonly OctaveHz[];
  /** Lowest frequency at which the surface gives way without reactance; null for porous absorbers and where damping leaves none. */
  readonly resonanceHz: number | null;
  /** What the figures hold for, in plain words. */
  readonly notes: readonly string[];
  readonly faults: readonly DesignFault[];
}

/** Points of the curve in each octave. */
const PER_OCTAVE = 9;

const CURVE_HZ: readonly number[] = OCTAVES_HZ.flatMap((octave) =>
  Array.from({ length: PER_OCTAVE }, (_, i) => exactOctaveHz(octave) * 10 ** ((i - 4) / 30)),
);

/** Range in Hz within which every part of the design is within its formulas; low above high for none. */
export function validHzOf(design: Design, gas: Gas): readonly [number, number] {
  const ranges = design.layers.map((layer) => validRangeHz(layer.flowResistivity));
  const low = Math.max(0, ...ranges.map((range) => range[0]));
  const high = Math.min(Infinity, ...ranges.map((range) => range[1]));
  return [low, Math.min(high, openingLimitHz(design, gas))];
}

/** Above this frequency openings lie more than half a wavelength apart and scatter sound. */
function openingLimitHz(design: Design, gas: Gas): number {
  if (design.kind === 'perforated') return gas.speedMS / (2 * design.holeSpacingM);
  if (design.kind === 'slotted') return gas.speedMS / (2 * (design.slotWidthM + design.slatWidthM));
  return Infinity;
}

/**
 * What `design` absorbs in `air`. Every figure is finite; a design with a fault has none. Where a
 * model's own result leaves 0 to 1, the limit is shown and a note says so. Takes 8 to 25 ms,
 * more where a deep cavity without fill has many narrow resonances.
 */
export function evaluateDesign(
  design: Design,
  air: Air,
  units: LengthUnits = 'metric',
): Evaluation {
  const faults = designFaults(design, units);
  if (faults.length > 0) {
    return { curve: [], octaves: {}, extrapolated: [], resonanceHz: null, notes: [], faults };
  }
  const gas = gasOf(air);
  const stack = stackOf(design);
  const [lowHz, highHz] = validHzOf(design, gas);
  const depthM = cavityDepthM(design);
  const belowZero: { readonly hz: number; readonly value: number }[] = [];
  const diffuseOf = (absorption: (angle: number) => number, hz: number): number =>
    diffuseMean(absorption, anglesFor((2 * Math.PI * hz * depthM) / gas.speedMS));
  const curve = CURVE_HZ.map((hz): CurvePoint => {
    const { absorption } = stackAt(stack, hz, gas);
    const normal = absorption(0);
    const diffuse = diffuseOf(absorption, hz);
    const least = Math.min(normal, diffuse);
    if (least < -1e-6) belowZero.push({ hz, value: least });
    return { hz, normal: unit(normal), diffuse: unit(diffuse), valid: hz >= lowHz && hz <= highHz };
  });
  const least = design.layers.length > 0 ? LEAST_POINTS : 3 * LEAST_POINTS;
  const octaves = OCTAVES_HZ.map((octave, i) => {
    const points = curve.slice(i * PER_OCTAVE, (i + 1) * PER_OCTAVE);
    const mean = octaveMean(
      octave,
      points.map((point) => point.diffuse),
      (hz) => unit(diffuseOf(stackAt(stack, hz, gas).absorption, hz)),
      least,
    );
    return { hz: octave, mean, valid: points.every((point) => point.valid) };
  });
  const extrapolated = octaves.filter((octave) => !octave.valid).map((octave) => octave.hz);
  return {
    curve,
    octaves: Object.fromEntries(octaves.map(({ hz, mean }) => [String(hz), mean])),
    extrapolated,
    resonanceHz: design.kind === 'porous' ? null : resonanceHz(stack, gas),
    notes: designNotes(design, {
      lowHz,
      highHz,
      openingHz: openingLimitHz(design, gas),
      belowZero,
    }),
    faults,
  };
}

const unit = (value: number): number => Math.min(1, Math.max(0, value));

/** Angles of the diffuse mean: a deep cavity answers differently at many angles. */
function anglesFor(depthInWaves: number): number {
  return depthInWaves < 4 ? 24 : depthInWaves < 16 ? 40 : 80;
}

/** Lowest frequency from 20 Hz to 8 kHz at which the reactance at normal incidence rises through 0. */
function resonanceHz(stack: Stack, gas: Gas): number | null {
  // The reactance has the sign opposite to that of the susceptance.
  const stiff = (hz: number): boolean => stackAt(stack, hz, gas).admittance(0).im > 0;
  for (let step = 0; step < 78; step++) {
    let low = 20 * 10 ** (step / 30);
    let high = 20 * 10 ** ((step + 1) / 30);
    if (!stiff(low) || stiff(high)) continue;
    while (high / low > 1.0005) {
      const middle = Math.sqrt(low * high);
      if (stiff(middle)) low = middle;
      else high = middle;
    }
    return Math.sqrt(low * high);
  }
  return null;
}
