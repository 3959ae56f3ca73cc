/** Loudspeakers as they are turned, with the ray from each to the ears and the windows of the layout. */

import type { Point, Project } from '../room/project';
import { aimVector } from '../speakers/aim';
import { speakerBox, USUAL_BOX_M } from '../speakers/box';
import { directionFrom } from '../speakers/direction';
import { degreesOutside, type SpeakersResult } from '../speakers/judge';
import type { Body } from './bodies';
import { cornersOf, type Look, type Mark, type PaperPoint, type Tone } from './marks';
import { depthOf, depthsOf, linesOnPaper, onPaper, rectOnPaper } from './on-paper';
import type { FlatView } from './views';

/** What is sunk shows its baffle alone, m. */
export const BAFFLE_M = 0.03;

/** A cabinet behind its baffle: corners, and the ways it faces. */
export interface CabinetShape {
  readonly centre: Point;
  /** Unit vectors: out of the baffle, across it, and up it. */
  readonly look: Point;
  readonly across: Point;
  readonly up: Point;
  /** Width, height and depth, m. */
  readonly sizeM: Point;
}

export function cabinetShape(centre: Point, look: Point, sizeM: Point): CabinetShape {
  const level = Math.hypot(look[0], look[1]);
  const across: Point = level < 1e-9 ? [1, 0, 0] : [-look[1] / level, look[0] / level, 0];
  const raw: Point = [
    across[1] * look[2] - across[2] * look[1],
    across[2] * look[0] - across[0] * look[2],
    across[0] * look[1] - across[1] * look[0],
  ];
  const up: Point = raw[2] < 0 ? [-raw[0], -raw[1], -raw[2]] : raw;
  return { centre, look, across, up, sizeM };
}

/** The place so far across, up and out of the middle of the baffle, m. */
function placeOn(
  { centre, look, across, up }: CabinetShape,
  a: number,
  b: number,
  c: number,
): Point {
  const at = (n: 0 | 1 | 2): number => centre[n] + across[n] * a + up[n] * b + look[n] * c;
  return [at(0), at(1), at(2)];
}

interface Side {
  readonly out: Point;
  readonly corners: readonly Point[];
}

const turned = (way: Point, sign: 1 | -1): Point => [way[0] * sign, way[1] * sign, way[2] * sign];

function sidesOf(shape: CabinetShape): readonly Side[] {
  const { sizeM, look, across, up } = shape;
  const [w, h, d] = [sizeM[0] / 2, sizeM[1] / 2, sizeM[2]];
  const at = (a: number, b: number, c: number): Point => placeOn(shape, a * w, b * h, -c * d);
  return [
    { out: look, corners: [at(-1, -1, 0), at(1, -1, 0), at(1, 1, 0), at(-1, 1, 0)] },
    { out: turned(look, -1), corners: [at(-1, -1, 1), at(1, -1, 1), at(1, 1, 1), at(-1, 1, 1)] },
    { out: across, corners: [at(1, -1, 0), at(1, 1, 0), at(1, 1, 1), at(1, -1, 1)] },
    {
      out: turned(across, -1),
      corners: [at(-1, -1, 0), at(-1, 1, 0), at(-1, 1, 1), at(-1, -1, 1)],
    },
    { out: up, corners: [at(-1, 1, 0), at(1, 1, 0), at(1, 1, 1), at(-1, 1, 1)] },
    { out: turned(up, -1), corners: [at(-1, -1, 0), at(1, -1, 0), at(1, -1, 1), at(-1, -1, 1)] },
  ];
}

/** A side that turns to the eye by less than this is seen on edge. */
const ON_EDGE = 1e-6;
const RING_STEPS = 28;

/** The sides of a cabinet that turn to the eye, and its two drivers where the baffle does. */
function cabinetMarks(
  view: FlatView,
  shape: CabinetShape,
  fill: Tone,
  tone: Tone,
): readonly Mark[] {
  const towards = (out: Point): number => -depthOf(view, out);
  const layer = 'loudspeakers';
  const seen = sidesOf(shape).filter(({ out }) => towards(out) > ON_EDGE);
  const sides = seen.flatMap(({ corners }): readonly Mark[] => {
    const points = corners.map((corner) => onPaper(view, corner));
    return [
      { kind: 'fill', layer, points, tone: fill },
      { kind: 'lines', layer, paths: [points], closed: true, tone, weight: 'seen' },
    ];
  });
  if (towards(shape.look) < 0.05) return sides;
  const driver = Math.min(shape.sizeM[0], shape.sizeM[1]) / 2;
  const ring = (upM: number, radiusM: number): readonly PaperPoint[] =>
    Array.from({ length: RING_STEPS }, (_, n) => {
      const angle = (n / RING_STEPS) * 2 * Math.PI;
      const place = placeOn(shape, radiusM * Math.cos(angle), upM + radiusM * Math.sin(angle), 0);
      return onPaper(view, place);
    });
  const [low, high] = [-0.1 * shape.sizeM[1], 0.32 * shape.sizeM[1]];
  return [
    ...sides,
    {
      kind: 'lines',
      layer,
      paths: [ring(low, driver * 0.75), ring(low, driver * 0.5)],
      closed: true,
      tone,
      weight: 'light',
    },
    { kind: 'fill', layer, points: ring(high, driver * 0.25), tone },
  ];
}

/** What a drawing asks of the judgement of the loudspeakers. */
export type JudgedSpeakers = Pick<SpeakersResult, 'layout' | 'listening' | 'speakers' | 'later'>;

export interface LoudspeakerWants {
  readonly judged: JudgedSpeakers;
  /** Ears that the rays go to; the reference place's where null. */
  readonly hearing: Point | null;
  /** Channel of the chosen one. */
  readonly chosen: string | null;
}

/** How a loudspeaker and its ray look: within its window in ink, outside it in the accent, dashed. */
function isWithin(
  { judged, hearing }: LoudspeakerWants,
  channel: string,
  position: Point,
): boolean {
  const window = judged.layout?.channels.find(({ label }) => label === channel);
  const ears = hearing ?? judged.listening;
  return window && ears ? degreesOutside(directionFrom(ears, position), window) === 0 : false;
}

/** Cabinets of the layout, and the outlines of those that are to come. */
export function loudspeakerBodies(
  view: FlatView,
  project: Project,
  wants: LoudspeakerWants,
): readonly Body[] {
  const { judged, chosen } = wants;
  const placedOf = (channel: string) =>
    project.speakers.placed.find((placed) => placed.channel === channel);
  const present = judged.speakers.flatMap(({ channel, position }): readonly Body[] => {
    const placed = placedOf(channel);
    if (!placed) return [];
    const { cabinet, sunkM, axis } = speakerBox(project, placed);
    const sunk = sunkM > 0;
    const [wide, high] = placed.boxM ?? USUAL_BOX_M;
    // Where the file gives no size, a usual one that its wall leaves place for.
    const deep = placed.boxM?.[2] ?? cabinet.max[axis] - cabinet.min[axis];
    const shape = cabinetShape(position, aimVector(project, placed), [
      wide,
      high,
      sunk ? BAFFLE_M : deep,
    ]);
    const tone = isWithin(wants, channel, position) ? 'ink' : 'accent';
    const depths = sidesOf(shape).flatMap(({ corners }) => corners.map((c) => depthOf(view, c)));
    const body: Body = {
      nearM: Math.min(...depths),
      placeM: depthOf(view, position),
      marks: cabinetMarks(view, shape, channel === chosen ? 'accent' : 'raised', tone),
    };
    return sunk ? [dashedBox(view, cabinet), body] : [body];
  });
  const later = judged.later.flatMap(({ channel }): readonly Body[] => {
    const placed = placedOf(channel);
    return placed ? [dashedBox(view, speakerBox(project, placed).cabinet)] : [];
  });
  return [...present, ...later];
}

function dashedBox(view: FlatView, box: { readonly min: Point; readonly max: Point }): Body {
  const [nearM, farM] = depthsOf(view, box);
  return {
    nearM,
    placeM: (nearM + farM) / 2,
    marks: [
      {
        kind: 'lines',
        layer: 'loudspeakers',
        paths: [cornersOf(rectOnPaper(view, box))],
        closed: true,
        tone: 'ink-soft',
        weight: 'seen',
        dashed: true,
      },
    ],
  };
}

/** The ray from each loudspeaker to the ears; dashed where it comes from outside its window. */
export function rayMarks(view: FlatView, wants: LoudspeakerWants): readonly Mark[] {
  const { judged, hearing, chosen } = wants;
  const ears = hearing ?? judged.listening;
  if (!ears) return [];
  return judged.speakers.flatMap(({ channel, position }) => {
    const within = isWithin(wants, channel, position);
    const look: Look = within
      ? { tone: 'ink', weight: 'light', ...(channel === chosen ? {} : { opacity: 0.6 }) }
      : { tone: 'accent', weight: 'light', dashed: true };
    return linesOnPaper(view, 'rays', [[ears, position]], look);
  });
}

/** Before the baffle, m. */
export const AIM_REACH_M = 0.55;

/** Where the chosen loudspeaker looks. */
export function aimMarks(
  view: FlatView,
  project: Project,
  channel: string | null,
): readonly Mark[] {
  const placed = project.speakers.placed.find((known) => known.channel === channel);
  if (!placed) return [];
  const { position } = placed;
  const look = aimVector(project, placed);
  const to: Point = [
    position[0] + AIM_REACH_M * look[0],
    position[1] + AIM_REACH_M * look[1],
    position[2] + AIM_REACH_M * look[2],
  ];
  return linesOnPaper(view, 'rays', [[position, to]], { tone: 'ink', weight: 'seen' });
}
