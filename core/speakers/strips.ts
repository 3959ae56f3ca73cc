/**
 * The strip of each face in which a channel may go: its window of azimuth and elevation as seen from
 * the ears, cast onto the faces that are there. What another solid hides does not count: a ray has to
 * reach the face first. Edges of faces are exact; the curved edges that an elevation draws on a wall
 * are cut into chords (1 mm off at 3 m).
 */

import { degrees, radians } from '../quantity/angle';
import type { Point, Room } from '../room/project';
import { ANGLE_ALLOWANCE_DEG } from './judge';
import type { Window } from './layouts';
import { columnOf, sightFrom, type Seen, type SightField } from './strip-column';

/** A part of one face, as a polygon in room coordinates without its first corner repeated. */
export interface Strip {
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  readonly polygon: readonly Point[];
}

/** Azimuths no farther apart than this, degrees. */
const STEP_DEG = 2.5;
/** Columns lie this close to the corners of the room on either side, degrees. */
const BESIDE_DEG = 1e-5;
/** Straight up and down have no azimuth: the last elevation that is looked at, degrees. */
const MOST_ELEVATION_DEG = 89.5;

/**
 * Every strip of the channel's window for a listener at `ears` who faces the screen. A window without
 * width or height is widened by what a tape measure can set. `depthM` is how far before its face the
 * acoustic centre lies (a cabinet on the wall); the strips then lie that far before the faces. None
 * where the ears are not in the open.
 */
export function stripsOf(room: Room, ears: Point, window: Window, depthM = 0): readonly Strip[] {
  const view = sightFrom(ears, room, depthM);
  if (!view) return [];
  const [left, right] = widened(window.azimuth);
  const [low, high] = widened(window.elevation).map((elevation) =>
    Math.tan(radians(Math.min(Math.max(elevation, -MOST_ELEVATION_DEG), MOST_ELEVATION_DEG))),
  );
  const slopes = [low ?? 0, high ?? 0] as const;
  const look = (azimuthDeg: number): Column => ({
    azimuthDeg,
    seen: columnOf(view, radians(azimuthDeg), slopes),
  });
  const strips: Strip[] = [];
  let open: readonly Run[] = [];
  let before: Column | null = null;
  for (const azimuthDeg of azimuths(view, left, right)) {
    const column = look(azimuthDeg);
    const between: readonly Column[] = before ? turns(look, before, column) : [];
    for (const next of [...between, column]) {
      open = advance(open, before, next, strips);
      before = next;
    }
  }
  for (const run of open) finish(run, strips);
  return strips;
}

function widened([low, high]: readonly [number, number]): readonly [number, number] {
  return low === high ? [low - ANGLE_ALLOWANCE_DEG, high + ANGLE_ALLOWANCE_DEG] : [low, high];
}

interface Column {
  readonly azimuthDeg: number;
  readonly seen: readonly Seen[];
}

/** A strip that is still growing: its lower edge, and its upper one. */
interface Run {
  readonly face: string;
  readonly lows: Point[];
  readonly highs: Point[];
}

/** Azimuths to look along, rising: on either side of every corner, and steps between. */
function azimuths(
  { ears, shell, solids }: SightField,
  left: number,
  right: number,
): readonly number[] {
  const corners = [shell, ...solids].flatMap(({ min, max }) =>
    [min[0], max[0]].flatMap((x) =>
      [min[1], max[1]].map((y) => degrees(Math.atan2(ears[0] - x, ears[1] - y))),
    ),
  );
  // Straight towards a wall the curves on it turn back.
  const cuts = [...corners, 0, 90, 180, -90]
    .flatMap((azimuth) => [azimuth - 360, azimuth, azimuth + 360])
    .filter((azimuth) => azimuth > left + BESIDE_DEG && azimuth < right - BESIDE_DEG)
    .sort((a, b) => a - b);
  const list: number[] = [];
  const ends = [left, ...cuts, right];
  for (let i = 1; i < ends.length; i++) {
    const [a, b] = [ends[i - 1] ?? left, ends[i] ?? right];
    if (b - a < 4 * BESIDE_DEG) continue;
    const from = i === 1 ? a : a + BESIDE_DEG;
    const to = i === ends.length - 1 ? b : b - BESIDE_DEG;
    const steps = Math.max(1, Math.ceil((to - from) / STEP_DEG));
    for (let n = 0; n <= steps; n++) list.push(from + ((to - from) * n) / steps);
  }
  return list;
}

/** Which faces a column sees, from below upwards. */
const faces = ({ seen }: Column): string => seen.map(({ face }) => face).join();

/** Columns on either side of every azimuth between two columns where a face comes or goes. */
function turns(
  look: (azimuthDeg: number) => Column,
  before: Column,
  after: Column,
): readonly Column[] {
  const columns: Column[] = [];
  let from = before;
  // More than a few turns within a step are the work of slivers too small to build on.
  for (let turn = 0; turn < 4 && faces(from) !== faces(after); turn++) {
    let [same, other] = [from, after];
    while (other.azimuthDeg - same.azimuthDeg > BESIDE_DEG) {
      const middle = look((same.azimuthDeg + other.azimuthDeg) / 2);
      if (faces(middle) === faces(from)) same = middle;
      else other = middle;
    }
    columns.push(same, other);
    from = other;
  }
  return columns;
}

/** Grow the strips by one column; those whose face ends, or goes on elsewhere, are finished. */
function advance(
  open: readonly Run[],
  before: Column | null,
  column: Column,
  done: Strip[],
): readonly Run[] {
  const isStep = before !== null && column.azimuthDeg - before.azimuthDeg > 3 * BESIDE_DEG;
  const next: Run[] = [];
  for (const face of new Set([...open, ...column.seen].map((part) => part.face))) {
    const runs = open.filter((run) => run.face === face);
    const parts = column.seen.filter((part) => part.face === face);
    if (runs.length === parts.length && runs.every((run, i) => isStep || touches(run, parts[i]))) {
      runs.forEach((run, i) => next.push(grown(run, parts[i])));
      continue;
    }
    for (const run of runs) finish(run, done);
    for (const part of parts) next.push(grown({ face, lows: [], highs: [] }, part));
  }
  return next;
}

function grown(run: Run, part: Seen | undefined): Run {
  if (!part) return run;
  run.lows.push(part.at(part.low));
  run.highs.push(part.at(part.high));
  return run;
}

/** True where the strip goes on into the part on the other side of a corner. */
function touches(run: Run, part: Seen | undefined): boolean {
  const [low, high] = [run.lows.at(-1), run.highs.at(-1)];
  if (!part || !low || !high) return false;
  const near = (a: Point, b: Point): boolean =>
    a.every((at, n) => Math.abs(at - (b[n] ?? 0)) < 0.001);
  return near(low, part.at(part.low)) && near(high, part.at(part.high));
}

function finish({ face, lows, highs }: Run, done: Strip[]): void {
  if (lows.length > 1) done.push({ face, polygon: [...lows, ...highs.reverse()] });
}
