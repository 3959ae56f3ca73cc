/**
 * The box that a loudspeaker takes. `position` is the acoustic centre and lies in the middle of the
 * baffle; the cabinet reaches back from there, along the axis of the surface that carries it. Boxes
 * are axis-aligned: a cabinet that is turned or tilted takes more.
 */

import { faceAxes, type Axis } from '../room/faces';
import { farCorner, mapPoint } from '../room/point';
import type { Mount, PlacedSpeaker, Point, Project } from '../room/project';
import { screenRect } from '../room/screen';
import { referencePlace } from '../room/seats';
import type { Box } from '../scene/box';
import type { BuiltFace } from '../room/built-face';
import { beforeFaceM, facesOf, nearestFace } from '../scene/faces';
import { practice } from '../room/practice/practice';

/** A usual cabinet, m: width, height, depth. */
export const USUAL_BOX_M: Point = practice('usual-cabinet');

/** Depth of what is built into a stud wall, m. */
export const IN_WALL_DEPTH_M = practice('stud-depth');
/** A baffle nearer to its surface than this is flush with it, m. */
export const FLUSH_M = practice('flush-within');
/** Farther than this from every surface a loudspeaker stands, m. */
export const BRACKET_M = practice('bracket-reach');

/** Limits are met to within this, so that mirrored rooms are judged alike, m. */
const DUST_M = 1e-6;

export interface SpeakerBox {
  readonly channel: string;
  readonly mount: Mount;
  /** The surface that carries it; null for a stand. */
  readonly face: BuiltFace | null;
  /** Which way the baffle looks. */
  readonly axis: Axis;
  readonly looks: -1 | 1;
  /** The whole cabinet, with what of it is in or behind the surface. */
  readonly cabinet: Box;
  /** What it takes of the room, with the stand below it; null where it is flush. */
  readonly inRoom: Box | null;
  /** Baffle before its surface, m; negative behind it, 0 for a stand. */
  readonly beforeM: number;
  /** How far the cabinet reaches into its surface, m. */
  readonly sunkM: number;
  /** False where its size is the usual one because the file gives none. */
  readonly stated: boolean;
}

/**
 * A mount that follows from where the baffle is: the nearest surface carries it, else a stand. Behind
 * the screen is what the person says, and never follows.
 */
export function defaultMount(
  project: Project,
  position: Point,
  faces: readonly BuiltFace[] = facesOf(project.room),
): Mount {
  const face = nearestFace(
    faces.filter(({ side, solid }) => side !== 'floor' || solid !== null),
    position,
  );
  const beforeM = face ? Math.abs(beforeFaceM(face, position)) : Infinity;
  if (!face || beforeM > BRACKET_M + DUST_M || !isOver(face, position)) return 'stand';
  if (face.solid && face.side === 'ceiling') return 'stand';
  if (face.solid && ['soffit', 'beam'].includes(face.solid.kind)) return 'soffit';
  if (face.axis === 2) return 'ceiling';
  return beforeM < FLUSH_M - DUST_M ? 'in-wall' : 'on-wall';
}

/** True where the place, seen along the room, lies on the picture. */
export function isOnPicture(project: Project, [x, , z]: Point): boolean {
  const { leftX, rightX, bottomZ, topZ } = screenRect(project);
  const [across, up] = [Math.min(x - leftX, rightX - x), Math.min(z - bottomZ, topZ - z)];
  return Math.min(across, up) > DUST_M;
}

function isOver({ side, rect }: BuiltFace, place: Point): boolean {
  const [u, v] = faceAxes(side);
  const slack = 0.01;
  return (
    place[u] > rect[0] - slack &&
    place[u] < rect[2] + slack &&
    place[v] > rect[1] - slack &&
    place[v] < rect[3] + slack
  );
}

/** Faces that can carry the mount. */
export function facesFor(mount: Mount, faces: readonly BuiltFace[]): readonly BuiltFace[] {
  return faces.filter(({ name, axis, side, solid }) => {
    const hung = solid !== null && ['soffit', 'beam'].includes(solid.kind);
    switch (mount) {
      case 'on-wall':
      case 'in-wall':
        return axis !== 2 && !hung;
      case 'ceiling':
        return name === 'ceiling' || (solid !== null && side === 'floor');
      case 'soffit':
        return hung && side !== 'ceiling';
      case 'behind-screen':
        return name === 'front';
      case 'stand':
        return false;
    }
  });
}

/** The box of a placed loudspeaker. */
export function speakerBox(project: Project, speaker: PlacedSpeaker): SpeakerBox {
  const { channel, position } = speaker;
  const faces = facesOf(project.room);
  const mount = speaker.mount ?? defaultMount(project, position, faces);
  const fitting = facesFor(mount, faces);
  const face =
    mount === 'stand'
      ? null
      : nearestFace(fitting.length > 0 ? fitting : facesFor('on-wall', faces), position);
  const { axis, looks } = face
    ? { axis: face.axis, looks: face.inward }
    : standLooks(project, position);
  const beforeM = face ? beforeFaceM(face, position) : 0;
  const sizeM = speaker.boxM ?? usualBox(mount, beforeM);
  const raw = cabinetOf(position, sizeM, axis, looks);
  const cabinet = speaker.boxM ? raw : cutToShell(raw, project, face ? axis : null);
  return {
    channel,
    mount,
    face,
    axis,
    looks,
    cabinet,
    inRoom: face ? before(cabinet, face) : onStand(cabinet, project),
    beforeM,
    sunkM: face ? Math.max(0, sizeM[2] - beforeM) : 0,
    stated: speaker.boxM !== undefined,
  };
}

/** The size where the file gives none: no deeper than the place before its surface allows. */
function usualBox(mount: Mount, beforeM: number): Point {
  const [width, height, depth] = USUAL_BOX_M;
  if (mount === 'in-wall') return [width, height, IN_WALL_DEPTH_M];
  const hangs = mount === 'on-wall' || mount === 'ceiling' || mount === 'soffit';
  return [width, height, hangs && beforeM >= FLUSH_M - DUST_M ? Math.min(depth, beforeM) : depth];
}

/** A stand faces the reference seat along the longer way, along the room where both are alike; the back wall where there is no seat. */
function standLooks(
  project: Project,
  position: Point,
): { readonly axis: Axis; readonly looks: -1 | 1 } {
  const ears = referencePlace(project)?.position;
  if (!ears) return { axis: 1, looks: 1 };
  const [dx, dy] = [ears[0] - position[0], ears[1] - position[1]];
  return Math.abs(dx) > Math.abs(dy) + DUST_M
    ? { axis: 0, looks: dx < 0 ? -1 : 1 }
    : { axis: 1, looks: dy < 0 ? -1 : 1 };
}

/** Cabinet of `sizeM` behind the baffle; on a ceiling its height lies along the room. */
export function cabinetOf(
  position: Point,
  [width, height, depth]: Point,
  axis: Axis,
  looks: -1 | 1,
): Box {
  const half: readonly number[] =
    axis === 2
      ? [width / 2, height / 2]
      : axis === 1
        ? [width / 2, 0, height / 2]
        : [0, width / 2, height / 2];
  const end = (sign: -1 | 1): Point =>
    mapPoint(position, (at, n) =>
      n === axis ? (sign === looks ? at : at - looks * depth) : at + sign * (half[n] ?? 0),
    );
  return { min: end(-1), max: end(1) };
}

/** A size that nobody stated is taken smaller where the shell leaves less room beside the baffle. */
function cutToShell({ min, max }: Box, { room }: Project, except: Axis | null): Box {
  const far = farCorner(room.size);
  const cut = (corner: Point): Point =>
    mapPoint(corner, (at, n) => (n === except ? at : Math.min(Math.max(at, 0), far[n])));
  return { min: cut(min), max: cut(max) };
}

/** The part of the cabinet before its surface; null where there is none. */
function before({ min, max }: Box, { axis, at, inward }: BuiltFace): Box | null {
  const clip = (corner: Point): Point =>
    mapPoint(corner, (value, n) =>
      n === axis ? (inward === 1 ? Math.max(value, at) : Math.min(value, at)) : value,
    );
  const [low, high] = [clip(min), clip(max)];
  return high[axis] - low[axis] > FLUSH_M - 2 * DUST_M ? { min: low, max: high } : null;
}

/** The cabinet and what is below it, down to the floor or to the solid that it stands on. */
function onStand({ min, max }: Box, { room }: Project): Box {
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const tops = room.solids
    .filter(
      (solid) =>
        x > solid.min[0] &&
        x < solid.max[0] &&
        y > solid.min[1] &&
        y < solid.max[1] &&
        solid.max[2] <= min[2] + 1e-6,
    )
    .map((solid) => solid.max[2]);
  return { min: [min[0], min[1], Math.min(min[2], Math.max(0, ...tops))], max };
}
