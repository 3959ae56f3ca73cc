import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boundaryCurve,
  DEEPEST_DB,
  faceNotches,
  notchDepthDb,
  quarterWaveHz,
  type BoundaryInput,
} from '../../../../core/reflections/boundary';
import { distanceM, reflectingRoom } from '../../../../core/reflections/image-sources';
import {
  distanceForNotch,
  notchAdvice,
  notchRemedy,
} from '../../../../core/reflections/notch-remedy';
import { finishLookup } from '../../../../core/room/finishes';
import type { Point, Project } from '../../../../core/room/project';
import { given, notFinite, roomOf, type Fields } from '../../support/rooms';
import { box, scene, SPEED_MS } from './support';

/** A finish that returns everything, and one that returns half the energy at 125 Hz and less above. */
const OWN = [
  { id: 'hard', name: 'Hard', absorption: { '125': 0, '250': 0, '500': 0 }, source: 'invented' },
  { id: 'half', name: 'Half', absorption: { '125': 0.5, '250': 0.75 }, source: 'invented' },
  { id: 'blank', name: 'Blank', absorption: { '4000': 0.5 }, source: 'invented' },
];
const SIDES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'];

const clad = (finish: string, room: Fields = {}): Project => {
  const finishes = Object.fromEntries(SIDES.map((side) => [side, finish]));
  return roomOf(
    { size: { width: 6, length: 8, height: 4 }, finishes, ...room },
    { finishesCustom: OWN },
  );
};

const SOURCE: Point = [3, 1, 1.2];
const SEAT: Point = [3, 5, 1.2];

const inputOf = (project: Project, source = SOURCE, receiver = SEAT): BoundaryInput => ({
  reflecting: reflectingRoom(project.room),
  ...{ source, receiver, speedMS: SPEED_MS },
  finish: finishLookup(project),
});

const notchOf = (project: Project, face: string, source = SOURCE) =>
  given(given(faceNotches(inputOf(project, source))).find(({ hit }) => hit.face === face));

describe('the notch of a face', () => {
  it('lies where the paths part by half a wave, as deep as the reflection is loud', () => {
    const notch = notchOf(clad('hard'), 'front');
    expect(notch).toMatchObject({ fromFaceM: 1, differenceM: 2 });
    expect(notch.notchHz).toBeCloseTo(85.75, 9);
    expect(notch.ratio).toBeCloseTo(4 / 6, 12);
    expect(notch.depthDb).toBeCloseTo(20 * Math.log10(1 / 3), 9);
  });

  it('is shallower before a face that absorbs, by the figures of its octaves', () => {
    // Below 125 Hz the figure of 125 Hz holds.
    expect(notchOf(clad('half'), 'front').ratio).toBeCloseTo((4 / 6) * Math.SQRT1_2, 12);
    // 343 / (4 x 0.343) = 250 Hz: a quarter of the energy comes back.
    const near = notchOf(clad('half'), 'front', [3, 0.343, 1.2]);
    expect(near.notchHz).toBeCloseTo(250, 9);
    expect(near.ratio).toBeCloseTo(((5 - 0.343) / (5 + 0.343)) * 0.5, 9);
    expect(notchOf(clad('blank'), 'front').ratio).toBeCloseTo(4 / 6, 12);
  });

  it('is none for a source set into the face', () => {
    expect(notchOf(clad('hard'), 'front', [3, 0, 1.2])).toMatchObject({
      notchHz: null,
      depthDb: DEEPEST_DB,
    });
    expect(notchDepthDb(1)).toBe(DEEPEST_DB);
  });

  it('nearest path first; none from outside', () => {
    const notches = given(faceNotches(inputOf(clad('hard'))));
    const differences = notches.map(({ differenceM }) => differenceM);
    expect(differences).toEqual([...differences].sort((a, b) => a - b));
    expect(faceNotches(inputOf(clad('hard'), [-1, 1, 1]))).toBeNull();
    expect(boundaryCurve(inputOf(clad('hard'), [-1, 1, 1]))).toBeNull();
  });
});

describe('the combined curve', () => {
  it('goes from 20 to 500 Hz, and knows the near face along each axis', () => {
    const curve = given(boundaryCurve(inputOf(clad('hard'), [2, 1, 1.2])));
    expect(curve.faces.map(({ face }) => face)).toEqual(['left', 'front', 'floor']);
    expect(curve.frequenciesHz[0]).toBe(20);
    expect(curve.frequenciesHz.at(-1)).toBeLessThanOrEqual(500);
    expect(curve.frequenciesHz.at(-1)).toBeGreaterThan(480);
    expect(curve.levelsDb).toHaveLength(curve.frequenciesHz.length);
  });

  it('takes both side walls of a source halfway between them, and is the same from either side', () => {
    const middle = given(boundaryCurve(inputOf(clad('hard'), [3, 1, 1.2])));
    expect(middle.faces.map(({ face }) => face)).toEqual(['left', 'right', 'front', 'floor']);
    const nearly = given(boundaryCurve(inputOf(clad('hard'), [2.99, 1, 1.2])));
    middle.levelsDb.forEach((level, i) => {
      if ((middle.frequenciesHz[i] ?? 0) < 100)
        expect(Math.abs(level - (nearly.levelsDb[i] ?? NaN))).toBeLessThan(0.2);
    });
  });

  it('of a source in a hard corner, far from the seat: 8 sources in phase at low frequencies', () => {
    const corner = inputOf(clad('hard'), [0, 0, 0]);
    const low = { fromHz: 20, toHz: 20 } as const;
    const level = (order: 1 | 2 | 3) => given(boundaryCurve(corner, { ...low, order })).levelsDb[0];
    expect(level(1)).toBeCloseTo(20 * Math.log10(4), 9);
    expect(level(2)).toBeCloseTo(20 * Math.log10(7), 9);
    expect(level(3)).toBeCloseTo(20 * Math.log10(8), 9);
  });

  it('is the complex sum of eight sources, added up one by one', () => {
    const source: Point = [0.9, 1.1, 0.7];
    const receiver: Point = [2.2, 4.5, 1.3];
    const curve = given(boundaryCurve(inputOf(clad('half'), source, receiver), { order: 3 }));
    const direct = distanceM(source, receiver);
    curve.frequenciesHz.forEach((hz, i) => {
      if (hz > 125) return;
      let [real, imaginary] = [0, 0];
      for (const x of [-1, 1])
        for (const y of [-1, 1])
          for (const z of [-1, 1]) {
            const away = distanceM([x * source[0], y * source[1], z * source[2]], receiver);
            const faces = (3 - x - y - z) / 2;
            const pressure = (direct / away) * Math.SQRT1_2 ** faces;
            real += pressure * Math.cos((2 * Math.PI * hz * away) / SPEED_MS);
            imaginary += pressure * Math.sin((2 * Math.PI * hz * away) / SPEED_MS);
          }
      expect(curve.levelsDb[i]).toBeCloseTo(20 * Math.log10(Math.hypot(real, imaginary)), 9);
    });
  });

  it('sees a riser in place of the floor, and no wall that a closet hides', () => {
    const solids = [
      box('riser', [0, 2, 0], [6, 8, 0.3], 'riser'),
      box('closet', [0, 0, 0], [1, 8, 4], 'closet'),
    ];
    const faces = given(boundaryCurve(inputOf(clad('hard', { solids }), [2, 3, 1.2]))).faces;
    expect(faces.map(({ face }) => face)).toEqual(['closet:right', 'front', 'riser:ceiling']);
  });

  it('is finite in any room', () => {
    fc.assert(
      fc.property(scene, ({ room, source, receiver }) => {
        const input = inputOf({ ...clad('half'), room }, source, receiver);
        expect(notFinite([faceNotches(input), boundaryCurve(input, { order: 3 })])).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a remedy by distance', () => {
  const size = { width: 6, length: 8, height: 4 };

  it('far away on axis: closer than a quarter wave of the upper edge, farther than of the lower', () => {
    expect(distanceForNotch(200, 1e6, 0, SPEED_MS)).toBeCloseTo(343 / 800, 9);
    expect(distanceForNotch(40, 1e6, 0, SPEED_MS)).toBeCloseTo(343 / 160, 9);
    expect(quarterWaveHz(343 / 800, SPEED_MS)).toBeCloseTo(200, 9);
  });

  it('is there where the notch lies in the band, and names the shorter way', () => {
    const remedy = given(notchRemedy(notchOf(clad('hard'), 'front'), SOURCE, SEAT, size, SPEED_MS));
    expect(remedy.closerThanM).toBeCloseTo(343 / 800, 9);
    expect(remedy.fartherThanM).toBeCloseTo(343 / 160, 9);
    expect(remedy.nearestM).toBe(remedy.closerThanM);
    expect(remedy.layerM).toBeCloseTo(1, 9);
    const text = notchAdvice(remedy, (lengthM) => `${lengthM.toFixed(2)} m`).join(' ');
    expect(text).toMatch(/^Closer than 0\.43 m .* above 200 Hz\. Farther than 2\.14 m .* 40 Hz\./);
    expect(text).toContain('quarter wave thick, 1.00 m');
    const near: Point = [3, 0.3, 1.2];
    const above = notchOf(clad('hard'), 'front', near);
    expect(notchRemedy(above, near, SEAT, size, SPEED_MS)).toBeNull();
  });

  it('a seat too near the face keeps its notch above: no distance brings it lower', () => {
    expect(distanceForNotch(40, 1.2, 4, SPEED_MS)).toBeNull();
    const floor = notchOf(clad('hard'), 'floor');
    const remedy = given(notchRemedy(floor, SOURCE, SEAT, size, SPEED_MS, [40, 300]));
    expect(remedy.fartherThanM).toBeNull();
    expect(remedy.nearestM).toBe(remedy.closerThanM);
  });

  it('a source moved to that distance has its notch at the edge of the band', () => {
    const cm = (min: number, max: number) =>
      fc.integer({ min, max }).map((centimetres) => centimetres / 100);
    fc.assert(
      fc.property(cm(50, 550), cm(50, 350), cm(200, 700), (x, z, y) => {
        const seat: Point = [x, y, z];
        const source: Point = [3, 1, 1.2];
        const face = given(
          faceNotches(inputOf(clad('hard'), source, seat))?.find(({ hit }) => hit.face === 'front'),
        );
        const remedy = notchRemedy(face, source, seat, size, SPEED_MS);
        if (!remedy) return;
        for (const [distance, hz] of [
          [remedy.closerThanM, 200],
          [remedy.fartherThanM, 40],
        ] as const) {
          if (distance === null || distance > 8) continue;
          const there = faceNotches(inputOf(clad('hard'), [3, distance, 1.2], seat));
          const moved = given(there?.find(({ hit }) => hit.face === 'front'));
          expect(moved.notchHz).toBeCloseTo(hz, 6);
        }
      }),
    );
  });
});
