/** Loudspeakers whose box runs into something, or comes too near to a head. */

import type { PlacedSpeaker, Point, Project } from '../room/project';
import { placeName } from '../room/seats';
import { isInTheOpen } from '../room/space';
import { directionFrom } from '../speakers/direction';
import { degreesOutside, placedOf } from '../speakers/judge';
import { clearSpeakerPlace } from '../speakers/clear-speaker-place';
import { isBeforePicture, placesBesidePicture } from '../speakers/beside-picture';
import { BRACKET_M, speakerBox, USUAL_BOX_M, type SpeakerBox } from '../speakers/box';
import type { Channel } from '../speakers/layouts';
import { bodiesOf, type Body } from '../scene/bodies';
import { HEAD_CLEARANCE_M } from '../scene/clashes';
import { hiddenPicture, hidesPicture } from '../scene/hidden-picture';
import { peopleOf } from '../scene/people';
import { clashesOf, type SpeakerClash } from '../speakers/obstacles';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { moveTo } from './speaker-moves';
import { aboutChannel } from './speaker-names';
import { moveSubwoofer } from './subwoofers';
import { practiceSource } from '../room/practice/practice';

/** A box whose size is only assumed may be smaller by this, m: half a usual one. */
const SURE_M = 0.1;

/** What the value of each kind of clash is. */
const FIGURE_NAMES: Readonly<Record<SpeakerClash['kind'], string>> = {
  solid: 'overlap',
  door: 'overlap',
  window: 'overlap',
  passage: 'overlap',
  swing: 'overlap',
  way: 'overlap',
  seat: 'overlap',
  aisle: 'free width',
  screen: 'overlap',
  subwoofer: 'overlap',
  speaker: 'overlap',
  head: 'from the ears',
  walkway: 'above the floor',
  shell: 'outside',
};

/** What people would walk into. */
const NEAR_PEOPLE: ReadonlySet<SpeakerClash['kind']> = new Set([
  'head',
  'walkway',
  'swing',
  'way',
  'seat',
  'aisle',
]);

const CAUTION =
  'Whatever hangs beside or over people has to be held by a fixing made for its weight and a safety line: heed the load that the maker of the mount states, and ask a builder what the wall or ceiling carries.';

export function speakerBoxFindings(context: FindingContext): readonly Finding[] {
  const { project, speakers } = context;
  const playing = placedOf(project, speakers.layout);
  const bodies = bodiesOf(project);
  const boxes = playing.map((speaker) => speakerBox(project, speaker));
  return playing.flatMap((speaker, i): readonly Finding[] => {
    const box = boxes[i];
    // What stands outside or inside a fitting has a finding of its own.
    if (!box || !isInTheOpen(speaker.position, project.room)) return [];
    const others = boxes.filter((_, n) => n !== i);
    // Two that share a place are told once, of the later one.
    const atEars = speakers.speakers.some(
      (heard) => heard.channel === speaker.channel && heard.distanceM < HEAD_CLEARANCE_M,
    );
    const found = clashesOf(box, project, bodies, boxes.slice(0, i)).filter(
      ({ kind }) => kind !== 'head' || !atEars,
    );
    const hidden = found.some(({ kind }) => kind === 'screen') ? null : hides(project, box);
    const clashes = worstOfEach(hidden ? [...found, hidden.clash] : found);
    if (clashes.length === 0) return [];
    const channel = speakers.layout?.channels.find(({ label }) => label === speaker.channel);
    const place = clearSpeakerPlace(project, speaker, channel, bodies, others);
    const slide: Remedy = place
      ? {
          text: slideText(context, speaker, channel, place),
          edit: { kind: 'speaker', channel: speaker.channel, position: place },
        }
      : {
          text: 'No clear place is near on this surface: give it another one, or a smaller box.',
        };
    return clashes.map((clash) => ({
      ...told(context, clash, speaker, channel, box.stated, hidden?.seat ?? null),
      remedies: [
        ...subwooferAside(context, clash),
        ...behindScreen(context, clash, speaker, channel),
        clash.kind === 'screen'
          ? (besidePicture(context, speaker, channel, bodies, others) ?? slide)
          : slide,
      ],
    }));
  });
}

/** A box that hides the picture from a seat, though it does not touch it. */
function hides(
  project: Project,
  { inRoom, mount }: SpeakerBox,
): { readonly clash: SpeakerClash; readonly seat: string } | null {
  const people = peopleOf(project);
  if (!inRoom || mount === 'behind-screen' || !hidesPicture(inRoom, project, people)) return null;
  const hidden = hiddenPicture(inRoom, project, people);
  return hidden
    ? {
        clash: { kind: 'screen', what: 'screen', valueM: hidden.depthM, limitM: 0 },
        seat: placeName(project, hidden.person),
      }
    : null;
}

/** How far, and what its angle is there. */
function slideText(
  { measures, speakers }: FindingContext,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
  place: Point,
): string {
  const ears = speakers.listening;
  const by = measures.rounded(distanceM(place, speaker.position));
  const off = ears && channel ? degreesOutside(directionFrom(ears, place), channel) : 0;
  const now = ears && channel ? degreesOutside(directionFrom(ears, speaker.position), channel) : 0;
  const cost =
    off <= 0 ? '' : off > now + 0.05 ? `: it is then ${off.toFixed(1)}° off its angle` : '';
  return `Move it by ${by}, to the nearest place that is clear${cost}.`;
}

const distanceM = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((at, n) => at - (b[n] ?? 0)));

/** Of each kind the clash that is farthest from its limit. */
function worstOfEach(clashes: readonly SpeakerClash[]): readonly SpeakerClash[] {
  const worst = new Map<SpeakerClash['kind'], SpeakerClash>();
  for (const clash of clashes) {
    const known = worst.get(clash.kind);
    const over = (c: SpeakerClash): number => Math.abs(c.valueM - c.limitM);
    if (!known || over(clash) > over(known)) worst.set(clash.kind, clash);
  }
  return [...worst.values()];
}

/** A subwoofer has more places where it is as good: it makes way first. */
function subwooferAside(
  { project, lengthText }: FindingContext,
  clash: SpeakerClash,
): readonly Remedy[] {
  if (clash.kind !== 'subwoofer') return [];
  const remedy = moveSubwoofer(
    project,
    clash.what,
    (byM) =>
      `Move the subwoofer "${clash.what}" by ${lengthText(byM)}, to the nearest place that is clear: the loudspeaker keeps its place, and the bass changes a little.`,
  );
  return remedy.edit ? [remedy] : [];
}

/** Just below or above the picture, where that is nearer to ear height; null where it is not. */
function besidePicture(
  { project, measures }: FindingContext,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
  bodies: readonly Body[],
  others: readonly SpeakerBox[],
): Remedy | null {
  const [best] =
    channel && speaker.position[1] < BRACKET_M
      ? placesBesidePicture(project, channel, speaker, bodies, others, measures.units)
      : [];
  if (!best) return null;
  const deg = Math.abs(best.elevationDeg).toFixed(1);
  return {
    text: `Hang it just ${best.side} the picture: ${deg}° ${best.elevationDeg < 0 ? 'below' : 'above'} your ears, the least while the picture hangs there.`,
    edit: {
      kind: 'speaker',
      channel: speaker.channel,
      position: best.position,
      mount: 'on-wall',
    },
  };
}

/** A picture that lets sound through takes behind it what is before it. */
function behindScreen(
  context: FindingContext,
  clash: SpeakerClash,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
): readonly Remedy[] {
  const { project } = context;
  if (clash.kind !== 'screen' || !channel || !project.screen.soundThrough) return [];
  if (!isBeforePicture(project, speaker.position)) return [];
  const move = moveTo(context, channel, speaker, speaker.position);
  return move
    ? [{ text: 'Set it behind the picture, which lets sound through.', edit: move.edit }]
    : [];
}

function told(
  { project, lengthText, measures }: FindingContext,
  clash: SpeakerClash,
  { channel: label, position }: PlacedSpeaker,
  channel: Channel | undefined,
  stated: boolean,
  hiddenFrom: string | null,
): Omit<Finding, 'remedies'> {
  const name = channel?.name ?? label;
  const much = lengthText(clash.valueM);
  const limit = measures.about(clash.limitM);
  const words: Record<SpeakerClash['kind'], string> = {
    solid: `runs ${much} into the fitting "${clash.what}"`,
    door: `covers ${much} of the door "${clash.what}"`,
    window: `covers ${much} of the window "${clash.what}"`,
    swing: `stands ${much} in the way of the leaf of "${clash.what}", taken to open into the room against the nearer wall`,
    passage: `covers ${much} of the passage "${clash.what}"`,
    way: `stands ${much} where one walks through "${clash.what}"`,
    seat: `stands ${much} where seat ${clash.what} and its legs are`,
    aisle: `leaves ${much} to walk past row "${clash.what}"; one person needs ${limit}`,
    screen: isBeforePicture(project, position)
      ? 'stands before the picture'
      : hiddenFrom !== null
        ? `hides ${much} of the picture from ${hiddenFrom}`
        : `reaches ${much} into the picture`,
    subwoofer: `runs ${much} into the subwoofer "${clash.what}"`,
    speaker: `runs ${much} into the loudspeaker ${clash.what}`,
    head: `is ${much} from the ears of seat ${clash.what}; a head needs ${limit}`,
    walkway: `hangs ${much} above the floor where people walk; ${limit} is the least`,
    shell: `reaches ${much} out of the room beside its baffle`,
  };
  const size = USUAL_BOX_M.map(measures.about).join(' x ');
  const nearPeople = NEAR_PEOPLE.has(clash.kind);
  return {
    id: `speaker-${clash.kind}:${label}`,
    severity: nearPeople
      ? 'warning'
      : stated
        ? 'fault'
        : clash.valueM > SURE_M + 1e-6 || isBeforePicture(project, position)
          ? 'warning'
          : 'note',
    subject: 'speakers',
    where: channel ? aboutChannel(channel).where : label,
    message: `The box of ${name} ${words[clash.kind]}.${stated ? '' : ` Its size is not stated: up to ${size} is assumed.`}`,
    figureName: FIGURE_NAMES[clash.kind],
    value: clash.valueM,
    limit: clash.limitM,
    unit: 'm',
    source: nearPeople ? practiceSource('headroom') : 'geometry',
    ...(nearPeople ? { caution: CAUTION } : {}),
    place: { kind: 'speaker', channel: label },
  };
}
