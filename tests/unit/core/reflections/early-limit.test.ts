import { describe, expect, it } from 'vitest';
import {
  earlyReflections,
  excessDb,
  facesOverLimit,
  isJudged,
} from '../../../../core/reflections/early-limit';
import { panelFor } from '../../../../core/reflections/panel';
import { applyEdit } from '../../../../core/room/edits';
import { MOST_PATCHES } from '../../../../core/room/limits';
import type { Patch, Project } from '../../../../core/room/project';
import { given, roomOf, type Fields } from '../../support/rooms';
import { SPEED_MS } from './support';

/** One loudspeaker and one seat 2 m apart in a 4 x 5 x 3 m room. */
const bare = (room: Fields = {}, rest: Fields = {}): Project =>
  roomOf(room, {
    speakers: { layout: '0+5+0', placed: [{ channel: 'M+000', position: [2, 1, 1.2] }] },
    seating: { rows: [{ id: 'row-1', seats: 1, y: 3, earHeightM: 1.2, eyeHeightM: 1.3 }] },
    ...rest,
  });

const at = (project: Project, face: string) =>
  given(earlyReflections(project, SPEED_MS).find(({ hit }) => hit.face === face));

describe('early reflections', () => {
  it('are told by their loudest octave from 1 kHz up', () => {
    const left = at(bare(), 'left');
    // Gypsum board on studs: 0.04 at 1 kHz, 0.07 at 2 kHz, 0.09 at 4 kHz.
    const lengthM = Math.hypot(4, 2);
    expect(left).toMatchObject({ channel: 'M+000', octaveHz: 1000 });
    expect(left.seat).toMatchObject({ row: 'row-1', seat: 1 });
    expect(left.levelDb).toBeCloseTo(20 * Math.log10(2 / lengthM) + 10 * Math.log10(0.96), 9);
    expect(left.path.delayMs).toBeCloseTo(((lengthM - 2) / SPEED_MS) * 1000, 9);
  });

  it('leave out what leaves the back of the loudspeaker', () => {
    const faces = earlyReflections(bare(), SPEED_MS).map(({ hit }) => hit.face);
    expect(faces).not.toContain('front');
    expect([...faces].sort()).toEqual(['back', 'ceiling', 'floor', 'left', 'right']);
  });

  it('are none where a fitting hides the loudspeaker, or nobody sits in the room', () => {
    const post = { id: 'post', kind: 'column', finish: 'gyp13-stud' };
    const solids = [{ ...post, min: [1.9, 1.9, 0], max: [2.1, 2.1, 3] }];
    expect(earlyReflections(bare({ solids }), SPEED_MS)).toEqual([]);
    const outside = [{ id: 'row-1', seats: 1, y: 9, earHeightM: 1.2, eyeHeightM: 1.3 }];
    expect(earlyReflections(bare({}, { seating: { rows: outside } }), SPEED_MS)).toEqual([]);
  });

  it('are not judged where a finish has no figure in any of the octaves', () => {
    const own = { id: 'own', name: 'Own', absorption: { '500': 0.1 }, source: 'measured' };
    const finishes = { left: 'own' };
    const faces = earlyReflections(bare({ finishes }, { finishesCustom: [own] }), SPEED_MS);
    expect(faces.map(({ hit }) => hit.face)).not.toContain('left');
  });
});

describe('the limit', () => {
  it('holds 10 dB below and within 15 ms', () => {
    expect(excessDb(-9.9)).toBeCloseTo(0.1, 9);
    expect(excessDb(-10)).toBe(0);
    expect(isJudged({ delayMs: 14, departureDeg: 30 })).toBe(true);
    expect(isJudged({ delayMs: 15.1, departureDeg: 30 })).toBe(false);
    expect(isJudged({ delayMs: 0, departureDeg: 30 })).toBe(false);
    expect(isJudged({ delayMs: 5, departureDeg: 91 })).toBe(false);
  });

  it('faces over it come loudest first, with all their reflections over it', () => {
    const faces = facesOverLimit(earlyReflections(bare(), SPEED_MS));
    const levels = faces.map(({ worst }) => worst.levelDb);
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
    expect(faces[0]).toMatchObject({ face: 'floor', count: 1 });
  });
});

describe('a panel', () => {
  const LIVE_TO_SOFT = ['gyp13-stud', 'gf-50-rigid', 'gf-100-rigid'];
  const soft = (project: Project, face = 'left') =>
    panelFor(project, at(project, face), LIVE_TO_SOFT);

  it('is centred on the point, of the first finish that keeps the limit', () => {
    const panel = given(soft(bare()));
    expect(panel.patch).toEqual({
      ...{ id: 'panel-1', kind: 'panel', face: 'left', finish: 'gf-50-rigid' },
      rect: [1.7, 0.6, 2.3, 1.8],
    });
    expect(panel.isEnough).toBe(true);
    const [patches, what] = [[panel.patch], 'panel'];
    const changed = applyEdit(bare(), { kind: 'patches', patches, what });
    expect(at(changed, 'left')).toMatchObject({ levelDb: panel.levelDb });
    expect(at(changed, 'left').hit.patch).toBe('panel-1');
  });

  it('gives way to another patch but keeps the point, or is none', () => {
    const beside = (rect: readonly number[]): Patch =>
      ({ id: 'door', face: 'left', rect, finish: 'door-solid' }) as unknown as Patch;
    const near = given(soft(bare({ patches: [beside([2.1, 0, 2.9, 2])] })));
    expect(near.patch.rect).toEqual([1.5, 0.6, 2.1, 1.8]);
    expect(soft(bare({ patches: [beside([1.5, 0, 2.5, 2])] }))).toBeNull();
  });

  it('keeps off the picture', () => {
    const placed = [{ channel: 'M+110', position: [1, 3.9, 1.2] }];
    const project = bare({}, { speakers: { layout: '0+5+0', placed } });
    const [front] = earlyReflections(project, SPEED_MS, {
      ...{ levelDb: -10, leastMs: 0.1, withinMs: 30 },
      widestDeg: 180,
    }).filter(({ hit }) => hit.face === 'front');
    expect(panelFor(project, given(front), LIVE_TO_SOFT)).toBeNull();
  });

  it('is none where no finish takes a decibel off', () => {
    expect(panelFor(bare(), at(bare(), 'left'), ['gyp13-stud'])).toBeNull();
    expect(panelFor(bare(), at(bare(), 'left'), ['unknown'])).toBeNull();
  });

  it('is none where a room file could hold no more patches', () => {
    const patches = Array.from({ length: MOST_PATCHES }, (_, i) => ({
      ...{ id: `p${i}`, face: 'back', finish: 'gyp13-stud' },
      rect: [i * 0.05, 0, i * 0.05 + 0.04, 0.1],
    }));
    expect(soft(bare({ patches }))).toBeNull();
    expect(soft(bare({ patches: patches.slice(1) }))).not.toBeNull();
  });
});
