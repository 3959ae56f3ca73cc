/** Loudspeakers outside the room, inside a fitting, at the ears, or at the wrong angle. */

import { roundLength } from '../quantity/length';
import { farCorner, mapPoint } from '../room/point';
import type { Project } from '../room/project';
import { isInside, isInTheOpen, outsideShellM } from '../room/space';
import type { Channel } from '../speakers/layouts';
import type { SpeakerResult } from '../speakers/judge';
import { nominalPlace, placeAtAngle, WALL_CLEARANCE_M } from '../speakers/nominal-place';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { SEAT_FIRST } from './layout';

export function speakerFindings(context: FindingContext): readonly Finding[] {
  const { project, speakers } = context;
  const { layout } = speakers;
  if (!layout) return [];
  const findings: Finding[] = [];
  for (const speaker of speakers.speakers) {
    const channel = layout.channels.find((candidate) => candidate.label === speaker.channel);
    if (!channel) continue;
    const outside = outsideOf(context, speaker, channel);
    if (outside) findings.push(outside);
    else if (speaker.distanceM < LEAST_DISTANCE_M) findings.push(atEars(context, speaker, channel));
    else if (!speaker.inRange) findings.push(offAngle(project, speaker, channel, layout.source));
  }
  return findings;
}

/** Nearer to the ears than this is no loudspeaker place, m (our own convention). */
const LEAST_DISTANCE_M = 0.3;

/** A loudspeaker on the listener: angle, delay and level from there say nothing. */
function atEars(
  { project, lengthText }: FindingContext,
  speaker: SpeakerResult,
  channel: Channel,
): Finding {
  const position = nominalPlace(project, channel);
  return {
    id: `speaker-at-ears:${channel.label}`,
    severity: 'fault',
    subject: 'speakers',
    where: `${channel.name} (${channel.label})`,
    message: `${channel.name} stands ${lengthText(speaker.distanceM)} from the reference seat's ears: its angle, delay and level say nothing.`,
    figureName: 'from the ears',
    value: speaker.distanceM,
    limit: LEAST_DISTANCE_M,
    unit: 'm',
    source: 'our own convention',
    remedies: position
      ? [
          {
            text: 'Put it on the wall at its nominal angle.',
            edit: { kind: 'speaker', channel: channel.label, position },
          },
        ]
      : [{ text: SEAT_FIRST }],
    place: { kind: 'speaker', channel: channel.label },
  };
}

function outsideOf(
  { project, lengthText }: FindingContext,
  speaker: SpeakerResult,
  channel: Channel,
): Finding | null {
  const far = farCorner(project.room.size);
  const { position } = speaker;
  const out = outsideShellM(project.room.size, position);
  const solid = project.room.solids.find(({ min, max }) => isInside(position, min, max));
  if (out <= 0 && !solid) return null;
  const inside = mapPoint(position, (at, axis) =>
    roundLength(Math.min(Math.max(at, WALL_CLEARANCE_M), far[axis] - WALL_CLEARANCE_M)),
  );
  const nominal = nominalPlace(project, channel);
  const remedies: Remedy[] = [];
  if (out > 0 && isInTheOpen(inside, project.room)) {
    remedies.push({
      text: 'Bring it back in to the nearest wall.',
      edit: { kind: 'speaker', channel: channel.label, position: inside },
    });
  }
  if (nominal) {
    remedies.push({
      text: 'Put it on the wall at its nominal angle.',
      edit: { kind: 'speaker', channel: channel.label, position: nominal },
    });
  }
  return {
    id: `speaker-outside:${channel.label}`,
    severity: 'fault',
    subject: 'speakers',
    where: `${channel.name} (${channel.label})`,
    message:
      out > 0
        ? `${channel.name} stands ${lengthText(out)} outside the room.`
        : `${channel.name} stands inside the ${solid?.kind ?? 'fitting'} "${solid?.id ?? ''}".`,
    figureName: 'outside',
    value: out > 0 ? out : null,
    limit: out > 0 ? 0 : null,
    unit: out > 0 ? 'm' : '',
    source: 'geometry',
    remedies: remedies.length > 0 ? remedies : [{ text: SEAT_FIRST }],
    place: { kind: 'speaker', channel: channel.label },
  };
}

/** The angle nearest to the present one that the window allows. */
function nearestAllowed(angle: number, off: number): number {
  return angle - off;
}

function offAngle(
  project: Project,
  speaker: SpeakerResult,
  channel: Channel,
  source: string,
): Finding {
  const sideways = speaker.azimuthOffDeg !== 0;
  const [low, high] = sideways ? channel.azimuth : channel.elevation;
  const off = sideways ? speaker.azimuthOffDeg : speaker.elevationOffDeg;
  const value = sideways ? speaker.azimuthDeg : speaker.elevationDeg;
  const azimuth = nearestAllowed(speaker.azimuthDeg, speaker.azimuthOffDeg);
  const elevation = nearestAllowed(speaker.elevationDeg, speaker.elevationOffDeg);
  const position = placeAtAngle(project, azimuth, elevation);
  const allowed = low === high ? `${low}` : `${low} to ${high}`;
  const what = sideways ? 'azimuth' : 'elevation';
  return {
    id: `speaker-range:${channel.label}`,
    severity: Math.abs(off) > 5 ? 'warning' : 'note',
    subject: 'speakers',
    where: `${channel.name} (${channel.label})`,
    message: `${channel.name} has ${what} ${value.toFixed(1)} degrees; ${allowed} is the recommended ${low === high ? 'angle' : 'range'}, so it is ${Math.abs(off).toFixed(1)} off.`,
    figureName: what,
    value,
    limit: value - off,
    unit: 'deg',
    source,
    remedies: position
      ? [
          {
            text: sideways
              ? `Move it along the wall to ${azimuth.toFixed(0)} degrees.`
              : `Move it up or down the wall to ${elevation.toFixed(0)} degrees of elevation.`,
            edit: { kind: 'speaker', channel: channel.label, position },
          },
        ]
      : [{ text: SEAT_FIRST }],
    place: { kind: 'speaker', channel: channel.label },
  };
}
