/**
 * What stands in front of a cavity, as a thin sheet: the pressure drop across it per velocity, in
 * Pa s/m, at one frequency. It adds to the impedance of what lies behind.
 *
 * Holes and slots: the air in them is a viscous fluid in a long tube (Zwikker and Kosten 1949 for
 * circles; the same between two planes for slots), which turns into Poiseuille's resistance when
 * they are narrow and into a plain mass when they are wide. At both mouths come the mass of the
 * converging flow (end correction) and the friction on the face of the panel, twice the surface
 * resistance per mouth, as for sharp edges (Ingard, JASA 25 (1953) 1037, in the form given by Cox
 * and D'Antonio, Acoustic Absorbers and Diffusers; from memory). A mouth that opens into a porous
 * material converges in that material: its effective density takes the place of air (Atalla and
 * Sgard, Journal of Sound and Vibration 303 (2007) 195; from memory). That is where a fill against
 * the panel gets its strong damping from.
 */

import {
  add,
  complex,
  divide,
  hyperbolicTangent,
  multiply,
  ONE,
  scale,
  subtract,
  timesJ,
  type Complex,
} from './complex';
import type { Gas } from './gas';
import type { Medium } from './porous';

export const HOLE_GRIDS = ['square', 'staggered'] as const;
export type HoleGrid = (typeof HOLE_GRIDS)[number];

/** Open part of a panel with round holes, 0 to 1: exact, pi/4 (d/b)^2 or pi/(2 sqrt 3) (d/b)^2. */
export function holeOpenArea(diameterM: number, spacingM: number, grid: HoleGrid): number {
  const factor = grid === 'square' ? Math.PI / 4 : Math.PI / (2 * Math.sqrt(3));
  return factor * (diameterM / spacingM) ** 2;
}

/** Open part of a panel of slats, 0 to 1. */
export const slotOpenArea = (slotM: number, slatM: number): number => slotM / (slotM + slatM);

/**
 * End correction of one mouth of a round hole among others, m: 8a/(3 pi), less what neighbouring
 * holes share, 1 - 1.47 e^(1/2) + 0.47 e^(3/2) for the open area e. Validity: e up to 0.4.
 * Source: Ingard 1953, Cox and D'Antonio (who round 8/(3 pi) to 0.8 or 0.85); from memory.
 */
export function holeEndM(diameterM: number, openArea: number): number {
  const shared = 1 - 1.47 * Math.sqrt(openArea) + 0.47 * openArea ** 1.5;
  return ((8 * diameterM) / 2 / (3 * Math.PI)) * shared;
}

/**
 * End correction of one mouth of a long slot among others, m: -(w/pi) ln sin(pi e/2), the exact
 * potential flow through a grating. Source: Smits and Kosten, Acustica 1 (1951) 114; from memory.
 */
export function slotEndM(slotM: number, openArea: number): number {
  return -(slotM / Math.PI) * Math.log(Math.sin((Math.PI * openArea) / 2));
}

/** 2 I1(y)/(y I0(y)) for y^2 = j x^2: the share of a round hole's air that friction holds back. */
function heldInHole(x: number): Complex {
  if (x > 40) {
    // Asymptotic series of I1/I0 (Abramowitz and Stegun 9.7.1); its error at 40 is below 1e-7.
    const y = scale(complex(Math.SQRT1_2, Math.SQRT1_2), x);
    const inverse = divide(ONE, y);
    const square = multiply(inverse, inverse);
    const ratio = subtract(
      subtract(subtract(ONE, scale(inverse, 1 / 2)), scale(square, 1 / 8)),
      scale(multiply(square, inverse), 1 / 8),
    );
    return scale(multiply(ratio, inverse), 2);
  }
  // Continued fraction I1/I0 = y/(2 + y^2/(4 + y^2/(6 + ...))), from its far end.
  const square = complex(0, x * x);
  let tail = complex(0);
  for (let n = Math.ceil(x) + 20; n >= 2; n--) tail = divide(square, add(complex(2 * n), tail));
  return divide(complex(2), add(complex(2), tail));
}

/** tanh(y)/y for y^2 = j x^2: the same for a slot, x from its half width. */
function heldInSlot(x: number): Complex {
  const y = scale(complex(Math.SQRT1_2, Math.SQRT1_2), x);
  return divide(hyperbolicTangent(y), y);
}

export interface Opening {
  readonly shape: 'hole' | 'slot';
  /** Diameter of a hole or width of a slot, m. */
  readonly widthM: number;
  readonly panelThicknessM: number;
  /** Open part of the panel, above 0 and below 1. */
  readonly openArea: number;
  /** Flow resistance of a fleece on the back of the panel, Pa s/m; the open part alone breathes. */
  readonly fleece: number;
}

/** Impedance of a panel with openings at `hz`; `behind` is the material that touches its back. */
export function openingImpedance(
  opening: Opening,
  hz: number,
  gas: Gas,
  behind: Medium | null,
): Complex {
  const { shape, widthM, panelThicknessM, openArea, fleece } = opening;
  const omega = 2 * Math.PI * hz;
  const { densityKgM3: density, viscosityPaS: viscosity } = gas;
  const x = (widthM / 2) * Math.sqrt((omega * density) / viscosity);
  const held = shape === 'hole' ? heldInHole(x) : heldInSlot(x);
  const inside = divide(complex(panelThicknessM * density), subtract(ONE, held));
  const endM = shape === 'hole' ? holeEndM(widthM, openArea) : slotEndM(widthM, openArea);
  const densityBehind = behind
    ? scale(multiply(behind.impedance, behind.waveNumber), 1 / omega)
    : complex(density);
  const mass = add(add(inside, complex(endM * density)), scale(densityBehind, endM));
  const mouths = behind ? 1 : 2;
  const friction = mouths * Math.sqrt(2 * viscosity * omega * density);
  return scale(add(timesJ(scale(mass, omega)), complex(friction + fleece)), 1 / openArea);
}

/**
 * Impedance of a closed panel at `hz` from its mass alone, j omega m. It is taken as limp: no
 * bending stiffness, no loss at its edges. Real panels have both.
 */
export function membraneImpedance(surfaceMassKgM2: number, hz: number): Complex {
  return complex(0, 2 * Math.PI * hz * surfaceMassKgM2);
}
