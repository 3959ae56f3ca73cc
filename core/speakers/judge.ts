/** Each loudspeaker of the layout against its window, with what to set so that all arrive alike. */

import { speedOfSoundMS } from '../air/medium';
import type { PlacedSpeaker, Point, Project } from '../room/project';
import { referencePlace } from '../room/seats';
import { directionFrom, type Direction } from './direction';
import { laterPlan } from './later';
import { isKnownChannel, layoutOf, type Channel, type Layout } from './layouts';
import { practice } from '../room/practice/practice';

/** Allowance around a window, degrees. */
export const ANGLE_ALLOWANCE_DEG = practice('angle-allowance');

export interface SpeakerResult extends Direction {
  readonly channel: string;
  readonly position: Point;
  /** Delay to set in ms: 0 for the farthest loudspeaker. */
  readonly delayMs: number;
  /** Level to set in dB by the inverse distance law: 0 for the farthest, negative for nearer ones. */
  readonly levelDb: number;
  /** Degrees outside the window of the layout: 0 within it. */
  readonly azimuthOffDeg: number;
  readonly elevationOffDeg: number;
  readonly inRange: boolean;
}

/** Signed degrees by which `angle` lies outside [low, high], 0 within (and within the allowance). */
export function outsideBy(angle: number, [low, high]: readonly [number, number]): number {
  if (angle < low - ANGLE_ALLOWANCE_DEG) return angle - low;
  if (angle > high + ANGLE_ALLOWANCE_DEG) return angle - high;
  return 0;
}

/** Signed degrees outside the channel's azimuth window, going round the nearer way. */
export function azimuthOff(azimuthDeg: number, channel: Channel): number {
  let best = Infinity;
  for (let turn = -360; turn <= 360; turn += 360) {
    const off = outsideBy(azimuthDeg + turn, channel.azimuth);
    if (Math.abs(off) < Math.abs(best)) best = off;
  }
  return best;
}

/** Degrees by which a direction lies outside the channel's window, azimuth and elevation together. */
export function degreesOutside(
  { azimuthDeg, elevationDeg }: Pick<Direction, 'azimuthDeg' | 'elevationDeg'>,
  channel: Channel,
): number {
  return (
    Math.abs(azimuthOff(azimuthDeg, channel)) + Math.abs(outsideBy(elevationDeg, channel.elevation))
  );
}

/** A loudspeaker of the layout to come. */
export interface LaterResult extends Direction {
  readonly channel: string;
  readonly name: string;
  readonly short: string;
  readonly position: Point;
  readonly inRange: boolean;
}

export interface SpeakersResult {
  /** As the chosen recommendation wants it. */
  readonly layout: Layout | null;
  readonly listening: Point | null;
  readonly speakers: readonly SpeakerResult[];
  /** Channels of the layout that have no loudspeaker yet. */
  readonly missing: readonly Channel[];
  /** Of the layout to come: judged by its windows, in no alignment. */
  readonly later: readonly LaterResult[];
  /** Kept for another layout: this one does not have their channels, and nothing counts them. */
  readonly resting: readonly PlacedSpeaker[];
}

/** Judge every placed loudspeaker of the layout at the reference seat's ears. */
export function judgeSpeakers(project: Project): SpeakersResult {
  const layout = layoutOf(project.speakers.layout, project.speakers.recommendation) ?? null;
  const listening = referencePlace(project)?.position ?? null;
  const missing = (layout?.channels ?? []).filter(
    (channel) => !project.speakers.placed.some((speaker) => speaker.channel === channel.label),
  );
  const plan = laterPlan(project);
  const resting = restingSpeakers(project, layout).filter(
    (speaker) => !plan?.placed.includes(speaker),
  );
  if (!listening) return { layout, listening, speakers: [], missing, later: [], resting };

  const heard = placedOf(project, layout).map((speaker) => ({
    ...speaker,
    direction: directionFrom(listening, speaker.position),
  }));
  const farthestM = Math.max(...heard.map((speaker) => speaker.direction.distanceM), 0);
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const speakers = heard.map(({ channel: label, position, direction }): SpeakerResult => {
    const channel = layout?.channels.find((candidate) => candidate.label === label);
    const azimuthOffDeg = channel ? azimuthOff(direction.azimuthDeg, channel) : 0;
    const elevationOffDeg = channel ? outsideBy(direction.elevationDeg, channel.elevation) : 0;
    const near = Math.max(direction.distanceM, 0.01);
    return {
      channel: label,
      position,
      ...direction,
      delayMs: ((farthestM - direction.distanceM) / speedMS) * 1000,
      levelDb: farthestM > 0 ? Math.min(0, 20 * Math.log10(near / farthestM)) : 0,
      azimuthOffDeg,
      elevationOffDeg,
      inRange: channel !== undefined && azimuthOffDeg === 0 && elevationOffDeg === 0,
    };
  });
  const later = (plan?.placed ?? []).flatMap(
    ({ channel: label, position }): readonly LaterResult[] => {
      const channel = plan?.channels.find((candidate) => candidate.label === label);
      if (!channel) return [];
      const direction = directionFrom(listening, position);
      const inRange = degreesOutside(direction, channel) === 0;
      const { name, short } = channel;
      return [{ channel: label, name, short, position, ...direction, inRange }];
    },
  );
  return { layout, listening, speakers, missing, later, resting };
}

/** Placed loudspeakers that the layout counts: all but those that rest. */
export function placedOf(project: Project, layout: Layout | null): readonly PlacedSpeaker[] {
  const resting = restingSpeakers(project, layout);
  return project.speakers.placed.filter((speaker) => !resting.includes(speaker));
}

/** Placed loudspeakers whose channel another layout has and this one has not. */
export function restingSpeakers(project: Project, layout: Layout | null): readonly PlacedSpeaker[] {
  if (!layout) return [];
  return project.speakers.placed.filter(
    ({ channel }) =>
      isKnownChannel(channel) && !layout.channels.some(({ label }) => label === channel),
  );
}
