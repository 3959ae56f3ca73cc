/** Loudspeakers outside the room, inside a fitting, at the ears, or at the wrong angle. */

import { roundLength } from '../quantity/length';
import { farCorner, mapPoint } from '../room/point';
import { isInside, outsideShellM } from '../room/space';
import type { Channel } from '../speakers/layouts';
import type { SpeakerResult } from '../speakers/judge';
import { firstPlace } from '../speakers/first-place';
import { WALL_CLEARANCE_M } from '../speakers/nominal-place';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { SEAT_FIRST } from './layout';
import { angleFinding } from './speaker-angles';
import { moveTo } from './speaker-moves';
import { aboutChannel } from './speaker-names';
import { practice, practiceSource } from '../room/practice/practice';

export function speakerFindings(context: FindingContext): readonly Finding[] {
  const { layout } = context.speakers;
  if (!layout) return [];
  const findings: Finding[] = [];
  for (const speaker of context.speakers.speakers) {
    const channel = layout.channels.find((candidate) => candidate.label === speaker.channel);
    if (!channel) continue;
    const outside = outsideOf(context, speaker, channel);
    if (outside) findings.push(outside);
    else if (speaker.distanceM < LEAST_DISTANCE_M) findings.push(atEars(context, speaker, channel));
    else if (!speaker.inRange) findings.push(angleFinding(context, speaker, channel));
  }
  return findings;
}

/** Nearer to the ears than this is no loudspeaker place, m. */
const LEAST_DISTANCE_M = practice('least-from-ears');

/** A loudspeaker on the listener: angle, delay and level from there say nothing. */
function atEars(context: FindingContext, speaker: SpeakerResult, channel: Channel): Finding {
  const remedy = toTheWall(context, channel);
  return {
    id: `speaker-at-ears:${channel.label}`,
    severity: 'fault',
    subject: 'speakers',
    ...aboutChannel(channel),
    message: `${channel.name} stands ${context.measures.rounded(speaker.distanceM)} from the ears at the reference place: its angle, delay and level say nothing.`,
    figureName: 'from the ears',
    value: speaker.distanceM,
    limit: LEAST_DISTANCE_M,
    unit: 'm',
    source: practiceSource('least-from-ears'),
    remedies: [remedy ?? { text: SEAT_FIRST }],
  };
}

function outsideOf(
  context: FindingContext,
  speaker: SpeakerResult,
  channel: Channel,
): Finding | null {
  const { project, lengthText } = context;
  const far = farCorner(project.room.size);
  const { position } = speaker;
  const out = outsideShellM(project.room.size, position);
  const solid = project.room.solids.find(({ min, max }) => isInside(position, min, max));
  if (out <= 0 && !solid) return null;
  const inside = mapPoint(position, (at, axis) =>
    roundLength(Math.min(Math.max(at, WALL_CLEARANCE_M), far[axis] - WALL_CLEARANCE_M)),
  );
  const placed = project.speakers.placed.find((known) => known.channel === channel.label);
  const back = out > 0 && placed ? moveTo(context, channel, placed, inside) : null;
  const toWall = toTheWall(context, channel);
  const remedies: readonly Remedy[] = [
    ...(back ? [{ text: 'Bring it back in to the nearest clear place.', edit: back.edit }] : []),
    ...(toWall ? [toWall] : []),
  ];
  return {
    id: `speaker-outside:${channel.label}`,
    severity: 'fault',
    subject: 'speakers',
    ...aboutChannel(channel),
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
  };
}

/** To its nominal angle, or beside a picture that is in the way; null where there is no such place. */
function toTheWall(context: FindingContext, channel: Channel): Remedy | null {
  const { project, measures } = context;
  const placed = project.speakers.placed.find((known) => known.channel === channel.label);
  const first = firstPlace(project, channel, measures.units, placed);
  const move = first && placed && moveTo(context, channel, placed, first.position);
  if (!move) return null;
  const left = move.outsideDeg > 0 ? `: ${move.outsideDeg.toFixed(1)}° off its angle remain` : '';
  const text = left
    ? `Put it on the wall, as near to its nominal angle as it can be${left}.`
    : 'Put it on the wall at its nominal angle.';
  return { text, edit: move.edit };
}
