/**
 * A bare room to start from, as the text of a room file says it: in whole centimetres or whole inches, of
 * a size whose modes lie well apart, with one row, a picture and the target of a home cinema.
 */

import { METRES_PER_INCH, roundLength, type LengthUnits } from '../quantity/length';
import { ROOM_FORMAT, ROOM_VERSION } from './project';

/** In centimetres or inches. The sizes pass every proportion rule that looks at the shape alone. */
const NEW_ROOMS = {
  metric: {
    stepM: 0.01,
    size: [400, 560, 250],
    row: { y: 345, pitch: 70, ear: 110, eye: 120 },
    screen: { width: 240, bottom: 70 },
  },
  imperial: {
    stepM: METRES_PER_INCH,
    size: [156, 218, 96],
    row: { y: 136, pitch: 28, ear: 43, eye: 47 },
    screen: { width: 94, bottom: 28 },
  },
} as const satisfies Record<LengthUnits, unknown>;

/** The room as a room file has it; what it leaves out has the file's own defaults. */
export function newRoomFile(units: LengthUnits): unknown {
  const { stepM, size, row, screen } = NEW_ROOMS[units];
  const m = (steps: number): number => roundLength(steps * stepM);
  const [width, length, height] = size;
  return {
    format: ROOM_FORMAT,
    version: ROOM_VERSION,
    name: 'New room',
    room: { size: { width: m(width), length: m(length), height: m(height) } },
    seating: {
      rows: [
        {
          id: 'row-1',
          seats: 3,
          y: m(row.y),
          pitchM: m(row.pitch),
          earHeightM: m(row.ear),
          eyeHeightM: m(row.eye),
        },
      ],
    },
    screen: { widthM: m(screen.width), bottomM: m(screen.bottom) },
    target: { kind: 'home-cinema' },
  };
}
