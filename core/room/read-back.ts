/** What a project is in a file, tried out: the text is read by the program's own reader before it is used. */

import type { Fault } from './fault';
import { openRoom, saveRoom } from './open-room';
import type { Project } from './project';
import { isSame } from './same';

export type ReadBack =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly text: string; readonly faults: readonly Fault[] };

const CHANGED: Fault = {
  path: '',
  sentence: 'The room would come back changed: something in it cannot be written to a file.',
};

/** The file text of `project`, which opens as that very project; else why it does not. */
export function readBack(project: Project): ReadBack {
  const text = saveRoom(project);
  const opened = openRoom(text);
  if (!opened.ok) return { ok: false, text, faults: opened.faults };
  // The order of fields may differ: a file's known fields are read before the others.
  return isSame(opened.project, JSON.parse(text))
    ? { ok: true, text }
    : { ok: false, text, faults: [CHANGED] };
}
