import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { obstacleOf } from '../../../../core/bass/obstacles';
import { subwooferPlaces } from '../../../../core/bass/places';
import type { Finding } from '../../../../core/findings/finding';
import {} from '../../../../core/findings/subwoofers';
import { subwooferBox } from '../../../../core/scene/subwoofer-box';
import { applyEdit } from '../../../../core/room/edits';
import type { Project } from '../../../../core/room/project';
import { arbitraryProject } from '../../support/arbitrary-project';
import { example, given, roomOf, type Fields } from '../../support/rooms';

const EMPTY = {
  seating: { rows: [{ id: 'a', seats: 1, y: 2.5 }] },
  screen: { widthM: 1, bottomM: 1 },
};

const withSubs = (
  positions: readonly (readonly number[])[],
  room: Fields = {},
  rest: Fields = {},
) =>
  roomOf(room, {
    ...EMPTY,
    ...rest,
    speakers: {
      placed: [],
      subwoofers: positions.map((position, n) => ({ id: `sub-${n + 1}`, position })),
    },
  });

const told = (project: Project): readonly Finding[] =>
  analyze(project).findings.filter(({ id }) => id.startsWith('subwoofer-'));

const ids = (findings: readonly Finding[]): readonly string[] => findings.map(({ id }) => id);

/** The room after the finding's first remedy. */
const after = (project: Project, finding: Finding): Project =>
  applyEdit(project, given(given(finding.remedies[0]).edit));

describe('a subwoofer that is in the way', () => {
  const door = { id: 'door-1', face: 'left', rect: [1, 0, 1.8, 2], finish: 'door-solid' };
  const stage = { id: 's', kind: 'stage', min: [0, 0, 0], max: [4, 1, 0.2] };
  const seats = { seating: { rows: [{ id: 'a', seats: 2, y: 2.5, pitchM: 1.1 }] } };
  it.each([
    ['door', withSubs([[0.4, 1.4, 0.2]], { patches: [door] })],
    ['fitting', withSubs([[2, 1.1, 0.2]], { solids: [stage] })],
    ['outside', withSubs([[0.05, 1.4, 0.2]])],
    ['walkway', withSubs([[0.3, 2.5, 0.2]], {}, seats)],
    ['seat', withSubs([[1, 2.5, 0.2]], {}, seats)],
    ['picture', withSubs([[2, 0.2, 0.9]])],
  ])('of a %s is told, and its remedy clears that and raises nothing', (kind, project) => {
    const [finding] = told(project);
    expect(finding?.id).toBe(`subwoofer-${kind}:sub-1`);
    const moved = after(project, given(finding));
    expect(told(moved)).toEqual([]);
    const before = ids(analyze(project).findings);
    for (const id of ids(analyze(moved).findings)) expect(before).toContain(id);
  });

  it('of another subwoofer is told once, of the later one', () => {
    const project = withSubs([
      [0.2, 0.2, 0.2],
      [0.3, 0.2, 0.2],
    ]);
    expect(ids(told(project))).toEqual(['subwoofer-subwoofer:sub-2']);
    expect(told(after(project, given(told(project)[0])))).toEqual([]);
  });

  it('is not where it stands on a stage, or touches a wall and another', () => {
    expect(told(withSubs([[2, 0.5, 0.4]], { solids: [stage] }))).toEqual([]);
    const touching = withSubs([
      [0.2, 0.2, 0.2],
      [0.6, 0.2, 0.2],
    ]);
    expect(told(touching)).toEqual([]);
    expect(told(example('under-the-ducts'))).toEqual([]);
  });

  it('is not where a small box, as one looked for places of, stands against a wall', () => {
    expect(told(withSubs([[0.15, 1.4, 0.15]]))).toEqual([]);
    const project = example('basement-bay');
    const places = subwooferPlaces(project, { stepM: 0.4, boxM: [0.3, 0.3, 0.3] }).allowed;
    for (const position of places) {
      const speakers = { ...project.speakers, subwoofers: [{ id: 'sub-1', position }] };
      expect(told({ ...project, speakers })).toEqual([]);
    }
  });

  it('makes way for a loudspeaker: the first remedy moves it, a little and not off its wall', () => {
    const project = example('basement-bay');
    const clash = analyze(project).findings.find(({ id }) => id.startsWith('speaker-subwoofer:'));
    const moved = after(project, given(clash));
    expect(moved.speakers.placed).toEqual(project.speakers.placed);
    const findings = ids(analyze(moved).findings);
    expect(findings.filter((id) => /^(speaker-)?subwoofer-?/.test(id))).toEqual([]);
    for (const id of findings) expect(ids(analyze(project).findings)).toContain(id);
    const [from, to] = [project, moved].map(
      ({ speakers }) => given(speakers.subwoofers[0]).position,
    );
    // No nearer to the middle of the room than it was.
    expect(Math.hypot(...given(to).map((at, n) => at - given(given(from)[n])))).toBeLessThan(0.2);
    expect(given(to)[1]).toBeLessThanOrEqual(given(from)[1]);
  });

  it('of any room stands clear after its remedy', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const finding of told(project)) {
          const [remedy] = finding.remedies;
          if (!remedy?.edit) continue;
          const id = finding.id.slice(finding.id.indexOf(':') + 1);
          const { subwoofers } = applyEdit(project, remedy.edit).speakers;
          const here = given(subwoofers.find((sub) => sub.id === id));
          const others = subwoofers.filter((sub) => sub !== here);
          const { sizeM } = subwooferBox(project, here);
          expect(obstacleOf(project, here.position, sizeM, others)).toBeNull();
        }
      }),
      { numRuns: 60 },
    );
  });
});
