/** The example rooms that come with the program: invented, each with something to learn from. */

import basementBay from '../../resources/examples/basement-bay.room.json';
import longRoom from '../../resources/examples/long-room.room.json';
import underTheDucts from '../../resources/examples/under-the-ducts.room.json';
import type { LengthUnits } from '../../core/quantity/length';
import { inInches } from '../../core/room/in-inches';
import { newRoomFile } from '../../core/room/new-room';
import { openRoom } from '../../core/room/open-room';
import type { DocumentState } from './document';

export const EXAMPLES = [
  { id: 'basement-bay', title: 'Basement bay', about: 'a bare bay with something to mend in it' },
  { id: 'long-room', title: 'Long room', about: 'size, finishes and loudspeakers come out well' },
  { id: 'under-the-ducts', title: 'Under the ducts', about: 'soffits, a closet, a stage, a riser' },
] as const;
export type ExampleId = (typeof EXAMPLES)[number]['id'];

const FILES: Readonly<Record<ExampleId, unknown>> = {
  'basement-bay': basementBay,
  'long-room': longRoom,
  'under-the-ducts': underTheDucts,
};

/** An example as unsaved work, in lengths of `units`. Throws only where the built-in file itself is broken. */
export function exampleRoom(id: ExampleId, units: LengthUnits): DocumentState {
  const opened = openRoom(JSON.stringify(FILES[id]));
  if (!opened.ok) throw new Error(`example ${id}: ${opened.faults[0]?.sentence ?? ''}`);
  // The files are in centimetres.
  const project = units === 'imperial' ? inInches(opened.project) : opened.project;
  return { project, file: { name: `${id}.room.json`, token: null, saved: project } };
}

/** A bare room to start from, in whole figures of `units`. */
export function bareRoom(units: LengthUnits): DocumentState {
  const opened = openRoom(JSON.stringify(newRoomFile(units)));
  if (!opened.ok) throw new Error('the bare room is broken');
  return {
    project: opened.project,
    file: { name: 'new.room.json', token: null, saved: opened.project },
  };
}
