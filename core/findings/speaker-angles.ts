/** Loudspeakers outside their window, and the one that a picture keeps from ear height: a trade-off. */

import type { PlacedSpeaker } from '../room/project';
import { isBeforePicture, placesBesidePicture } from '../speakers/beside-picture';
import { speakerBox, USUAL_BOX_M } from '../speakers/box';
import { degreesOutside, placedOf, type SpeakerResult } from '../speakers/judge';
import type { Channel } from '../speakers/layouts';
import { placeAtAngle } from '../speakers/nominal-place';
import { bodiesOf } from '../scene/bodies';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { SEAT_FIRST } from './layout';
import { moveTo } from './speaker-moves';
import { aboutChannel } from './speaker-names';
import { practice } from '../room/practice/practice';

/** Farther off than this is a warning: degrees. */
const WARNED_DEG = practice('angle-warning');
/** A picture keeps most centres so far from ear height: no more than a note, degrees. */
const TRADED_DEG = practice('centre-height-traded');
/** A move has to gain this much to be proposed, degrees. */
const LEAST_GAIN_DEG = 0.5;

export function angleFinding(
  context: FindingContext,
  heard: SpeakerResult,
  channel: Channel,
): Finding {
  const { project, speakers } = context;
  const speaker = project.speakers.placed.find((placed) => placed.channel === heard.channel);
  const sideways = heard.azimuthOffDeg !== 0;
  const off = sideways ? heard.azimuthOffDeg : heard.elevationOffDeg;
  const value = sideways ? heard.azimuthDeg : heard.elevationDeg;
  const azimuth = heard.azimuthDeg - heard.azimuthOffDeg;
  const elevation = heard.elevationDeg - heard.elevationOffDeg;
  const target = placeAtAngle(project, azimuth, elevation, speaker?.boxM?.[2]);
  const isCovered =
    !sideways &&
    target !== null &&
    isBeforePicture(project, target) &&
    !project.screen.soundThrough;
  const [low, high] = sideways ? channel.azimuth : channel.elevation;
  const allowed = low === high ? `${low}°` : `${low} to ${high}°`;
  const wanted = `${allowed} is the recommended ${low === high ? 'angle' : 'range'}`;
  const where = sideways
    ? `${heard.azimuthDeg.toFixed(1)}° to the side (azimuth)`
    : heightWords(value);
  const amount = Math.abs(off).toFixed(1);
  return {
    id: `speaker-range:${channel.label}`,
    severity: Math.abs(off) > (isCovered ? TRADED_DEG : WARNED_DEG) ? 'warning' : 'note',
    subject: 'speakers',
    ...aboutChannel(channel),
    message: isCovered
      ? `${channel.name} sounds from ${where}: the picture is where ${wanted}, and lets no sound through. That is a trade-off: voices seem to come from ${value < 0 ? 'below' : 'above'} the picture by ${amount}°.`
      : `${channel.name} sounds from ${where}; ${wanted}, so it is ${amount}° off.`,
    figureName: sideways ? 'angle to the side' : 'height angle',
    value,
    limit: value - off,
    unit: 'deg',
    source: speakers.layout?.source ?? '',
    remedies: !speaker
      ? []
      : isCovered
        ? pictureRemedies(context, heard, channel, speaker)
        : target
          ? moveRemedies(context, heard, channel, speaker, target)
          : [{ text: SEAT_FIRST }],
  };
}

/** `10.0° below your ears (elevation)`. */
const heightWords = (elevationDeg: number): string =>
  `${Math.abs(elevationDeg).toFixed(1)}° ${elevationDeg < 0 ? 'below' : 'above'} your ears (elevation)`;

function moveRemedies(
  context: FindingContext,
  heard: SpeakerResult,
  channel: Channel,
  speaker: PlacedSpeaker,
  target: readonly [number, number, number],
): readonly Remedy[] {
  const move = moveTo(context, channel, speaker, target);
  const now = degreesOutside(heard, channel);
  if (!move || move.outsideDeg > now - LEAST_GAIN_DEG)
    return [
      {
        text: 'Move the seats: no place that is clear and nearer to the angle was found on the walls.',
      },
    ];
  const way = heard.azimuthOffDeg !== 0 ? 'along' : 'up or down';
  const to =
    heard.azimuthOffDeg !== 0
      ? `${Math.abs(move.direction.azimuthDeg).toFixed(0)}° to the side`
      : heightWords(move.direction.elevationDeg);
  const left =
    move.outsideDeg > 0 ? `; ${move.outsideDeg.toFixed(1)}° remain, since something is there` : '';
  return [{ text: `Move it ${way} the wall to ${to}${left}.`, edit: move.edit }];
}

/** What brings a loudspeaker that the picture keeps from ear height nearer to it. */
function pictureRemedies(
  context: FindingContext,
  heard: SpeakerResult,
  channel: Channel,
  speaker: PlacedSpeaker,
): readonly Remedy[] {
  const { project, speakers, measures } = context;
  const others = placedOf(project, speakers.layout)
    .filter((other) => other.channel !== speaker.channel)
    .map((other) => speakerBox(project, other));
  const places = placesBesidePicture(
    project,
    channel,
    speaker,
    bodiesOf(project),
    others,
    measures.units,
  );
  const [best] = places;
  const gain = best ? Math.abs(heard.elevationDeg) - Math.abs(best.elevationDeg) : 0;
  const nearer: readonly Remedy[] =
    best && gain >= LEAST_GAIN_DEG
      ? [
          {
            text: `Hang it just ${best.side} the picture: ${heightWords(best.elevationDeg)} remain, the least while the picture hangs there.`,
            edit: {
              kind: 'speaker',
              channel: speaker.channel,
              position: best.position,
              mount: 'on-wall',
            },
          },
        ]
      : [];
  const ears = speakers.listening;
  const level = ears && placeAtAngle(project, heard.azimuthDeg, channel.elevation[0]);
  const depth = measures.about((speaker.boxM ?? USUAL_BOX_M)[2]);
  const through: readonly Remedy[] = level
    ? [
        {
          text: `Take a picture that lets sound through, and set the box behind it at the height of your ears: 0° remain. It needs a perforated or woven screen, and ${depth} behind it for the box.`,
          edit: {
            kind: 'several',
            what: `${channel.name} behind the picture`,
            edits: [
              { kind: 'screen', change: { soundThrough: true } },
              {
                kind: 'speaker',
                channel: speaker.channel,
                position: level,
                mount: 'behind-screen',
              },
            ],
          },
        },
      ]
    : [];
  const reachM = ears ? Math.hypot(ears[0] - heard.position[0], ears[1] - heard.position[1]) : 0;
  const perDegree = measures.part(Math.round(reachM * Math.tan(Math.PI / 180) * 1000) / 1000);
  const way = heard.elevationDeg < 0 ? 'Raise' : 'Lower';
  return [
    ...nearer,
    {
      text: `${way} the picture, and the box with it: every ${perDegree} takes 1° away. Turn the box up or down until it points at your ears, so that they lose no treble; the angle stays.`,
    },
    ...through,
  ];
}
