/**
 * What can be changed about a Project, as data: the window makes edits from gestures and figures,
 * findings carry them as remedies, and the history names its steps by them.
 */

import { solidOfFace } from './faces';
import type { Air } from '../air/medium';
import type {
  Bay,
  CustomFinish,
  Face,
  Mount,
  Patch,
  PlacedSpeaker,
  Point,
  Project,
  Reference,
  Room,
  RoomObject,
  Row,
  Screen,
  Seating,
  ShellSize,
  Solid,
  Subwoofer,
  Target,
} from './project';
import { heldProject } from './held';
import { mountedWith, placedWith, type Mounting } from './placed-speakers';
import { SIDES } from './project';
import { resizeShell } from './resize';
import { middleOf } from './seats';
import { isSame } from './same';

export type Edit =
  | { readonly kind: 'size'; readonly size: ShellSize }
  | { readonly kind: 'finish'; readonly face: Face; readonly finish: string }
  | {
      readonly kind: 'speaker';
      readonly channel: string;
      readonly position: PlacedSpeaker['position'];
      readonly mount?: Mount;
    }
  /** How a placed loudspeaker is held; null takes a field out. */
  | { readonly kind: 'mounting'; readonly channel: string; readonly change: Mounting }
  | { readonly kind: 'subwoofer'; readonly id: string; readonly position: Point }
  /** The whole list of subwoofers; `what` names the step. */
  | {
      readonly kind: 'subwoofers';
      readonly subwoofers: readonly Subwoofer[];
      readonly what: string;
    }
  /** `later` is the layout to come: null takes it out, and it stays as it is where it is not given. */
  | {
      readonly kind: 'layout';
      readonly layout: string;
      readonly placed: readonly PlacedSpeaker[];
      readonly later?: string | null;
    }
  /** Which published recommendation judges the angles. */
  | { readonly kind: 'recommendation'; readonly recommendation: string }
  | { readonly kind: 'row'; readonly id: string; readonly change: Partial<Omit<Row, 'id' | 'x'>> }
  | { readonly kind: 'reference'; readonly reference: Reference }
  | { readonly kind: 'screen'; readonly change: Partial<Screen> }
  | { readonly kind: 'air'; readonly change: Partial<Air> }
  | { readonly kind: 'target'; readonly target: Target }
  | { readonly kind: 'bay'; readonly bay: Bay }
  /** The whole list of solids; `what` names the step. Patches on solids that are gone go with them. */
  | { readonly kind: 'solids'; readonly solids: readonly Solid[]; readonly what: string }
  /** The whole list of patches; `what` names the step. */
  | { readonly kind: 'patches'; readonly patches: readonly Patch[]; readonly what: string }
  /** Add an own finish, or replace the one of its id. */
  | { readonly kind: 'own-finish'; readonly finish: CustomFinish }
  /** Only what nothing uses any more can go; else nothing changes. */
  | { readonly kind: 'drop-finish'; readonly id: string }
  | { readonly kind: 'objects'; readonly objects: readonly RoomObject[] }
  | { readonly kind: 'name'; readonly name: string }
  /** Several edits, each on what the one before has made, as one step that `what` names. */
  | { readonly kind: 'several'; readonly edits: readonly Edit[]; readonly what: string };

/**
 * `project` after `edit`, held within the ranges that a room file takes; the same object where nothing
 * changes. Never changes its input.
 */
export function applyEdit(project: Project, edit: Edit): Project {
  const changed = heldProject(edited(project, edit));
  return isSame(changed, project) ? project : changed;
}

function edited(project: Project, edit: Edit): Project {
  switch (edit.kind) {
    case 'size':
      return resizeShell(project, edit.size);
    case 'finish':
      return {
        ...project,
        room: {
          ...project.room,
          finishes: { ...project.room.finishes, [edit.face]: edit.finish },
        },
      };
    case 'speaker':
      return { ...project, speakers: { ...project.speakers, placed: placedWith(project, edit) } };
    case 'mounting':
      return { ...project, speakers: { ...project.speakers, placed: mountedWith(project, edit) } };
    case 'subwoofer': {
      const subwoofers = project.speakers.subwoofers.map((sub) =>
        sub.id === edit.id ? { ...sub, position: edit.position } : sub,
      );
      return { ...project, speakers: { ...project.speakers, subwoofers } };
    }
    case 'subwoofers':
      return { ...project, speakers: { ...project.speakers, subwoofers: edit.subwoofers } };
    case 'layout':
      return {
        ...project,
        speakers: withLayout(project.speakers, edit),
      };
    case 'recommendation':
      return {
        ...project,
        speakers: { ...project.speakers, recommendation: edit.recommendation },
      };
    case 'row': {
      const rows = project.seating.rows.map((row) =>
        row.id === edit.id ? { ...row, ...edit.change } : row,
      );
      return {
        ...project,
        seating: { ...project.seating, rows, reference: keptReference(project.seating, rows) },
      };
    }
    case 'reference':
      return {
        ...project,
        seating: {
          ...project.seating,
          reference: movedReference(project.seating.reference, edit.reference),
        },
      };
    case 'screen':
      return { ...project, screen: { ...project.screen, ...edit.change } };
    case 'air':
      return { ...project, air: { ...project.air, ...edit.change } };
    case 'target':
      return { ...project, target: edit.target };
    case 'bay':
      return { ...project, room: { ...project.room, bay: edit.bay } };
    case 'solids':
      return { ...project, room: withSolids(project.room, edit.solids) };
    case 'patches':
      return { ...project, room: { ...project.room, patches: edit.patches } };
    case 'own-finish':
      return { ...project, finishesCustom: withFinish(project.finishesCustom, edit.finish) };
    case 'drop-finish':
      return usesFinish(project, edit.id)
        ? project
        : {
            ...project,
            finishesCustom: project.finishesCustom.filter((finish) => finish.id !== edit.id),
          };
    case 'objects':
      return { ...project, objects: edit.objects };
    case 'name':
      return { ...project, name: edit.name };
    case 'several':
      return edit.edits.reduce(edited, project);
  }
}

/** The new place in the old one's fields: those that the program does not know stay. */
function movedReference(old: Reference, next: Reference): Reference {
  const kept = Object.entries(old).filter(([field]) => field !== 'seat' && field !== 'middle');
  return { ...Object.fromEntries(kept), ...next };
}

/**
 * The reference place where its row has got another number of seats: the middle stays the middle, and
 * a seat that is gone gives way to the last one.
 */
function keptReference({ reference, rows }: Seating, next: readonly Row[]): Reference {
  const old = rows.find(({ id }) => id === reference.row);
  const row = next.find(({ id }) => id === reference.row);
  if (!row || !old || !('seat' in reference) || row.seats === old.seats) return reference;
  if (reference.seat === (old.seats + 1) / 2) return movedReference(reference, middleOf(row));
  return reference.seat > row.seats ? { ...reference, seat: row.seats } : reference;
}

function withLayout(
  speakers: Project['speakers'],
  { layout, placed, later }: Extract<Edit, { kind: 'layout' }>,
): Project['speakers'] {
  const { later: planned, ...rest } = speakers;
  const kept = later === undefined ? planned : later;
  return {
    ...rest,
    layout,
    ...(kept === undefined || kept === null ? {} : { later: kept }),
    placed,
  };
}

function withSolids(room: Room, solids: readonly Solid[]): Room {
  const kept = room.patches.filter(
    ({ face }) =>
      solidOfFace(face) === null || solids.some((solid) => solid.id === solidOfFace(face)),
  );
  return { ...room, solids, patches: kept };
}

function withFinish(
  finishes: readonly CustomFinish[],
  finish: CustomFinish,
): readonly CustomFinish[] {
  return finishes.some((known) => known.id === finish.id)
    ? finishes.map((known) => (known.id === finish.id ? finish : known))
    : [...finishes, finish];
}

/** True where a face, a solid or a patch has this finish. */
export function usesFinish(project: Project, id: string): boolean {
  const { finishes, solids, patches } = project.room;
  return (
    Object.values(finishes).includes(id) ||
    solids.some((solid) => solid.finish === id) ||
    patches.some((patch) => patch.finish === id)
  );
}

/** Name of the step for undo and redo: what was changed, as a noun. */
export function editName(edit: Edit, project: Project): string {
  switch (edit.kind) {
    case 'size': {
      const old = project.room.size;
      const changed = SIDES.filter((side) => old[side] !== edit.size[side]);
      return changed.length === 1 ? `room ${changed[0] ?? ''}` : 'room size';
    }
    case 'finish':
      return `${edit.face} finish`;
    case 'speaker':
      return `place of ${edit.channel}`;
    case 'mounting':
      return `mounting of ${edit.channel}`;
    case 'subwoofer':
      return `place of ${edit.id}`;
    case 'layout':
      if (edit.layout !== project.speakers.layout) return `layout ${edit.layout}`;
      return (edit.later ?? undefined) === project.speakers.later || edit.later === undefined
        ? 'loudspeaker places'
        : 'loudspeakers for later';
    case 'recommendation':
      return 'recommendation';
    case 'row':
      return 'seat row';
    case 'reference':
      return 'reference place';
    case 'screen':
      return 'screen';
    case 'air':
      return 'air';
    case 'target':
      return 'decay target';
    case 'bay':
      return 'bay';
    case 'subwoofers':
    case 'solids':
    case 'patches':
    case 'several':
      return edit.what;
    case 'own-finish':
      return `finish ${edit.finish.name}`;
    case 'drop-finish':
      return 'own finish';
    case 'objects':
      return 'people and seats';
    case 'name':
      return 'room name';
  }
}
