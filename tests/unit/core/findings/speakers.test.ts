import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { applyEdit } from '../../../../core/room/edits';
import type { Point, Project } from '../../../../core/room/project';
import { example, roomOf, type Fields } from '../../support/rooms';
import { findingIds, findingOf, tried } from '../../support/remedies';

/** A 4 x 5 x 3 m room with ears at 2, 3, 1.1 and a small picture high on the wall, in nobody's way. */
function speakers(placed: readonly Fields[], layout = '0+5+0', room: Fields = {}): Project {
  return roomOf(room, {
    seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
    screen: { widthM: 0.4, bottomM: 2.6 },
    speakers: { layout, placed },
  });
}

const one = (channel: string, position: Point, room: Fields = {}): Project =>
  speakers([{ channel, position }], '0+5+0', room);

const about = (project: Project, channel: string): readonly string[] =>
  findingIds(project).filter((id) => id.endsWith(`:${channel}`));

describe('a loudspeaker in its place', () => {
  it('is no finding', () => {
    expect(about(one('M+000', [2, 0.12, 1.1]), 'M+000')).toEqual([]);
    const inLongRoom = findingIds(example('long-room'));
    expect(inLongRoom.filter((id) => id.startsWith('speaker-'))).toEqual([]);
  });

  it('on the wall itself is not outside', () => {
    expect(about(one('M+000', [2, 0, 1.1]), 'M+000')).toEqual([]);
  });
});

describe('a loudspeaker at the wrong angle', () => {
  it.each([
    ['too far round', 'M+110', [0.12, 4.6, 1.1], 'warning', 120],
    ['not far enough round', 'M-110', [3.88, 3, 1.1], 'warning', -100],
    ['a little off', 'M+000', [2.1, 0.12, 1.1], 'note', 0],
  ] as const)('(%s) is told the nearest angle and put there', (_, channel, at, severity, limit) => {
    const project = one(channel, at);
    const finding = findingOf(project, `speaker-range:${channel}`);
    expect(finding).toMatchObject({ severity, unit: 'deg' });
    expect(finding.limit).toBeCloseTo(limit, 6);
    const trials = tried(project, finding);
    expect(trials).toHaveLength(1);
    for (const trial of trials) {
      expect(trial.analysis.speakers[0]?.inRange).toBe(true);
      expect(about(trial.project, channel)).toEqual([]);
    }
  });

  it('(too high) is told the elevation, and brought down', () => {
    const project = one('M+030', [0.845, 1, 2.2]);
    const finding = findingOf(project, 'speaker-range:M+030');
    expect(finding.message).toContain('elevation');
    expect(finding.limit).toBeCloseTo(0, 9);
    for (const trial of tried(project, finding)) expect(about(trial.project, 'M+030')).toEqual([]);
  });

  it('(both ways) is put right in both by one change', () => {
    const project = one('M-110', [3.5, 1, 2.8]);
    const trials = tried(project, findingOf(project, 'speaker-range:M-110'));
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(about(trial.project, 'M-110')).toEqual([]);
  });
});

describe('a loudspeaker outside the room', () => {
  it('is a fault with the distance, and inside after either change', () => {
    const project = one('M+110', [-0.3, 3.7, 1.1]);
    const finding = findingOf(project, 'speaker-outside:M+110');
    expect(finding).toMatchObject({ severity: 'fault', limit: 0, unit: 'm' });
    expect(finding.value).toBeCloseTo(0.3, 9);
    const trials = tried(project, finding);
    expect(trials).toHaveLength(2);
    for (const trial of trials) {
      expect(findingIds(trial.project)).not.toContain('speaker-outside:M+110');
    }
    expect(trials[0]?.project.speakers.placed[0]?.position).toEqual([0.12, 3.7, 1.1]);
  });
});

describe('a loudspeaker inside a fitting', () => {
  const closet = { id: 'closet', kind: 'closet', min: [0, 0, 0], max: [1, 0.8, 3] };

  it('is a fault that names the fitting', () => {
    const project = one('M+000', [0.5, 0.5, 1.1], { solids: [closet] });
    const finding = findingOf(project, 'speaker-outside:M+000');
    expect(finding.severity).toBe('fault');
    expect(finding.message).toContain('inside the closet "closet"');
    for (const trial of tried(project, finding)) expect(about(trial.project, 'M+000')).toEqual([]);
  });

  it('that stands where the angle meets the wall is only offered places in the open', () => {
    // Left at 30 degrees would hang at 0.34, 0.12 m: inside the closet.
    const project = one('M+030', [0.5, 0.5, 1.1], { solids: [closet] });
    const finding = findingOf(project, 'speaker-outside:M+030');
    for (const trial of tried(project, finding)) {
      expect(findingIds(trial.project)).not.toContain('speaker-outside:M+030');
    }
  });

  it('is not where a loudspeaker outside the room is brought back to', () => {
    const project = one('M+030', [0.5, -0.4, 1.1], { solids: [closet] });
    const finding = findingOf(project, 'speaker-outside:M+030');
    for (const trial of tried(project, finding)) {
      expect(findingIds(trial.project)).not.toContain('speaker-outside:M+030');
    }
  });

  it('is not where one at a wrong angle is moved to', () => {
    const project = one('M+030', [1.5, 0.9, 1.1], { solids: [closet] });
    const finding = findingOf(project, 'speaker-range:M+030');
    for (const trial of tried(project, finding)) expect(about(trial.project, 'M+030')).toEqual([]);
  });
});

describe('missing loudspeakers', () => {
  it.each(['0+5+0', '0+7+0', '4+5+0', '4+7+0'])(
    'of %s are put at their angles, and then none is missing',
    (layout) => {
      const project = speakers([{ channel: 'M+000', position: [2, 0.12, 1.1] }], layout);
      const finding = findingOf(project, 'speakers-missing');
      expect(finding).toMatchObject({ severity: 'warning', value: 1 });
      const trials = tried(project, finding);
      expect(trials).toHaveLength(1);
      for (const trial of trials) {
        expect(findingIds(trial.project).filter((id) => id.startsWith('speaker'))).toEqual([]);
      }
    },
  );

  it('are not put into a fitting', () => {
    const closet = { id: 'closet', kind: 'closet', min: [0, 0, 0], max: [1, 0.8, 3] };
    const project = speakers([], '0+5+0', { solids: [closet] });
    for (const trial of tried(project, findingOf(project, 'speakers-missing'))) {
      expect(findingIds(trial.project).filter((id) => id.startsWith('speaker'))).toEqual([]);
    }
  });

  it('without a seat in the room wait for the seats', () => {
    const project = roomOf({}, { seating: { rows: [] } });
    const finding = findingOf(project, 'speakers-missing');
    expect(finding.remedies.map(({ text }) => text)).toEqual([
      'Move the seats of the reference place into the open first: no angle can be set out from there.',
    ]);
  });
});

describe('a channel or layout that is not known', () => {
  it('is a warning, and the loudspeaker can be taken out', () => {
    const project = one('X+030', [2, 1, 1.1]);
    const finding = findingOf(project, 'speaker-unknown:X+030');
    expect(finding.severity).toBe('warning');
    const trials = tried(project, finding);
    expect(trials).toHaveLength(1);
    for (const trial of trials) expect(trial.project.speakers.placed).toEqual([]);
  });

  it('is a fault for the layout, and a known one can be taken', () => {
    const project = speakers([{ channel: 'M+000', position: [2, 0.12, 1.1] }], '22.2');
    const finding = findingOf(project, 'layout-unknown');
    expect(finding.severity).toBe('fault');
    const trials = tried(project, finding);
    expect(trials).toHaveLength(1);
    for (const trial of trials) {
      expect(findingIds(trial.project)).not.toContain('layout-unknown');
      expect(trial.project.speakers.placed).toHaveLength(1);
    }
  });
});

/** What is wrong with one loudspeaker, as one number: being outside is worse than any angle. */
function wrong(project: Project, channel: string): number {
  const { findings, speakers: judged } = analyze(project);
  const speaker = judged.find((candidate) => candidate.channel === channel);
  const outside = findings.find(({ id }) => id === `speaker-outside:${channel}`);
  const degrees = Math.abs(speaker?.azimuthOffDeg ?? 0) + Math.abs(speaker?.elevationOffDeg ?? 0);
  return outside ? 1000 + (outside.value ?? 0) : degrees;
}

describe('any loudspeaker in a furnished room', () => {
  it('is better off after every change that its finding proposes', () => {
    const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
    const place = fc.tuple(cm(-50, 450), cm(-50, 550), cm(-20, 320));
    const channel = fc.constantFrom('M+030', 'M-030', 'M+000', 'M+110', 'M-110');
    // Columns, closets and soffits along the walls; none where the head is.
    const along = (far: number) => fc.constantFrom(0, 0.4, far - 1.2, far - 0.8);
    const solid = fc
      .tuple(along(4), along(5), fc.constantFrom(0, 0.8, 2.5), cm(20, 120), cm(20, 120))
      .map(([x, y, z, u, v]) => ({ min: [x, y, z], max: [x + u, y + v, 3] }));
    fc.assert(
      fc.property(place, channel, fc.array(solid, { maxLength: 3 }), (position, label, boxes) => {
        const room = { solids: boxes.map((box, i) => ({ id: `s${i}`, kind: 'other', ...box })) };
        const project = one(label, position, room);
        const findings = analyze(project).findings.filter(({ id }) => id.endsWith(`:${label}`));
        for (const finding of findings) {
          for (const trial of tried(project, finding)) {
            if (/^speaker-(outside|range|at-ears):/.test(finding.id))
              expect(wrong(trial.project, label)).toBeLessThan(wrong(project, label));
            else expect(findingIds(trial.project)).not.toContain(finding.id);
          }
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);
});

describe('the reference seat near a wall', () => {
  it('does not send the person to put inside what is inside', () => {
    // Ears 10 cm off the left wall: inside the room, but nearer to the wall than a box can hang.
    const project = roomOf(
      {},
      {
        seating: { rows: [{ id: 'a', seats: 1, x: 0.1, y: 3 }] },
        speakers: { placed: [{ channel: 'M+030', position: [2, 0.12, 1.1] }] },
      },
    );
    const finding = findingOf(project, 'speaker-range:M+030');
    expect(finding.remedies.map((remedy) => remedy.edit)).toEqual([undefined]);
    expect(finding.remedies[0]?.text).toMatch(/\bseats?\b/);
    expect(finding.remedies[0]?.text).not.toMatch(/inside the room/);
  });
});

describe('a subwoofer', () => {
  const withSub = (position: readonly number[], room = {}) =>
    roomOf(room, { speakers: { placed: [], subwoofers: [{ id: 'sub', position }] } });

  it('outside the room or inside a fitting is a fault, and the remedy brings it into the open', () => {
    const closet = { id: 'closet', kind: 'closet', min: [3, 4, 0], max: [4, 5, 3] };
    for (const project of [
      withSub([-1.1, 0.4, 0.2]),
      withSub([3.5, 4.5, 0.2], { solids: [closet] }),
    ]) {
      const finding = findingOf(project, 'subwoofer-outside:sub');
      expect(finding.severity).toBe('fault');
      for (const trial of tried(project, finding)) {
        expect(trial.analysis.findings.map(({ id }) => id)).not.toContain('subwoofer-outside:sub');
      }
    }
  });

  it('in the open is no finding', () => {
    expect(findingIds(withSub([0.4, 0.4, 0.2]))).not.toContain('subwoofer-outside:sub');
  });
});

describe('a loudspeaker at the ears', () => {
  it('is a fault: no angle, delay or level can be judged from there', () => {
    const project = roomOf(
      {},
      { speakers: { placed: [{ channel: 'M+030', position: [2, 3.1, 1.1] }] } },
    );
    expect(findingOf(project, 'speaker-at-ears:M+030')).toMatchObject({
      severity: 'fault',
      unit: 'm',
    });
  });
});

describe('a centre and a picture', () => {
  /** Ears at 2, 3, 1.1; a picture of 2.4 x 1.35 m from 0.7 m up. */
  const room = (placed: Fields, screen: Fields = {}): Project =>
    roomOf(
      {},
      {
        seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] },
        screen: { widthM: 2.4, bottomM: 0.7, ...screen },
        speakers: { placed: [{ channel: 'M+000', ...placed }] },
      },
    );
  const ids = (project: Project): readonly string[] =>
    findingIds(project).filter((id) => id.endsWith(':M+000'));

  it('is a trade-off with its figure where it hangs below one that lets no sound through', () => {
    // 2.88 m away and 0.6 m below the ears.
    const low = room({ position: [2, 0.12, 0.5] });
    const finding = findingOf(low, 'speaker-range:M+000');
    expect(finding.severity).toBe('note');
    expect(finding.value).toBeCloseTo(-(Math.atan(0.6 / 2.88) * 180) / Math.PI, 9);
    expect(finding.message).toContain('11.8° below your ears');
    expect(finding.message).toContain('trade-off');
    expect(finding.message).not.toMatch(/fault/);
  });

  it('is never put onto a picture that lets no sound through, and no remedy undoes another', () => {
    for (const position of [
      [2, 0.12, 0.4],
      [2, 0.12, 0.6],
      [2, 0.12, 1.1],
      [2, 0.6, 1.0],
      [2.2, 0.12, 2.4],
    ]) {
      let project = room({ position });
      const seen = new Set<string>([JSON.stringify(project.speakers.placed)]);
      for (let press = 0; ; press++) {
        expect(press).toBeLessThan(5);
        const edits = analyze(project)
          .findings.filter(({ id }) => id.endsWith(':M+000') && !id.startsWith('early'))
          .flatMap(({ remedies }) => remedies.flatMap(({ edit }) => edit ?? []))
          .filter((edit) => edit.kind === 'speaker');
        const [edit] = edits;
        if (!edit) break;
        project = applyEdit(project, edit);
        const state = JSON.stringify(project.speakers.placed);
        expect(seen).not.toContain(state);
        seen.add(state);
        expect(ids(project)).not.toContain('speaker-screen:M+000');
      }
    }
  });

  it('behind one is what the person says: before it is a finding, also on a stand', () => {
    for (const placed of [
      { position: [2, 0.12, 1.1] },
      { position: [2, 0, 1.1] },
      { position: [2, 0.9, 1.1], mount: 'stand' },
    ]) {
      for (const soundThrough of [false, true]) {
        const finding = findingOf(room(placed, { soundThrough }), 'speaker-screen:M+000');
        expect(finding.severity).not.toBe('note');
        for (const trial of tried(room(placed, { soundThrough }), finding))
          expect(ids(trial.project)).not.toContain('speaker-screen:M+000');
      }
    }
  });

  it('behind one that is not said to let sound through is a fault, and mended either way', () => {
    const behind = { position: [2, 0, 1.1], mount: 'behind-screen' };
    expect(ids(room(behind, { soundThrough: true }))).toEqual([]);
    const closed = room(behind);
    const finding = findingOf(closed, 'speaker-muffled:M+000');
    expect(finding.severity).toBe('fault');
    const trials = tried(closed, finding);
    expect(trials).toHaveLength(2);
    for (const trial of trials) {
      const left = trial.analysis.findings.filter(({ id }) => id.endsWith(':M+000'));
      expect(left.filter(({ severity }) => severity !== 'note')).toEqual([]);
    }
  });

  it('goes behind one that lets sound through, at the height of the ears, by its own remedy', () => {
    const low = room({ position: [2, 0.12, 0.5] });
    const through = findingOf(low, 'speaker-range:M+000').remedies.find(
      ({ edit }) => edit?.kind === 'several',
    );
    expect(through?.text).toMatch(/perforated or woven/);
    const done = through?.edit ? applyEdit(low, through.edit) : low;
    expect(ids(done)).toEqual([]);
    expect(done.screen.soundThrough).toBe(true);
  });
});
