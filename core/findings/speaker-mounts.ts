/** Loudspeakers that cannot be held as they are said to be, or that aim at nobody. */

import { faceName } from '../room/faces';
import { roundLength } from '../quantity/length';
import { mapPoint } from '../room/point';
import type { PlacedSpeaker, Point } from '../room/project';
import { seatsOf } from '../room/seats';
import { BRACKET_M, FLUSH_M, speakerBox, type SpeakerBox } from '../speakers/box';
import { placesBesidePicture } from '../speakers/beside-picture';
import { placedOf } from '../speakers/judge';
import { bodiesOf } from '../scene/bodies';
import { WALL_CLEARANCE_M } from '../speakers/nominal-place';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { practiceSource } from '../room/practice/practice';

export function speakerMountFindings(context: FindingContext): readonly Finding[] {
  const { project, speakers } = context;
  const seats = seatsOf(project);
  return placedOf(project, speakers.layout).flatMap((speaker): readonly Finding[] => {
    const findings: Finding[] = [];
    const { aim } = speaker;
    if (aim && 'seat' in aim) {
      const { row, seat } = aim.seat;
      if (!seats.some((known) => known.row === row && known.seat === seat))
        findings.push(aimsAtNobody(context, speaker, `${row} ${seat}`));
    }
    if (speaker.mount === 'behind-screen' && !project.screen.soundThrough)
      findings.push(muffled(context, speaker));
    // A mount that follows from the place always fits it.
    if (speaker.mount !== undefined || speaker.boxM !== undefined) {
      const found = badlyHeld(context, speaker, speakerBox(project, speaker));
      if (found) findings.push(found);
    }
    return findings;
  });
}

function aimsAtNobody(context: FindingContext, speaker: PlacedSpeaker, seat: string): Finding {
  const { channel } = speaker;
  return {
    ...about(context, speaker, 'speaker-aim'),
    severity: 'note',
    message: `It aims at seat ${seat}, which is not there; the reference place is taken instead.`,
    figureName: '',
    value: null,
    limit: null,
    unit: '',
    source: 'our own convention',
    remedies: [
      {
        text: 'Aim it at the reference place.',
        edit: { kind: 'mounting', channel, change: { aim: null } },
      },
    ],
  };
}

/** Behind a picture that is not said to let sound through. */
function muffled(context: FindingContext, speaker: PlacedSpeaker): Finding {
  const { project, speakers } = context;
  const channel = speakers.layout?.channels.find(({ label }) => label === speaker.channel);
  const obstacles = bodiesOf(project);
  const others = placedOf(project, speakers.layout)
    .filter((other) => other.channel !== speaker.channel)
    .map((other) => speakerBox(project, other));
  const places = channel
    ? placesBesidePicture(project, channel, speaker, obstacles, others, context.measures.units)
    : [];
  return {
    ...about(context, speaker, 'speaker-muffled'),
    severity: 'fault',
    message:
      'It is to sit behind the picture, and the room says that the picture lets no sound through.',
    figureName: '',
    value: null,
    limit: null,
    unit: '',
    source: 'common practice',
    remedies: [
      {
        text: 'Take a picture that lets sound through: a perforated or woven screen.',
        edit: { kind: 'screen', change: { soundThrough: true } },
      },
      ...places.slice(0, 1).map(({ side, position, elevationDeg }): Remedy => ({
        text: `Hang it just ${side} the picture, ${Math.abs(elevationDeg).toFixed(1)}° ${elevationDeg < 0 ? 'below' : 'above'} your ears.`,
        edit: { kind: 'speaker', channel: speaker.channel, position, mount: 'on-wall' },
      })),
    ],
  };
}

function badlyHeld(
  context: FindingContext,
  speaker: PlacedSpeaker,
  box: SpeakerBox,
): Finding | null {
  const { face, mount, beforeM, sunkM } = box;
  const { lengthText } = context;
  const { channel } = speaker;
  if (!face) return null;
  const flush = mount === 'in-wall' || mount === 'behind-screen';
  const mostM =
    mount === 'in-wall' ? FLUSH_M : mount === 'behind-screen' ? WALL_CLEARANCE_M : BRACKET_M;
  const letGo: Remedy = {
    text: 'Let the nearest surface carry it.',
    edit: { kind: 'mounting', channel, change: { mount: null } },
  };
  if (beforeM > mostM + 1e-6) {
    return {
      ...about(context, speaker, 'speaker-off-surface'),
      severity: 'warning',
      message: flush
        ? `It is to sit ${mount === 'in-wall' ? 'in the wall' : 'behind the screen'}, and its baffle stands ${lengthText(beforeM)} before the ${faceName(face.name)}.`
        : `It is to hang on the ${faceName(face.name)}, and its baffle is ${lengthText(beforeM)} away.`,
      figureName: 'from the wall',
      value: beforeM,
      limit: mostM,
      unit: 'm',
      source: practiceSource('bracket-reach'),
      remedies: [
        {
          text: `Bring it back to the ${faceName(face.name)}.`,
          edit: {
            kind: 'speaker',
            channel,
            position: atDepth(speaker, box, flush ? 0 : WALL_CLEARANCE_M),
          },
        },
        letGo,
      ],
    };
  }
  // A ceiling or a soffit is hollow and may take a cabinet; a finished wall does so on purpose only.
  if (mount !== 'on-wall' || sunkM <= 0.005) return null;
  return {
    ...about(context, speaker, 'speaker-sunk'),
    severity: 'warning',
    message: `It is to hang on the ${faceName(face.name)}, and its cabinet would reach ${lengthText(sunkM)} into it.`,
    figureName: 'into the wall',
    value: sunkM,
    limit: 0,
    unit: 'm',
    source: 'geometry',
    remedies: [
      {
        text: `Move the baffle out to ${lengthText(beforeM + sunkM)} before the wall.`,
        edit: { kind: 'speaker', channel, position: atDepth(speaker, box, beforeM + sunkM) },
      },
    ],
  };
}

/** The place with its baffle so far before the surface, m. */
function atDepth({ position }: PlacedSpeaker, { face, axis }: SpeakerBox, depthM: number): Point {
  if (!face) return position;
  return mapPoint(position, (at, n) =>
    n === axis ? roundLength(face.at + face.inward * depthM) : at,
  );
}

function about(
  { speakers }: FindingContext,
  { channel }: PlacedSpeaker,
  id: string,
): Pick<Finding, 'id' | 'subject' | 'where' | 'place'> {
  const name = speakers.layout?.channels.find(({ label }) => label === channel)?.name;
  return {
    id: `${id}:${channel}`,
    subject: 'speakers',
    where: name === undefined ? channel : `${name} (${channel})`,
    place: { kind: 'speaker', channel },
  };
}
