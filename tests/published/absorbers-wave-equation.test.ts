import { describe, expect, it } from 'vitest';
import {
  add,
  complex,
  divide,
  multiply,
  ONE,
  scale,
  squaredSize,
  subtract,
  timesJ,
  ZERO,
  type Complex,
} from '../../core/absorbers/complex';
import { gasOf } from '../../core/absorbers/gas';
import { mediumOf, stackAt, type Stack, type StackLayer } from '../../core/absorbers/stack';
import { DEFAULT_AIR } from '../../core/air/medium';
import { given } from '../unit/support/rooms';

/**
 * The transfer matrix against the wave equation itself. Each layer is a fluid of complex density
 * rho = Z k/omega and bulk modulus K = Z omega/k; across the layers
 *
 *     d/dx ((1/rho) dp/dx) + (omega^2/K - kt^2/rho) p = 0,   kt = k0 sin(theta),
 *
 * is cut into cells and solved as one system of linear equations, a plane wave coming in at the front
 * and no flow at the wall. Worked out here, independently of any source.
 */

const GAS = gasOf(DEFAULT_AIR);
const CELL_M = 0.00005;

interface Cell {
  readonly thicknessM: number;
  readonly density: Complex;
  /** omega^2/K - kt^2/rho, times the thickness. */
  readonly store: Complex;
}

function cellsOf(layers: readonly StackLayer[], hz: number, along: number): readonly Cell[] {
  const omega = 2 * Math.PI * hz;
  return layers.flatMap((layer) => {
    const { impedance, waveNumber } = mediumOf(layer, hz, GAS);
    const density = scale(multiply(impedance, waveNumber), 1 / omega);
    const modulus = scale(divide(impedance, waveNumber), omega);
    const count = Math.max(40, Math.round(layer.thicknessM / CELL_M));
    const thicknessM = layer.thicknessM / count;
    const store = scale(
      subtract(divide(complex(omega * omega), modulus), divide(complex(along * along), density)),
      thicknessM,
    );
    return Array.from({ length: count }, () => ({ thicknessM, density, store }));
  });
}

function absorptionByCells(stack: Stack, hz: number, angle: number): number {
  const omega = 2 * Math.PI * hz;
  const k0 = omega / GAS.speedMS;
  const cells = cellsOf(stack.layers, hz, k0 * Math.sin(angle));
  const first = given(cells[0]);
  // Conductance between the middles of two neighbours.
  const half = (cell: Cell): Complex => scale(cell.density, cell.thicknessM / 2);
  const between = cells
    .slice(1)
    .map((cell, i) => divide(ONE, add(half(given(cells[i])), half(cell))));
  // In front: (1/rho) dp/dx = -j (kx/rho0)(2 - p); then the facing, then half a cell.
  const front = scale(complex(0, -1), (k0 * Math.cos(angle)) / GAS.densityKgM3);
  const sheet = divide(stack.facing(hz, GAS, null), complex(0, omega));
  const inside = add(half(first), sheet);
  const entering = divide(front, subtract(ONE, multiply(front, inside)));
  // flux = entering (2 - p1); one line per cell: flux out - flux in + store p = 0.
  const diagonal = cells.map((cell, i) => {
    const left = i === 0 ? scale(entering, -1) : given(between[i - 1]);
    const right = between[i] ?? ZERO;
    return subtract(cell.store, add(left, right));
  });
  const source = cells.map((_, i) => (i === 0 ? scale(entering, 2) : ZERO));
  for (let i = 1; i < cells.length; i++) {
    const coupling = given(between[i - 1]);
    const factor = divide(coupling, given(diagonal[i - 1]));
    diagonal[i] = subtract(given(diagonal[i]), multiply(factor, coupling));
    source[i] = subtract(given(source[i]), multiply(factor, given(source[i - 1])));
  }
  let pressure = divide(given(source.at(-1)), given(diagonal.at(-1)));
  for (let i = cells.length - 2; i >= 0; i--) {
    const rest = subtract(given(source[i]), multiply(given(between[i]), pressure));
    pressure = divide(rest, given(diagonal[i]));
  }
  const flux = multiply(entering, subtract(complex(2), pressure));
  const surface = subtract(pressure, multiply(flux, inside));
  return 1 - squaredSize(subtract(surface, ONE));
}

const wool = (thicknessM: number, flowResistivity: number): StackLayer => ({
  kind: 'porous',
  thicknessM,
  flowResistivity,
  model: 'miki',
});
const air = (thicknessM: number): StackLayer => ({ kind: 'air', thicknessM });
const bare = (): Complex => ZERO;

const STACKS: readonly (readonly [string, Stack])[] = [
  ['one layer', { facing: bare, divided: false, layers: [wool(0.05, 10_000)] }],
  ['a layer before air', { facing: bare, divided: false, layers: [wool(0.08, 18_000), air(0.12)] }],
  [
    'two layers before air',
    { facing: bare, divided: false, layers: [wool(0.03, 50_000), wool(0.06, 6000), air(0.04)] },
  ],
  [
    'a cloth before a layer and air',
    { facing: () => complex(400), divided: false, layers: [wool(0.04, 8000), air(0.06)] },
  ],
  [
    'a panel of 3 kg/m2 before air, a layer and air',
    {
      facing: (hz) => scale(timesJ(ONE), 2 * Math.PI * hz * 3),
      divided: false,
      layers: [air(0.02), wool(0.05, 12_000), air(0.05)],
    },
  ],
];

describe.each(STACKS)('%s', (_, stack) => {
  it.each([
    [63, 0],
    [125, 50],
    [500, 0],
    [500, 75],
    [2000, 30],
  ])('absorbs at %i Hz and %i degrees what the wave equation says', (hz, angleDeg) => {
    const angle = (angleDeg * Math.PI) / 180;
    const found = stackAt(stack, hz, GAS).absorption(angle);
    expect(Math.abs(found - absorptionByCells(stack, hz, angle))).toBeLessThan(2e-4);
  });
});
