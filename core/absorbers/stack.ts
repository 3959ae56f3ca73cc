/**
 * Layers in front of a rigid wall, by the transfer matrix of each in its admittance form: that of a
 * layer is known once that of what lies behind is. A rigid wall has admittance 0, a thin sheet adds
 * its impedance, and nothing in between can become infinite.
 *
 * Sound at an angle is refracted in every layer after Snell (bulk reaction): along the surface all
 * layers have the wave number of the air in front. A divided cavity lets no sound along, so that its
 * answer is that to normal incidence. Source: Allard and Atalla, Propagation of Sound in Porous
 * Media; Cox and D'Antonio, Acoustic Absorbers and Diffusers (from memory).
 */

import {
  add,
  complex,
  divide,
  exponential,
  multiply,
  ONE,
  scale,
  squaredSize,
  squareRoot,
  subtract,
  timesJ,
  ZERO,
  type Complex,
} from './complex';
import type { Gas } from './gas';
import { airMedium, porousMedium, type Medium, type PorousModel } from './porous';

export type StackLayer =
  | { readonly kind: 'air'; readonly thicknessM: number }
  | {
      readonly kind: 'porous';
      readonly thicknessM: number;
      readonly flowResistivity: number;
      readonly model: PorousModel;
    };

export interface Stack {
  /** Impedance of what faces the room, Pa s/m, at a frequency; `behind` is the layer it touches. */
  readonly facing: (hz: number, gas: Gas, behind: Medium | null) => Complex;
  /** From the room to the wall. */
  readonly layers: readonly StackLayer[];
  /** The layers are divided into cells that are small against the wavelength. */
  readonly divided: boolean;
}

/** A stack at one frequency, ready for any angle. */
export interface StackAtFrequency {
  /** Admittance of the surface, m/(Pa s), for the sine squared of the angle of incidence. */
  readonly admittance: (sineSquared: number) => Complex;
  /** Absorption coefficient for the angle of incidence in radians, 0 to below pi/2, unclamped. */
  readonly absorption: (angle: number) => number;
}

export function mediumOf(layer: StackLayer, hz: number, gas: Gas): Medium {
  return layer.kind === 'air'
    ? airMedium(hz, gas)
    : porousMedium(layer.model, layer.flowResistivity, hz, gas);
}

/** What `stack` answers at `hz` (positive). */
export function stackAt(stack: Stack, hz: number, gas: Gas): StackAtFrequency {
  const layers = stack.layers
    .filter((layer) => layer.thicknessM > 0)
    .map((layer) => prepared(layer, hz, gas));
  const touching = layers[0]?.porous === true ? layers[0].medium : null;
  const facing = stack.facing(hz, gas, touching);
  const airSquared = ((2 * Math.PI * hz) / gas.speedMS) ** 2;
  const backToFront = [...layers].reverse();

  const admittance = (sineSquared: number): Complex => {
    const along = stack.divided ? 0 : airSquared * sineSquared;
    let behind = ZERO;
    for (const layer of backToFront) behind = throughLayer(layer, along, behind);
    return divide(behind, add(ONE, multiply(behind, facing)));
  };
  return {
    admittance,
    absorption: (angle) => {
      const cosine = Math.cos(angle);
      return absorbed(scale(admittance(1 - cosine * cosine), gas.impedance / cosine));
    },
  };
}

/**
 * 1 - |R|^2 of a surface whose admittance is `relative` to that of the incident wave: never above
 * 1; below 0 only where a model's admittance has a negative real part.
 */
export function absorbed(relative: Complex): number {
  return (4 * relative.re) / squaredSize(add(ONE, relative));
}

interface PreparedLayer {
  readonly medium: Medium;
  readonly porous: boolean;
  readonly thicknessM: number;
  readonly squared: Complex;
  /** Z k, whose quotient by the wave number across is the impedance across. */
  readonly impedanceTimesWave: Complex;
}

function prepared(layer: StackLayer, hz: number, gas: Gas): PreparedLayer {
  const medium = mediumOf(layer, hz, gas);
  return {
    medium,
    porous: layer.kind === 'porous',
    thicknessM: layer.thicknessM,
    squared: multiply(medium.waveNumber, medium.waveNumber),
    impedanceTimesWave: multiply(medium.impedance, medium.waveNumber),
  };
}

/** Admittance in front of a layer with `behind` at its back; `along` is the squared wave number along it. */
function throughLayer(layer: PreparedLayer, along: number, behind: Complex): Complex {
  const across = squareRoot(subtract(layer.squared, complex(along)));
  const own = divide(across, layer.impedanceTimesWave);
  const there = exponential(scale(timesJ(across), -2 * layer.thicknessM));
  const sum = add(ONE, there);
  const difference = subtract(ONE, there);
  return multiply(
    own,
    divide(
      add(multiply(behind, sum), multiply(own, difference)),
      add(multiply(own, sum), multiply(behind, difference)),
    ),
  );
}
