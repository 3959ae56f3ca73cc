/**
 * What one gesture has changed so far. Each of its edits says where the gesture has got to, so a later
 * one takes the stead of an earlier one that speaks of the same thing; one that speaks of something else
 * is put beside it, and nothing of the gesture is dropped.
 */

import type { Edit } from '../../core/room/edits';
import type { Project } from '../../core/room/project';

/** A change that goes on for a while: a drag, or presses of a key. Its changes are one step. */
export interface Gesture {
  /** The room that it started from: its edits say where it has got to since. */
  readonly base: Project;
  /** It is given up: room and history are as they were before it. */
  readonly takeBack: () => void;
  /** It is over: what is changed next is another step. */
  readonly end: () => void;
}

/** The edits that a gesture stands for, once `edit` has come to those of before. */
export function gestureEdits(before: readonly Edit[], edit: Edit): readonly Edit[] {
  const subjects = new Set(subjectsOf(edit));
  const replaced = before.findIndex((known) => subjectsOf(known).some((of) => subjects.has(of)));
  if (replaced === -1) return [...before, edit];
  const others = (known: Edit): boolean => !subjectsOf(known).some((of) => subjects.has(of));
  return [
    ...before.slice(0, replaced).filter(others),
    edit,
    ...before.slice(replaced + 1).filter(others),
  ];
}

/** One edit that does what all of them do, in order. */
export function asOne(edits: readonly Edit[], nameOf: (edit: Edit) => string): Edit | null {
  const [first, ...more] = edits;
  if (first === undefined || more.length === 0) return first ?? null;
  return { kind: 'several', edits, what: edits.map(nameOf).join(' and ') };
}

/** The things that an edit speaks of, each as a key. */
function subjectsOf(edit: Edit): readonly string[] {
  const fields = (of: string, change: object): readonly string[] =>
    Object.keys(change).map((field) => `${of} ${field}`);
  switch (edit.kind) {
    case 'several':
      return edit.edits.flatMap(subjectsOf);
    case 'finish':
      return [`finish ${edit.face}`];
    case 'speaker':
      return [`speaker ${edit.channel}`];
    case 'mounting':
      return fields(`mounting ${edit.channel}`, edit.change);
    case 'subwoofer':
      return [`subwoofer ${edit.id}`];
    case 'row':
      return fields(`row ${edit.id}`, edit.change);
    case 'own-finish':
      return [`own finish ${edit.finish.id}`];
    case 'drop-finish':
      return [`own finish ${edit.id}`];
    case 'screen':
    case 'air':
      return fields(edit.kind, edit.change);
    default:
      return [edit.kind];
  }
}
