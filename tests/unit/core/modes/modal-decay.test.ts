import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import {
  admittanceOf,
  diffuseCoefficient,
  modalDecay,
  spectrumAt,
  type ModalFace,
  type ModalRoom,
} from '../../../../core/modes/modal-decay';
import { modeFrequencyHz, modeKind, type ModeOrder } from '../../../../core/modes/shell-modes';
import { EXAMPLES, example, given, notFinite, only, roomOf } from '../../support/rooms';

const SIZE = { width: 4, length: 5, height: 3 };
const SPEED = 343.2;

/** The faces of the 4 x 5 x 3 m shell by the coefficients of the pairs along width, length, height. */
function faces(pairs: readonly [number, number, number]): readonly ModalFace[] {
  return ([0, 1, 2] as const).map((axis) => ({
    axis,
    areaM2: [30, 24, 40][axis] ?? 0,
    absorption: [[125, pairs[axis]]],
  }));
}

function decayS(order: ModeOrder, room: Partial<ModalRoom>): number {
  const mode = { order, frequencyHz: modeFrequencyHz(order, SIZE, SPEED), kind: modeKind(order) };
  return only(modalDecay([mode], { volumeM3: 60, speedMS: SPEED, faces: [], ...room })).decayS;
}

describe('a diffuse coefficient and the real admittance behind it', () => {
  /** Paris' integral of 4b cos/(cos + b)^2 over all directions, by the midpoint rule. */
  function paris(b: number): number {
    let sum = 0;
    const steps = 20_000;
    for (let i = 0; i < steps; i++) {
      const angle = ((i + 0.5) / steps) * (Math.PI / 2);
      const cos = Math.cos(angle);
      sum += ((4 * b * cos) / (cos + b) ** 2) * Math.sin(2 * angle);
    }
    return (sum * Math.PI) / 2 / steps;
  }

  it.each([0.001, 0.01, 0.1, 0.4, 0.638])('agree with the integral at %f', (b) => {
    expect(diffuseCoefficient(b)).toBeCloseTo(paris(b), 6);
  });

  it('never reach more than 0.951, near z = 1.567', () => {
    // H. Kuttruff, Room Acoustics, ch. 2: maximum 0.951 for a real impedance of about 1.6 (from memory).
    const values = Array.from({ length: 2000 }, (_, i) => diffuseCoefficient((i + 1) / 1000));
    expect(Math.max(...values)).toBeCloseTo(0.951, 3);
    expect(diffuseCoefficient(1 / 1.567)).toBeCloseTo(Math.max(...values), 5);
  });

  it.each([0, 1e-6, 0.01, 0.1, 0.3, 0.6, 0.9, 0.95])('come back at %f', (coefficient) => {
    expect(diffuseCoefficient(admittanceOf(coefficient))).toBeCloseTo(coefficient, 9);
  });

  it('are an eighth of each other where little is absorbed, and capped where too much is', () => {
    expect(admittanceOf(1e-4) / (1e-4 / 8)).toBeCloseTo(1, 2);
    expect(admittanceOf(1.2)).toBeCloseTo(1 / 1.567, 9);
  });
});

describe('the decay of a mode', () => {
  it('is that of a balance worked by hand', () => {
    // Admittance 0.01 all over, 343.2 m/s: d = c/(2V) 0.01 (2 x 30 + 24 + 40) = 3.5464 1/s for (1,0,0),
    // T = 3 ln10/d = 1.9478 s.
    const alpha = diffuseCoefficient(0.01);
    expect(decayS([1, 0, 0], { faces: faces([alpha, alpha, alpha]) })).toBeCloseTo(1.9478, 4);
    // (1,1,0): 2 x 30 + 2 x 24 + 40 = 148, T = 1.6319 s.
    expect(decayS([1, 1, 0], { faces: faces([alpha, alpha, alpha]) })).toBeCloseTo(1.632, 4);
  });

  it('is for an oblique mode Sabine’s time where little is absorbed', () => {
    const alpha = 1e-4;
    const sabineS = (24 * Math.LN10 * 60) / (SPEED * 94 * alpha);
    const oblique = decayS([2, 3, 1], { faces: faces([alpha, alpha, alpha]) });
    expect(Math.abs(oblique / sabineS - 1)).toBeLessThan(0.002);
  });

  it('is for an oblique mode near Eyring’s time at usual absorption', () => {
    const alpha = 0.2;
    const eyringS = (24 * Math.LN10 * 60) / (SPEED * 94 * -Math.log(1 - alpha));
    const oblique = decayS([2, 3, 1], { faces: faces([alpha, alpha, alpha]) });
    expect(Math.abs(oblique / eyringS - 1)).toBeLessThan(0.15);
  });

  it('is longest for axial, shorter for tangential, shortest for oblique modes', () => {
    const room = { faces: faces([0.1, 0.1, 0.1]) };
    const [axial, tangential, oblique] = [
      decayS([1, 0, 0], room),
      decayS([1, 1, 0], room),
      decayS([1, 1, 1], room),
    ];
    expect(axial).toBeGreaterThan(tangential);
    expect(tangential).toBeGreaterThan(oblique);
  });

  it('is twice as long for an axial mode that grazes all absorption as for one that meets it', () => {
    const onEnds = { faces: faces([0, 0.1, 0]) };
    expect(decayS([1, 0, 0], onEnds)).toBeCloseTo(2 * decayS([0, 1, 0], onEnds), 9);
  });

  it('is shortened by people and by the air', () => {
    const room = { faces: faces([0.1, 0.1, 0.1]) };
    const dry = decayS([1, 0, 0], room);
    expect(decayS([1, 0, 0], { ...room, objects: [[[125, 1]]] })).toBeLessThan(dry);
    expect(decayS([1, 0, 0], { ...room, airPerM: () => 0.001 })).toBeLessThan(dry);
    // Objects alone: Sabine with A = 2 m2.
    const alone = decayS([1, 0, 0], { objects: [[[125, 2]]] });
    expect(alone).toBeCloseTo((24 * Math.LN10 * 60) / (SPEED * 2), 9);
  });

  it('has the bandwidth 2.2/T', () => {
    const mode = { order: [1, 0, 0] as const, frequencyHz: 42.9, kind: 'axial' as const };
    const room = { volumeM3: 60, speedMS: SPEED, faces: faces([0.1, 0.1, 0.1]) };
    const { decayS: seconds, bandwidthHz } = only(modalDecay([mode], room));
    expect(bandwidthHz * seconds).toBeCloseTo(2.199, 3);
  });
});

type Complex = readonly [number, number];
const add = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const sub = (a: Complex, b: Complex): Complex => [a[0] - b[0], a[1] - b[1]];
const mul = (a: Complex, b: Complex): Complex => [
  a[0] * b[0] - a[1] * b[1],
  a[0] * b[1] + a[1] * b[0],
];
const div = (a: Complex, b: Complex): Complex => {
  const size = b[0] ** 2 + b[1] ** 2;
  return [(a[0] * b[0] + a[1] * b[1]) / size, (a[1] * b[0] - a[0] * b[1]) / size];
};
const tan = ([x, y]: Complex): Complex => {
  const below = Math.cos(2 * x) + Math.cosh(2 * y);
  return [Math.sin(2 * x) / below, Math.sinh(2 * y) / below];
};
const root = ([x, y]: Complex): Complex => {
  const size = Math.hypot(x, y);
  return [Math.sqrt((size + x) / 2), Math.sign(y || 1) * Math.sqrt((size - x) / 2)];
};

/** A zero of `f` near `start`, by the secant method. */
function zeroNear(f: (at: Complex) => Complex, start: Complex): Complex {
  let [before, at]: readonly [Complex, Complex] = [start, [start[0] * 1.001, start[1] + 1e-4]];
  for (let i = 0; i < 60; i++) {
    const slope = sub(f(at), f(before));
    if (Math.hypot(...slope) < 1e-15) break;
    const next = sub(at, mul(f(at), div(sub(at, before), slope)));
    [before, at] = [at, next];
  }
  return at;
}

/**
 * Waves exp(jwt) between two walls a metres apart with the specific admittance b: even ones obey
 * K tan(K a/2) = j k b. The room's wave number k has an imaginary part, and the amplitude falls with
 * d = c Im k.
 */
describe('against the wave equation solved in the complex plane', () => {
  const exactDecayS = (k: Complex): number => (3 * Math.LN10) / (SPEED * Math.abs(k[1]));

  it.each([0.002, 0.01, 0.03])('a mode that meets both absorbing walls, admittance %f', (b) => {
    const a = SIZE.length;
    // Second order along the length is even about the middle.
    const k = zeroNear(
      (K) => sub(mul(K, tan([(K[0] * a) / 2, (K[1] * a) / 2])), mul([0, b], K)),
      [(2 * Math.PI) / a, 0.01],
    );
    const alpha = diffuseCoefficient(b);
    const found = decayS([0, 2, 0], { faces: faces([0, alpha, 0]) });
    expect(Math.abs(found / exactDecayS(k) - 1)).toBeLessThan(0.002 + b * b);
  });

  it.each([0.002, 0.01, 0.03])('a mode that grazes both absorbing walls, admittance %f', (b) => {
    const a = SIZE.length;
    const along = (2 * Math.PI) / SIZE.width; // second order along the width
    const ofRoom = (K: Complex): Complex => root(add([along ** 2, 0], mul(K, K)));
    const K = zeroNear(
      (at) => sub(mul(at, tan([(at[0] * a) / 2, (at[1] * a) / 2])), mul([0, b], ofRoom(at))),
      root([0, (2 * along * b) / a]),
    );
    const alpha = diffuseCoefficient(b);
    const found = decayS([2, 0, 0], { faces: faces([0, alpha, 0]) });
    expect(Math.abs(found / exactDecayS(ofRoom(K)) - 1)).toBeLessThan(0.002 + 2 * b);
  });

  it('finds the exact logarithm for two ends that reflect (1 - b)/(1 + b)', () => {
    // One dimension has a closed solution: d = (c/L) ln((1 + b)/(1 - b)).
    const b = 0.02;
    const exactS = (3 * Math.LN10) / ((SPEED / SIZE.length) * Math.log((1 + b) / (1 - b)));
    const alpha = diffuseCoefficient(b);
    expect(decayS([0, 1, 0], { faces: faces([0, alpha, 0]) }) / exactS).toBeCloseTo(1, 3);
  });
});

describe('a coefficient between octaves', () => {
  const spectrum = [
    [125, 0.3],
    [250, 0.1],
  ] as const;

  it('lies on a straight line over the logarithm of frequency', () => {
    expect(given(spectrumAt(spectrum, Math.sqrt(125 * 250))).value).toBeCloseTo(0.2, 12);
    expect(spectrumAt(spectrum, 125)).toEqual({ value: 0.3, held: false });
    expect(spectrumAt(spectrum, 250)).toEqual({ value: 0.1, held: false });
  });

  it('is held below the lowest and above the highest octave, and says so', () => {
    expect(spectrumAt(spectrum, 40)).toEqual({ value: 0.3, held: true });
    expect(spectrumAt(spectrum, 900)).toEqual({ value: 0.1, held: true });
    expect(spectrumAt([], 40)).toBeNull();
  });
});

describe('the modes of a room', () => {
  it.each(EXAMPLES)('of %s each have a finite decay up to the Schroeder frequency', (name) => {
    const { decay, modes } = analyze(example(name));
    const limit = Math.min(200, given(modes.schroederHz));
    expect(notFinite(decay.modal)).toEqual([]);
    expect(decay.modal.map((mode) => mode.order)).toEqual(
      modes.shell.filter((mode) => mode.frequencyHz <= limit).map((mode) => mode.order),
    );
    // No source in the examples gives 63 Hz, so what lies under 125 Hz rests on the 125 Hz octave.
    for (const mode of decay.modal) expect(mode.extrapolated).toBe(mode.frequencyHz < 125.89);
  });

  it('have none where a finish has no figure at all', () => {
    const own = { id: 'own', name: 'Own', absorption: {}, source: 's' };
    const project = roomOf({ finishes: { back: 'own' } }, { finishesCustom: [own] });
    expect(analyze(project).decay.modal).toEqual([]);
  });

  it('are given to 200 Hz where the Schroeder frequency is unknown', () => {
    const own = { id: 'own', name: 'Own', absorption: { '125': 0.2 }, source: 's' };
    const { decay, modes } = analyze(
      roomOf({ finishes: { back: 'own' } }, { finishesCustom: [own] }),
    );
    expect(modes.schroederHz).toBeNull();
    expect(decay.modal).toHaveLength(modes.shell.length);
  });
});
