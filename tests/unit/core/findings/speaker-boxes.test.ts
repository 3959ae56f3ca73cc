import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import type { Project } from '../../../../core/room/project';
import { arbitraryProject } from '../../support/arbitrary-project';
import { notFinite, roomOf, type Fields } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

/** A 4 x 5 x 3 m room with ears at 2, 3, 1.1 and a picture of 2.4 x 1.35 m from 0.7 m up. */
const room = (placed: readonly Fields[], shell: Fields = {}, rest: Fields = {}): Project =>
  roomOf(shell, {
    seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
    ...rest,
    speakers: { placed, ...(rest['speakers'] as Fields | undefined) },
  });

const boxIds = (project: Project): readonly string[] =>
  findingIds(project).filter((id) => /^speaker-(?!range|outside)/.test(id));

/** Every change that the finding can make takes it away and brings no other of its family. */
function expectMended(project: Project, id: string): void {
  const trials = tried(project, findingOf(project, id));
  expect(trials.length).toBeGreaterThan(0);
  for (const trial of trials) expect(boxIds(trial.project)).toEqual([]);
}

const stated: Fields = { boxM: [0.3, 0.5, 0.3] };
const column = { id: 'column', kind: 'column', min: [1.1, 0, 0], max: [1.4, 0.3, 3] };

describe('a loudspeaker whose box is in the way', () => {
  it.each<[string, string, Fields, Fields, Fields, number]>([
    [
      'of a fitting',
      'solid',
      { channel: 'M+030', position: [0.98, 1, 1.1], mount: 'stand', ...stated },
      { solids: [{ ...column, min: [1.1, 0.5, 0], max: [1.4, 0.8, 3] }] },
      {},
      0.03,
    ],
    [
      'of a door',
      'door',
      { channel: 'M-110', position: [2.2, 4.88, 1.1], boxM: [0.3, 0.5, 0.12] },
      {
        patches: [{ id: 'door-1', face: 'back', rect: [2.3, 0, 3.11, 2.03], finish: 'door-solid' }],
      },
      {},
      0.05,
    ],
    [
      'of a window',
      'window',
      { channel: 'M-110', position: [3.88, 3.6, 1.3], boxM: [0.3, 0.5, 0.12] },
      {
        patches: [
          { id: 'window-1', face: 'right', rect: [3.7, 1.2, 4.6, 1.8], finish: 'glass-window' },
        ],
      },
      {},
      0.05,
    ],
    [
      'of the picture',
      'screen',
      { channel: 'M+000', position: [2, 0.12, 1.1], mount: 'on-wall', boxM: [0.3, 0.5, 0.12] },
      {},
      {},
      0.05,
    ],
    [
      'of a subwoofer',
      'subwoofer',
      { channel: 'M+030', position: [0.9, 1, 1.1], mount: 'stand', ...stated },
      {},
      { speakers: { subwoofers: [{ id: 'sub-1', position: [0.9, 0.7, 0.2] }] } },
      0.2,
    ],
  ])('%s is told how deep, and mended', (_, kind, speaker, shell, rest, depth) => {
    const project = room([speaker], shell, rest);
    const id = `speaker-${kind}:${String(speaker['channel'])}`;
    const finding = findingOf(project, id);
    expect(finding).toMatchObject({ severity: 'fault', unit: 'm', limit: 0, source: 'geometry' });
    expect(finding.value).toBeCloseTo(depth, 6);
    expect(finding.message).not.toContain('not stated');
    expectMended(project, id);
  });

  it('of another one in the same spot is told once, and mended', () => {
    const project = room([
      { channel: 'M+110', position: [0.12, 3.7, 1.1] },
      { channel: 'M+030', position: [0.12, 3.7, 1.1] },
    ]);
    expect(boxIds(project).filter((id) => id.startsWith('speaker-speaker'))).toEqual([
      'speaker-speaker:M+030',
    ]);
    const finding = findingOf(project, 'speaker-speaker:M+030');
    expect(finding.message).toContain('M+110');
    expect(finding.message).toContain('not stated');
    expectMended(project, 'speaker-speaker:M+030');
  });

  it('of nothing because it is in the wall, behind the screen or flush in the ceiling is no finding', () => {
    const project = room([
      { channel: 'M+000', position: [2, 0, 1.1], mount: 'behind-screen' },
      { channel: 'M+110', position: [0, 3.7, 1.1], mount: 'in-wall' },
      { channel: 'U+030', position: [1, 1, 3], mount: 'ceiling' },
    ]);
    const through: Project = {
      ...project,
      screen: { ...project.screen, soundThrough: true },
      speakers: { ...project.speakers, layout: '4+5+0' },
    };
    expect(boxIds(through)).toEqual([]);
  });
});

describe('a door that opens into the room', () => {
  const door = { id: 'door-1', face: 'right', rect: [4.1, 0, 4.91, 2.03], finish: 'door-solid' };

  it('sweeps a quarter circle about the hinge by the nearer corner', () => {
    // Hinge at 4, 4.91; the leaf of 0.81 m reaches a stand 0.5 m away, not one 0.9 m away.
    const near = { channel: 'M-110', position: [3.5, 4.4, 1.1], mount: 'stand' };
    const project = room([near], { patches: [door] });
    const finding = findingOf(project, 'speaker-swing:M-110');
    expect(finding.caution).toBeDefined();
    // The box faces the seat along the width, so that its nearest corner is at 3.7, 4.5.
    expect(finding.value).toBeCloseTo(0.81 - Math.hypot(0.3, 0.41), 6);
    expectMended(project, 'speaker-swing:M-110');
    const flush = { channel: 'M-110', position: [3.5, 5, 1.1], mount: 'in-wall' };
    expect(boxIds(room([flush], { patches: [door] }))).toEqual([]);
    const far = { ...near, position: [3.0, 4.2, 1.1] };
    expect(boxIds(room([far], { patches: [door] }))).not.toContain('speaker-swing:M-110');
  });
});

describe('a loudspeaker near people', () => {
  it('by a head is a warning with a caution', () => {
    const seats = {
      seating: { rows: [{ id: 'a', seats: 3, y: 3, earHeightM: 1.1, pitchM: 1.6 }] },
    };
    const project = room([{ channel: 'M+110', position: [0.12, 3.1, 1.1] }], {}, seats);
    const finding = findingOf(project, 'speaker-head:M+110');
    expect(finding).toMatchObject({ severity: 'warning', limit: 0.3, source: 'common practice' });
    // Ears at 0.4 m from the wall, the box 0.12 m deep and beside them.
    expect(finding.value).toBeCloseTo(0.28, 6);
    expect(finding.caution).toContain('fixing');
    expectMended(project, 'speaker-head:M+110');
  });

  it('over their way hangs no lower than 2 m', () => {
    const hung = {
      channel: 'M+110',
      position: [1, 3.5, 1.95],
      mount: 'ceiling',
      boxM: [0.2, 0.2, 0.2],
    };
    const low = { size: { width: 4, length: 5, height: 2.15 } };
    const project = room([hung], low);
    const finding = findingOf(project, 'speaker-walkway:M+110');
    expect(finding).toMatchObject({ severity: 'warning', limit: 2, value: 1.95 });
    expect(finding.caution).toBeDefined();
    expectMended(project, 'speaker-walkway:M+110');
    const flush = { ...hung, position: [1, 3.5, 2.15] };
    expect(boxIds(room([flush], low))).not.toContain('speaker-walkway:M+110');
  });
});

describe('a loudspeaker that cannot be held as it is said to be', () => {
  it.each<[string, Fields, string]>([
    [
      'in a wall from which it stands off',
      { position: [0.12, 3.7, 1.1], mount: 'in-wall' },
      'off-surface',
    ],
    ['on a wall that is far', { position: [1, 3.7, 1.1], mount: 'on-wall' }, 'off-surface'],
    [
      'on a wall, deeper than its baffle is off',
      { position: [0.1, 3.7, 1.1], mount: 'on-wall', boxM: [0.2, 0.3, 0.25] },
      'sunk',
    ],
    [
      'with an aim at a seat that is gone',
      { position: [0.12, 3.7, 1.1], aim: { seat: { row: 'z', seat: 9 } } },
      'aim',
    ],
  ])('(%s) is told, and mended', (_, fields, kind) => {
    const project = room([{ channel: 'M+110', ...fields }]);
    expectMended(project, `speaker-${kind}:M+110`);
  });
});

describe('a room that has lost what it refers to', () => {
  const project = room([{ channel: 'M+110', position: [0.12, 3.7, 1.1] }]);

  it('judges at the middle seat, and says so', () => {
    const lost = {
      ...project,
      seating: { ...project.seating, reference: { row: 'gone', seat: 7 } },
    };
    const finding = findingOf(lost, 'reference-gone');
    for (const trial of tried(lost, finding)) {
      expect(findingIds(trial.project)).not.toContain('reference-gone');
    }
  });

  it('and any other is analysed all the same', () => {
    const lost = fc.tuple(arbitraryProject, fc.constantFrom('none', 'gone', 'twice', 'outside'));
    fc.assert(
      fc.property(lost, ([any, how]) => {
        const { seating, speakers } = any;
        const [first] = speakers.placed;
        const changed: Project = {
          none: { ...any, seating: { ...seating, rows: [] } },
          gone: { ...any, seating: { ...seating, reference: { row: 'gone', seat: 9 } } },
          twice: {
            ...any,
            speakers: { ...speakers, placed: first ? [...speakers.placed, first] : [] },
          },
          outside: {
            ...any,
            seating: { ...seating, rows: seating.rows.map((row) => ({ ...row, y: -3, x: 40 })) },
          },
        }[how];
        expect(notFinite(analyze(changed).findings)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
