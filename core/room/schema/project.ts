/** The shape of a room file, and the Project that is read from it. */

import { z } from 'zod';
import { defaultRows, defaultScreenSize } from '../defaults';
import { ROOM_FORMAT, ROOM_VERSION } from '../kinds';
import { middleOf } from '../seats';
import { group, says, text } from './fields';
import type { Known } from './known';
import { projector, screen } from './picture';
import { seating, type Row } from './seating';
import { room } from './shell';
import { air, customFinishes, roomObjects, target } from './sound';
import { speakers } from './speakers';

const file = group({
  format: z.literal(ROOM_FORMAT, says(`"${ROOM_FORMAT}"`)),
  version: z.literal(ROOM_VERSION, says(String(ROOM_VERSION))),
  name: text(120).default('Untitled room'),
  room,
  air,
  finishesCustom: customFinishes,
  seating,
  screen,
  /** Absent where none is hung yet. */
  projector: projector.exactOptional(),
  speakers,
  target,
  objects: roomObjects,
});

/** Fill in what depends on the size of the shell. */
function complete(data: z.output<typeof file>) {
  const { size } = data.room;
  const rows: readonly Row[] = data.seating.rows ?? defaultRows(size);
  const reference = data.seating.reference ?? middleOf(rows[0]);
  const { widthM, bottomM } = defaultScreenSize(size);
  return {
    ...data,
    seating: { ...data.seating, rows, reference },
    screen: {
      ...data.screen,
      widthM: data.screen.widthM ?? widthM,
      bottomM: data.screen.bottomM ?? bottomM,
    },
  };
}

/** Reads the plain data of a room file of the present version; unknown fields pass and stay. */
export const projectSchema = file.transform(complete);

export type Project = Known<z.output<typeof projectSchema>>;
export type Seating = Project['seating'];
