/**
 * How long each mode of the shell rings, from the absorption of each face.
 *
 * Energy balance. A standing wave of mean squared pressure <p2> over the volume V holds the energy
 * V <p2>/(rho c2) (as much kinetic as potential). A locally reacting face of real specific admittance b
 * takes the power S b <p2>_face/(rho c). On a rigid wall the cosine normal to it is at its largest, so
 * <p2>_face/<p2> is e = 2 where the mode has half waves normal to the face and e = 1 where it grazes
 * it. Energy falls as exp(-2 d t), so
 *
 *     d = (c/2V) sum e_i b_i S_i + c A/(8V) + c m/2,   T = 3 ln10/d,   bandwidth d/pi = 2.2/T
 *
 * with A the absorption of what stands in the room, met by the mean field, and m that of the air.
 * Source: Morse & Bolt, Rev. Mod. Phys. 16 (1944) 69; Kuttruff, Room Acoustics, ch. 3 (both from memory),
 * derived above.
 *
 * A published coefficient is one of diffuse sound. It becomes an admittance by Paris' integral for a
 * real impedance z = 1/b, alpha = (8/z2)(1 + z - 1/(1+z) - 2 ln(1+z)) (Kuttruff, ch. 2; Mommertz 1996),
 * on its hard side, where it tends to alpha = 8b. With that limit an oblique mode (e = 2 everywhere)
 * decays in exactly Sabine's time. The integral peaks at 0.951 (z = 1.567): larger coefficients are
 * cut there.
 *
 * Assumes: first order in b (small absorption: to 0.2 or so it is good, beyond it a guide), local
 * reaction, real impedance (a panel at its resonance has another), each finish spread evenly over its
 * face, modes of the plain shell also where solids fill part of it.
 */

import type { ModeOrder, ShellMode } from './shell-modes';
import { modalBandwidthHz } from './schroeder';

/** Published figures, [Hz, value], rising; empty where the source has none. */
export type Spectrum = readonly (readonly [number, number])[];

/** One finish on the faces normal to one axis: 0 width, 1 length, 2 height. */
export interface ModalFace {
  readonly axis: 0 | 1 | 2;
  readonly areaM2: number;
  /** Diffuse absorption coefficient. */
  readonly absorption: Spectrum;
}

export interface ModalRoom {
  readonly volumeM3: number;
  readonly speedMS: number;
  readonly faces: readonly ModalFace[];
  /** Absorption areas in m2 of what stands in the room. */
  readonly objects?: readonly Spectrum[];
  /** Energy attenuation constant of the air in 1/m at a frequency in Hz. */
  readonly airPerM?: (frequencyHz: number) => number;
}

export interface ModalDecay {
  readonly order: ModeOrder;
  readonly frequencyHz: number;
  /** Time in s in which the mode falls by 60 dB. */
  readonly decayS: number;
  /** Half-power bandwidth, 2.2/T. */
  readonly bandwidthHz: number;
  /** True where a figure was held from the nearest octave that a source gives. */
  readonly extrapolated: boolean;
}

/** Value at `frequencyHz`, straight over log f between the figures, held beyond the first and last. */
export function spectrumAt(
  spectrum: Spectrum,
  frequencyHz: number,
): { readonly value: number; readonly held: boolean } | null {
  const [first, last] = [spectrum[0], spectrum.at(-1)];
  if (!first || !last) return null;
  if (frequencyHz < first[0]) return { value: first[1], held: true };
  if (frequencyHz > last[0]) return { value: last[1], held: true };
  let below = first;
  for (const point of spectrum) {
    if (point[0] >= frequencyHz) {
      const share =
        point[0] === below[0]
          ? 0
          : Math.log(frequencyHz / below[0]) / Math.log(point[0] / below[0]);
      return { value: below[1] + share * (point[1] - below[1]), held: false };
    }
    below = point;
  }
  return { value: last[1], held: false };
}

/** Diffuse absorption coefficient of a locally reacting face of real specific admittance (Paris). */
export function diffuseCoefficient(admittance: number): number {
  const b = admittance;
  if (b <= 0) return 0;
  return 8 * b * (1 + b / (1 + b) - 2 * b * Math.log1p(1 / b));
}

/** Admittance at which `diffuseCoefficient` is largest. */
const SOFTEST = 1 / 1.567;
const MOST_COEFFICIENT = diffuseCoefficient(SOFTEST);

/** The smaller admittance that absorbs `coefficient` of diffuse sound; Newton, from below. */
export function admittanceOf(coefficient: number): number {
  if (coefficient <= 0) return 0;
  if (coefficient >= MOST_COEFFICIENT) return SOFTEST;
  let b = coefficient / 8;
  for (let i = 0; i < 40; i++) {
    const log = Math.log1p(1 / b);
    const missing = coefficient - 8 * b * (1 + b / (1 + b) - 2 * b * log);
    const slope = 8 * (1 + b / (1 + b) - 4 * b * log + (2 * b) / (1 + b) + b / (1 + b) ** 2);
    const step = missing / slope;
    if (!(step > 1e-12)) break;
    b = Math.min(SOFTEST, b + step);
  }
  return b;
}

/** A mode as the faces meet it. */
export interface MetMode {
  readonly frequencyHz: number;
  /** Of each face, its area times the mode's mean square over it, over that in the room; m2. */
  readonly coverageM2: readonly number[];
}

export interface DecayTime {
  /** Time in s in which the mode falls by 60 dB. */
  readonly decayS: number;
  /** True where a figure was held from the nearest octave that a source gives. */
  readonly extrapolated: boolean;
}

/** Decay of one mode; null where a face or an object has no figure at all, or nothing absorbs. */
export function decayOfMode(
  { frequencyHz, coverageM2 }: MetMode,
  room: ModalRoom,
): DecayTime | null {
  const { volumeM3, speedMS, faces, objects = [], airPerM = () => 0 } = room;
  if (volumeM3 <= 0) return null;
  let extrapolated = false;
  let wallsM2 = 0;
  for (const [n, face] of faces.entries()) {
    const found = spectrumAt(face.absorption, frequencyHz);
    if (!found) return null;
    extrapolated ||= found.held;
    wallsM2 += admittanceOf(found.value) * (coverageM2[n] ?? 0);
  }
  let objectsM2 = 0;
  for (const object of objects) {
    const found = spectrumAt(object, frequencyHz);
    if (!found) return null;
    extrapolated ||= found.held;
    objectsM2 += found.value;
  }
  const damping =
    (speedMS / 2) * (wallsM2 / volumeM3 + objectsM2 / (4 * volumeM3) + airPerM(frequencyHz));
  return damping > 0 ? { decayS: (3 * Math.LN10) / damping, extrapolated } : null;
}

/** Decay of each mode of the shell; empty where a face or an object has no figure, or no room is left. */
export function modalDecay(modes: readonly ShellMode[], room: ModalRoom): readonly ModalDecay[] {
  return modes.flatMap(({ order, frequencyHz }): readonly ModalDecay[] => {
    const coverageM2 = room.faces.map(({ axis, areaM2 }) => (order[axis] > 0 ? 2 : 1) * areaM2);
    const found = decayOfMode({ frequencyHz, coverageM2 }, room);
    return found
      ? [{ order, frequencyHz, ...found, bandwidthHz: modalBandwidthHz(found.decayS) }]
      : [];
  });
}
