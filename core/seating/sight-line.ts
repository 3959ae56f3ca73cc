/**
 * The C-value: how high the line from the lower edge of the picture to an eye passes above the eye of
 * a person in front, in the vertical plane along the room (EN 13200-1, its formula and its steps).
 * Lengths in metres.
 */

import type { Project, Row } from '../room/project';
import { screenRect } from '../room/screen';

/**
 * Steps of the C-value, m: between the heads, with the head tilted, over the head, over a hat. The
 * figures are those of EN 13200-1 and of the guides to sports grounds, from memory.
 */
export const SIGHT_LINE_STEPS_M = [0.06, 0.09, 0.12, 0.15] as const;

export interface SightLine {
  /** Eye in front to the focus, along the room; above 0. */
  readonly distanceM: number;
  /** Eye in front above the focus; below it where it is negative. */
  readonly overFocusM: number;
  /** From the eye in front to the eye behind, along the room; above 0. */
  readonly rowDepthM: number;
}

/**
 * Height of the line of sight above the eye in front, m, where the eye behind is `riseM` higher than
 * the eye in front: C = D (N + R) / (D + T) - R.
 */
export function clearanceM({ distanceM, overFocusM, rowDepthM }: SightLine, riseM: number): number {
  return (distanceM * (riseM + overFocusM)) / (distanceM + rowDepthM) - overFocusM;
}

/** By how much the eye behind must be higher than the eye in front for `wantedM` of clearance, m. */
export function riseForM({ distanceM, overFocusM, rowDepthM }: SightLine, wantedM: number): number {
  return ((overFocusM + wantedM) * (distanceM + rowDepthM)) / distanceM - overFocusM;
}

/** Height of the eyes of a row above the floor of the shell, m. */
export const eyeLevelM = ({ riserM, eyeHeightM }: Row): number => riserM + eyeHeightM;

/** Rows from the screen backwards. */
export const rowsFromScreen = (rows: readonly Row[]): readonly Row[] =>
  [...rows].sort((a, b) => a.y - b.y);

export interface RowSight {
  readonly row: string;
  /** The next row towards the screen, over which it looks; null for the first. */
  readonly over: string | null;
  /** C-value over that row; null for the first row, and where both have their eyes in one plane. */
  readonly clearanceM: number | null;
}

/** The C-value of every row over the next one towards the screen, in the order of the file. */
export function sightLines(project: Project): readonly RowSight[] {
  const { bottomZ } = screenRect(project);
  const inOrder = rowsFromScreen(project.seating.rows);
  return project.seating.rows.map((row): RowSight => {
    const front = inOrder.filter(({ y }) => y < row.y).at(-1);
    if (!front || front.y <= 0) return { row: row.id, over: front?.id ?? null, clearanceM: null };
    const line: SightLine = {
      distanceM: front.y,
      overFocusM: eyeLevelM(front) - bottomZ,
      rowDepthM: row.y - front.y,
    };
    const riseM = eyeLevelM(row) - eyeLevelM(front);
    return { row: row.id, over: front.id, clearanceM: clearanceM(line, riseM) };
  });
}
