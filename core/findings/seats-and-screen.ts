/** Seats and picture that do not fit the shell. */

import { roundLength } from '../quantity/length';
import type { Project, Row } from '../room/project';
import { rowCentreX } from '../room/seats';
import { screenRect } from '../room/screen';
import { outsideShellM } from '../room/space';
import type { FindingContext } from './context';
import type { Finding } from './finding';
import { practice, practiceSource } from '../room/practice/practice';

/** Ears no nearer than this to a wall when the program moves a row back inside, m. */
const KEEP_OFF_M = 0.3;

export function seatFindings(context: FindingContext): readonly Finding[] {
  const { project, lengthText } = context;
  const { width, height } = project.room.size;
  const findings: Finding[] = [];
  if (project.seating.rows.length === 0) {
    findings.push({
      id: 'no-seats',
      severity: 'fault',
      subject: 'seats',
      where: 'seating',
      message: 'There is no row of seats, so no place to judge angles from.',
      figureName: 'rows',
      value: 0,
      limit: 1,
      unit: '',
      source: 'ITU-R BS.2051 judges angles at the listening position',
      remedies: [{ text: 'Add a row to seating.rows in the room file.' }],
    });
  }
  for (const row of project.seating.rows) {
    const half = ((row.seats - 1) / 2) * row.pitchM;
    const centre = rowCentreX(row, width);
    const ears = row.riserM + row.earHeightM;
    const out = outsideShellM(
      project.room.size,
      [centre - half, row.y, ears],
      [centre + half, row.y, ears],
    );
    if (out < 0) continue;
    // Moving the row along the room helps only where that is all that is wrong.
    const fits = half < centre && centre + half < width && ears < height;
    const y = freeRowY(project, row);
    findings.push({
      id: `row-outside:${row.id}`,
      severity: 'fault',
      subject: 'seats',
      where: `row ${row.id}`,
      message: `A head in this row is ${lengthText(out)} outside the room.`,
      figureName: 'head outside',
      value: out,
      limit: 0,
      unit: 'm',
      source: 'geometry',
      remedies:
        y !== null && y !== row.y && fits
          ? [
              {
                text: `Move the row to ${lengthText(y)} from the screen wall.`,
                edit: { kind: 'row', id: row.id, change: { y } },
              },
            ]
          : [{ text: 'Take seats out of the row, or seat them lower or closer together.' }],
      place: { kind: 'row', row: row.id },
    });
  }
  return [...findings, ...overlapFindings(context)];
}

/** Ears of two rows no nearer than this, m: legroom and a back. */
const ROW_SPACING_M = practice('row-spacing');
/** Nearer than this, two rows share a place, m. */
const SHARED_M = practice('row-sharing');

/** The place inside the room nearest to the row's own that keeps off the other rows; null where none does. */
function freeRowY(project: Project, row: Row): number | null {
  const { length } = project.room.size;
  const [low, high] = [KEEP_OFF_M, length - KEEP_OFF_M];
  const others = project.seating.rows
    .filter((other) => other.id !== row.id && other.y > 0 && other.y < length)
    .map((other) => other.y);
  const candidates = [
    Math.min(Math.max(row.y, low), high),
    ...others.flatMap((y) => [y - ROW_SPACING_M, y + ROW_SPACING_M]),
  ]
    .filter((y) => y >= low && y <= high)
    .filter((y) => others.every((other) => Math.abs(other - y) > ROW_SPACING_M - 1e-6))
    .sort((a, b) => Math.abs(a - row.y) - Math.abs(b - row.y));
  const [nearest] = candidates;
  return nearest === undefined ? null : roundLength(nearest);
}

/** Rows whose heads share a place: a file or a drag can put one onto another. */
function overlapFindings({ project, lengthText }: FindingContext): readonly Finding[] {
  const { width } = project.room.size;
  const { rows } = project.seating;
  const half = (row: Row): number => ((row.seats - 1) / 2) * row.pitchM + SHARED_M / 2;
  return rows.flatMap((row, i): readonly Finding[] => {
    const other = rows
      .slice(0, i)
      .find(
        (before) =>
          Math.abs(before.y - row.y) < SHARED_M - 1e-9 &&
          Math.abs(rowCentreX(before, width) - rowCentreX(row, width)) < half(before) + half(row),
      );
    if (!other) return [];
    const apart = Math.abs(other.y - row.y);
    const y = freeRowY(project, row);
    return [
      {
        id: `rows-overlap:${row.id}`,
        severity: 'fault',
        subject: 'seats',
        where: `row ${row.id}`,
        message: `Its heads are ${lengthText(apart)} from those of row ${other.id}: the seats stand in each other.`,
        figureName: 'heads apart',
        value: apart,
        limit: SHARED_M,
        unit: 'm',
        source: practiceSource('row-sharing'),
        remedies:
          y === null
            ? [{ text: 'There is no room for both rows: take one out, or make the room longer.' }]
            : [
                {
                  text: `Move the row to ${lengthText(y)} from the screen wall.`,
                  edit: { kind: 'row', id: row.id, change: { y } },
                },
              ],
        place: { kind: 'row', row: row.id },
      },
    ];
  });
}

export function screenFindings({ project, lengthText }: FindingContext): readonly Finding[] {
  const { width, height } = project.room.size;
  const rect = screenRect(project);
  const out = outsideShellM(
    project.room.size,
    [rect.leftX, 0, rect.bottomZ],
    [rect.rightX, 0, rect.topZ],
  );
  if (out <= 0.0005) return [];
  const { widthM, aspect, bottomM, centreX } = project.screen;
  const centre = centreX ?? width / 2;
  const most = Math.min(
    2 * Math.min(centre, width - centre),
    ((height - bottomM) * aspect[0]) / aspect[1],
  );
  const fitting = Math.floor(most * 100) / 100;
  return [
    {
      id: 'screen-outside',
      severity: 'fault',
      subject: 'picture',
      where: 'screen',
      message: `The picture is ${lengthText(out)} larger than the wall it hangs on.`,
      figureName: 'picture width',
      value: widthM,
      limit: fitting,
      unit: 'm',
      source: 'geometry',
      remedies:
        fitting >= 0.2
          ? [
              {
                text: `Make the picture ${lengthText(fitting)} wide.`,
                edit: { kind: 'screen', change: { widthM: fitting } },
              },
            ]
          : [{ text: 'Move the screen down or to the middle of the wall.' }],
      place: { kind: 'screen' },
    },
  ];
}
