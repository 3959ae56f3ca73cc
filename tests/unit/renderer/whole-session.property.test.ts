/** Whatever is done in the window, in whatever order, the room at hand can be saved and opened unchanged. */

import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Edit } from '../../../core/room/edits';
import { FINISHES } from '../../../core/room/finishes';
import { movedSolid, stretchedSolid } from '../../../core/room/move-solid';
import { openRoom, saveRoom } from '../../../core/room/open-room';
import {
  FACES,
  MOUNTS,
  SIDES,
  type Patch,
  type Point,
  type Project,
  type Solid,
} from '../../../core/room/project';
import type { Gesture } from '../../../renderer/state/gesture';
import type { Session } from '../../../renderer/state/session';
import { arbitraryProject } from '../support/arbitrary-project';
import { EXAMPLES, example } from '../support/rooms';
import { stubPage } from './support/window-stubs';

/** One thing done in the window; it looks at the room as it finds it. */
type Deed = (session: Session, gesture: Gesture | null) => void;

const projectOf = (session: Session): Project => session.work.present.state.project;
const picked = <T>(list: readonly T[], n: number): T | undefined => list[n % list.length];

/** Any number that a hand, a field or a computation could come up with. */
const figure = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -300, max: 3500 }).map((n) => n / 100) },
  { weight: 2, arbitrary: fc.double({ min: -20, max: 70, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -0, 1e-7, 1e9, -1e9, Number.NaN, Infinity) },
);
const place: fc.Arbitrary<Point> = fc.tuple(figure, figure, figure);
const nth = fc.nat({ max: 60 });
const finish = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom(...FINISHES.slice(0, 30).map(({ id }) => id)) },
  { weight: 2, arbitrary: fc.constantFrom('own-1', 'own-2') },
  { weight: 1, arbitrary: fc.constant('unknown') },
);
const face = fc.constantFrom(...FACES);

/** An edit made of the room that it is for; null where that room has nothing to edit so. */
type EditOf = (project: Project) => Edit | null;

const solidsEdit = (
  project: Project,
  n: number,
  change: (solid: Solid) => readonly Solid[],
): Edit | null => {
  const { solids } = project.room;
  const solid = picked(solids, n);
  if (!solid) return null;
  const next = solids.flatMap((known) => (known === solid ? change(solid) : [known]));
  return { kind: 'solids', solids: next, what: 'fittings' };
};

const patchesEdit = (project: Project, patch: Omit<Patch, 'id'>): Edit => ({
  kind: 'patches',
  patches: [...project.room.patches, { id: `p-${project.room.patches.length}`, ...patch }],
  what: 'panel',
});

const plainEdits: fc.Arbitrary<EditOf> = fc.oneof(
  fc.tuple(figure, fc.constantFrom(...SIDES)).map(([value, side]): EditOf => ({ room }) => ({
    kind: 'size',
    size: { ...room.size, [side]: value },
  })),
  fc
    .tuple(face, finish)
    .map(([on, id]): EditOf => () => ({ kind: 'finish', face: on, finish: id })),
  fc
    .tuple(nth, place, fc.option(fc.constantFrom(...MOUNTS)))
    .map(([n, position, mount]): EditOf => ({ speakers }) => ({
      kind: 'speaker',
      channel: picked(speakers.placed, n)?.channel ?? 'M+000',
      position,
      ...(mount ? { mount } : {}),
    })),
  fc
    .tuple(nth, place, figure, figure)
    .map(([n, boxM, azimuthDeg, elevationDeg]): EditOf => ({ speakers }) => ({
      kind: 'mounting',
      channel: picked(speakers.placed, n)?.channel ?? 'M+000',
      change: n % 2 === 0 ? { boxM } : { aim: { azimuthDeg: azimuthDeg * 90, elevationDeg } },
    })),
  fc.tuple(nth, place).map(([n, position]): EditOf => ({ speakers }) => ({
    kind: 'subwoofer',
    id: picked(speakers.subwoofers, n)?.id ?? 'sub-1',
    position,
  })),
  fc
    .tuple(place, figure, figure)
    .map(([position, delayMs, levelDb]): EditOf => ({ speakers: { subwoofers } }) => ({
      kind: 'subwoofers',
      subwoofers: [...subwoofers, { id: `s-${subwoofers.length}`, position, delayMs, levelDb }],
      what: 'one more',
    })),
  fc.constantFrom('0+5+0', '0+7+0', '4+5+0').map((layout): EditOf => ({ speakers }) => ({
    kind: 'layout',
    layout,
    placed: speakers.placed,
  })),
  fc
    .constantFrom('bs2051', 'odd')
    .map((recommendation): EditOf => () => ({ kind: 'recommendation', recommendation })),
  fc.tuple(nth, figure, figure).map(([n, y, metres]): EditOf => ({ seating }) => {
    const row = picked(seating.rows, n);
    const change = n % 3 === 0 ? { y } : n % 3 === 1 ? { earHeightM: metres } : { seats: n };
    return row ? { kind: 'row', id: row.id, change } : null;
  }),
  fc.tuple(nth, nth).map(([n, seat]): EditOf => ({ seating }) => ({
    kind: 'reference',
    reference: { row: picked(seating.rows, n)?.id ?? '', seat },
  })),
  fc
    .tuple(figure, figure)
    .map(([widthM, bottomM]): EditOf => () => ({ kind: 'screen', change: { widthM, bottomM } })),
  fc.tuple(figure, figure).map(([temperatureC, humidityPercent]): EditOf => () => ({
    kind: 'air',
    change: { temperatureC, humidityPercent },
  })),
  figure.map((value): EditOf => () => ({
    kind: 'target',
    target: { kind: 'custom', seconds: { '500': value } },
  })),
  figure.map((stepM): EditOf => ({ room }) => ({
    kind: 'bay',
    bay: { largest: room.size, least: room.size, stepM, fixed: [], leastFloorM2: 0 },
  })),
  fc.tuple(place, place, finish).map(([min, max, id]): EditOf => ({ room }) => ({
    kind: 'solids',
    solids: [
      ...room.solids,
      { id: `b-${room.solids.length}`, kind: 'other', min, max, finish: id },
    ],
    what: 'box',
  })),
  fc.tuple(nth, place).map(
    ([n, by]): EditOf =>
      (project) =>
        solidsEdit(project, n, (solid) => [movedSolid(solid, by, project.room, 0.005)]),
  ),
  fc.tuple(nth, figure, fc.constantFrom<-1 | 1>(-1, 1)).map(
    ([n, to, side]): EditOf =>
      (project) =>
        solidsEdit(project, n, (solid) => [
          stretchedSolid(solid, (n % 3) as 0 | 1 | 2, side, to, project.room, 0.005),
        ]),
  ),
  nth.map(
    (n): EditOf =>
      (project) =>
        solidsEdit(project, n, () => []),
  ),
  fc.tuple(face, figure, figure, figure, figure, finish).map(
    ([on, u0, v0, u1, v1, id]): EditOf =>
      (project) =>
        patchesEdit(project, { kind: 'panel', face: on, rect: [u0, v0, u1, v1], finish: id }),
  ),
  fc.tuple(fc.constantFrom('own-1', 'own-2'), figure).map(([id, value]): EditOf => () => ({
    kind: 'own-finish',
    finish: { id, name: id, absorption: { '500': value }, source: 'own', design: undefined },
  })),
  fc.constantFrom('own-1', 'own-2').map((id): EditOf => () => ({ kind: 'drop-finish', id })),
  nth.map((count): EditOf => () => ({
    kind: 'objects',
    objects: [{ id: 'o', item: 'person', count }],
  })),
  fc
    .string({ unit: 'grapheme', maxLength: 130 })
    .map((name): EditOf => () => ({ kind: 'name', name })),
);

const edits: fc.Arbitrary<EditOf> = fc.oneof(
  { weight: 5, arbitrary: plainEdits },
  {
    weight: 1,
    arbitrary: fc
      .array(plainEdits, { minLength: 2, maxLength: 3 })
      .map((parts): EditOf => (project) => ({
        kind: 'several',
        edits: parts.flatMap((part) => part(project) ?? []),
        what: 'several',
      })),
  },
);

const asWork = (project: Project) => ({
  project,
  file: { name: 'den.room.json', token: null, saved: project },
});

const deeds: fc.Arbitrary<Deed> = fc.oneof(
  {
    weight: 12,
    arbitrary: edits.map((editOf): Deed => (session, gesture) => {
      const edit = editOf(projectOf(session));
      if (edit) session.change(edit, gesture);
    }),
  },
  {
    weight: 3,
    arbitrary: nth.map((n): Deed => (session) => {
      const remedies = session.analysis.findings.flatMap((finding) => finding.remedies);
      const edit = picked(
        remedies.flatMap((remedy) => remedy.edit ?? []),
        n,
      );
      if (edit) session.change(edit);
    }),
  },
  { weight: 2, arbitrary: fc.constant<Deed>((session) => session.undo()) },
  { weight: 2, arbitrary: fc.constant<Deed>((session) => session.redo()) },
  {
    weight: 1,
    arbitrary: fc.oneof(arbitraryProject, fc.constantFrom(...EXAMPLES).map(example)).map(
      (project): Deed =>
        (session) =>
          session.load(asWork(project), 'open'),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constant<Deed>((session) =>
      session.markSaved({ name: 'den.room.json', token: null, saved: projectOf(session) }),
    ),
  },
);

describe('whatever is done in the window', () => {
  let session: () => Session;
  beforeAll(async () => {
    stubPage();
    vi.resetModules();
    session = (await import('../../../renderer/state/session')).useSession.getState;
  });
  afterAll(() => vi.unstubAllGlobals());

  it('the room can be saved, and opens as it was', { timeout: 60_000 }, () => {
    let changes = 0;
    const step = fc.tuple(deeds, fc.constantFrom(null, null, 0, 0, 1));
    fc.assert(
      fc.property(
        arbitraryProject,
        fc.array(step, { minLength: 1, maxLength: 12 }),
        (project, steps) => {
          session().restore(asWork(project), null);
          const gestures = [session().begin(), session().begin()];
          for (const [deed, gesture] of steps) {
            const before = projectOf(session());
            deed(session(), gesture === null ? null : (gestures[gesture] ?? null));
            const now = projectOf(session());
            if (now === before) continue;
            changes += 1;
            const text = saveRoom(now);
            expect(openRoom(text)).toEqual({ ok: true, project: JSON.parse(text) as Project });
          }
        },
      ),
      { numRuns: 25, interruptAfterTimeLimit: 20_000 },
    );
    expect(changes).toBeGreaterThan(5);
  });
});
