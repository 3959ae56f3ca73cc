import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { obstacleOf } from '../../../../core/bass/obstacles';
import { subwooferPlaces } from '../../../../core/bass/places';
import type { PlacedSpeaker, Point, Project } from '../../../../core/room/project';
import { bodiesOf, openingsOf } from '../../../../core/scene/bodies';
import { boxAround } from '../../../../core/scene/box';
import { clearPlace } from '../../../../core/scene/clear-place';
import { clashes, isClear, type Visitor } from '../../../../core/scene/clashes';
import { boxOfSize } from '../../../../core/scene/subwoofer-box';
import { speakerBox } from '../../../../core/speakers/box';
import { claimOf, clashesOf, speakerBodies } from '../../../../core/speakers/obstacles';
import { arbitraryProject, cm } from '../../support/arbitrary-project';
import { only, roomOf, type Fields } from '../../support/rooms';

const BOX: Point = [0.4, 0.4, 0.4];
const EMPTY = { seating: { rows: [] }, screen: { widthM: 1, bottomM: 1.5 } };
const DOOR = { id: 'door-1', face: 'left', rect: [1, 0, 1.8, 2], finish: 'door-solid' };

const stand = (position: Point): Fields => ({ channel: 'M+030', position, mount: 'stand' });
const roomWith = (patches: readonly unknown[], placed: readonly Fields[], rest = {}): Project =>
  roomOf({ patches }, { ...EMPTY, speakers: { layout: '0+5+0', placed }, ...rest });

/** What the stand at this place runs into. */
function standClashes(project: Project, position: Point): readonly string[] {
  const speaker = stand(position) as unknown as PlacedSpeaker;
  return clashesOf(speakerBox(project, speaker), project, bodiesOf(project), []).map(
    ({ kind, what }) => `${kind} ${what}`,
  );
}

const visitor = (box: Visitor['box'], isOnFloor = true): Visitor => ({
  box,
  isOnFloor,
  isFlush: false,
  isBehindPicture: false,
});

describe('the floor before a door', () => {
  // Hinges at the nearer end of the wall, 1 m: the leaf of 0.8 m sweeps from there.
  const project = roomWith([DOOR], []);

  it('is a quarter circle for subwoofers as for loudspeakers', () => {
    // In the middle of the swing; and in the corner of its square that the leaf never comes to.
    const [inside, corner]: Point[] = [
      [0.4, 1.4, 0.2],
      [0.79, 1.79, 0.2],
    ];
    expect(obstacleOf(project, inside ?? [0, 0, 0], BOX)).toEqual({ kind: 'door', id: 'door-1' });
    expect(obstacleOf(project, corner ?? [0, 0, 0], BOX)).toBeNull();
    expect(standClashes(project, [0.4, 1.4, 1.1])).toContain('swing door-1');
    expect(standClashes(project, [0.8, 1.8, 1.1])).toEqual([]);
  });

  it('has to be clear for what stands, and not for what hangs, where no leaf swings in', () => {
    const passage = { ...DOOR, id: 'passage-1' };
    for (const patch of [passage, { ...DOOR, swing: 'out' }, { ...DOOR, swing: 'slides' }]) {
      const other = roomWith([patch], []);
      expect(obstacleOf(other, [0.5, 1.4, 0.2], BOX)).toEqual({ kind: 'door', id: patch.id });
      expect(standClashes(other, [0.45, 1.4, 1.1])).toEqual([`way ${patch.id}`]);
      const hung = visitor(boxAround([0.4, 1.4, 1.5], [0.3, 0.3, 0.3]), false);
      expect(isClear(hung, openingsOf(other))).toBe(true);
    }
  });

  it('is met by a box exactly where the box comes into the quarter circle', () => {
    const door = only(openingsOf(project));
    const place = fc.tuple(cm(5, 130), cm(70, 220));
    fc.assert(
      fc.property(place, fc.tuple(cm(5, 60), cm(5, 60)), ([x, y], [w, d]) => {
        const box = boxAround([x, y, 0.5], [w, d, 0.4]);
        const met = [...clashes(visitor(box), [door])].some(({ kind }) => kind === 'swing');
        // Sampled: is a point of the box within the leaf's reach of the hinge at (0, 1)?
        let nearest = Infinity;
        for (let i = 0; i <= 60; i++)
          for (let j = 0; j <= 60; j++) {
            const [px, py] = [box.min[0] + (i / 60) * w, box.min[1] + (j / 60) * d];
            if (px >= 0 && py >= 1) nearest = Math.min(nearest, Math.hypot(px, py - 1));
          }
        if (nearest < 0.78) expect(met).toBe(true);
        if (nearest > 0.815) expect(met).toBe(false);
      }),
    );
  });
});

describe('what stands on the floor', () => {
  const rows = { rows: [{ id: 'a', seats: 2, y: 2.5, pitchM: 1 }] };
  const project = roomWith([], [], { seating: rows });

  it('keeps off seats and the way past a row, be it a subwoofer or a stand', () => {
    expect(obstacleOf(project, [1.5, 2, 0.2], BOX)).toEqual({ kind: 'seat', row: 'a', seat: 1 });
    expect(standClashes(project, [1.5, 2, 0.6])).toEqual(['seat a 1']);
    expect(obstacleOf(project, [0.5, 2.5, 0.2], BOX)).toEqual({ kind: 'walkway', row: 'a' });
    expect(standClashes(project, [0.5, 2.5, 0.6])).toEqual(['aisle a']);
    const told = analyze(roomWith([], [stand([0.5, 2.5, 0.6])], { seating: rows })).findings.filter(
      ({ id }) => id === 'speaker-aisle:M+030',
    );
    expect(only(told)).toMatchObject({
      severity: 'warning',
      figureName: 'free width',
      limit: 0.6,
      source: 'common practice',
    });
    expect(only(told).message).toMatch(/leaves 0\.\d+ m to walk past row "a"; one person needs/);
  });

  it('is no concern of what hangs there', () => {
    const hung = visitor(boxAround([1.5, 2, 2], [0.3, 0.3, 0.3]), false);
    expect(isClear(hung, bodiesOf(project))).toBe(true);
  });
});

describe('a subwoofer and a loudspeaker', () => {
  it('refuse each other', () => {
    const project = roomWith([], [stand([0.5, 0.4, 1.1])]);
    const why = { kind: 'speaker', channel: 'M+030' };
    expect(obstacleOf(project, [0.5, 0.4, 0.2], BOX)).toEqual(why);
    const { allowed, forbidden } = subwooferPlaces(project, { stepM: 0.3 });
    expect(forbidden.map((place) => place.why)).toContainEqual(why);
    const claims = speakerBodies(project);
    for (const place of allowed)
      expect(isClear(visitor(boxOfSize(project, place, BOX)), claims)).toBe(true);
    const taken: Project = {
      ...project,
      speakers: { ...project.speakers, subwoofers: [{ id: 's', position: [0.5, 0.4, 0.2] }] },
    };
    expect(standClashes(taken, [0.5, 0.4, 1.1])).toEqual(['subwoofer s']);
  });

  it('refuse each other where the loudspeaker is only to come, and the subwoofer says so', () => {
    const position: Point = [0.5, 2, 1.1];
    const placed = [{ channel: 'M+090', position, mount: 'stand' }];
    const speakers = { layout: '0+5+0', later: '0+7+0', placed };
    // Of 7.1, M+135 is what 5.1 has not.
    const later = { ...speakers, placed: [{ ...placed[0], channel: 'M+135' }] };
    const project = roomWith([], [], { speakers: later });
    expect(obstacleOf(project, [0.5, 2, 0.2], BOX)).toEqual({ kind: 'planned', channel: 'M+135' });
    const none = roomWith([], [], { speakers: { ...later, later: undefined } });
    expect(obstacleOf(none, [0.5, 2, 0.2], BOX)).toBeNull();
    const subwoofers = [{ id: 's', position: [0.5, 2, 0.2] }];
    const { findings } = analyze(roomWith([], [], { speakers: { ...later, subwoofers } }));
    const finding = only(findings.filter(({ id }) => id === 'subwoofer-planned:s'));
    expect(finding.message).toMatch(/runs into the loudspeaker M\+135, which is to come/);
  });

  it('clash alike from either side, in any room', () => {
    fc.assert(
      fc.property(
        arbitraryProject,
        fc.tuple(cm(0, 500), cm(0, 500), cm(20, 100)),
        (project, at) => {
          const bodies = speakerBodies(project);
          const box = boxOfSize(project, at, BOX);
          for (const body of bodies) {
            const there = isClear(visitor(box), [body]);
            const subwoofer = { kind: 'subwoofer', id: 's', box } as const;
            expect(isClear(visitor(body.box), [subwoofer])).toBe(there);
          }
          for (const { kind, body } of clashes(visitor(box), bodiesOf(project))) {
            if (kind !== 'solid' && kind !== 'subwoofer') continue;
            const turned = [...clashes(visitor(body.box), [{ kind: 'subwoofer', id: 's', box }])];
            expect(turned).toHaveLength(1);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('the nearest clear place', () => {
  it('is the least way among those that are clear, and leaves no clash', () => {
    const candidates = [3, 1, 2, 0.5].map((wayM) => ({ place: [wayM, 0, 0] as const, wayM }));
    expect(clearPlace(candidates, ([x]) => x > 0.7)).toEqual([1, 0, 0]);
    expect(clearPlace(candidates, () => false)).toBeNull();
  });

  it('is what a baffle flush with its wall claims: the leaf passes before it', () => {
    const project = roomWith([DOOR], []);
    const speaker = { channel: 'M+030', position: [0, 1.4, 1.1], mount: 'in-wall' } as const;
    const box = speakerBox(project, speaker);
    expect(claimOf(box).max[0]).toBeLessThan(0.05);
    const kinds = clashesOf(box, project, bodiesOf(project), []).map(({ kind }) => kind);
    expect(kinds).toEqual(['door']);
  });
});
