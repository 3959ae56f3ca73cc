/** Tags of the loudspeakers. */

import type { SpeakerResult } from '../../core/speakers/judge';
import type { Point } from '../../core/room/project';
import { speakerBox } from '../../core/speakers/box';
import { WALL_CLEARANCE_M } from '../../core/speakers/nominal-place';
import { speakerSign } from './speaker-sign';
import { DragHandle } from './DragHandle';
import { DRAG_NORMAL, dragPlace, isMarked, nudged, type LabelContext } from './label-context';
import { besideSpeaker } from '../../core/drawing/label-places';
import { RANKS } from '../../core/drawing/label-requests';
import type { PlacedLabel } from './Labels';

/** Nearer to a wall than its box and this, a dragged loudspeaker hangs on it, m. */
const PULL_M = 0.08;

/** The place, moved so that the box's back lies against the wall that it has come near to. */
function againstWall(at: Point, label: string, { project, view }: LabelContext): Point {
  const placed = project.speakers.placed.find((speaker) => speaker.channel === label);
  if (!placed) return at;
  const { width, length } = project.room.size;
  const { mount } = placed;
  if (mount === 'stand' || mount === 'ceiling' || mount === 'behind-screen') return at;
  const flush = speakerBox(project, placed).mount === 'in-wall';
  const depthM = flush ? 0 : (placed.boxM?.[2] ?? WALL_CLEARANCE_M);
  const pulled = (value: number, far: number): number =>
    value < depthM + PULL_M ? depthM : value > far - depthM - PULL_M ? far - depthM : value;
  // Only along what the hand moves: the eye looks along the other.
  const x = DRAG_NORMAL[view] === 0 ? at[0] : pulled(at[0], width);
  if (x !== at[0] || DRAG_NORMAL[view] === 1) return [x, at[1], at[2]];
  return [at[0], pulled(at[1], length), at[2]];
}

/** What the tag shows: who speaks to the program must be able to say what is seen. */
function tagText(short: string, speaker: SpeakerResult | undefined): string {
  if (!speaker) return short;
  const up = speaker.elevationDeg;
  const height = Math.abs(up) < 0.5 ? '' : ` ${up > 0 ? '↑' : '↓'}${Math.abs(up).toFixed(0)}°`;
  return `${short} ${Math.round(speaker.azimuthDeg) || 0}°${height}`;
}

/** The tag of one loudspeaker: its angle, whether it is within its window, and a handle to drag it. */
export function speakerLabel(context: LabelContext, label: string): PlacedLabel {
  const { analysis, stage, change, hold, session } = context;
  const thing = { kind: 'speaker', channel: label } as const;
  const speaker = analysis.speakers.find((candidate) => candidate.channel === label);
  const known = analysis.layout?.channels.find((candidate) => candidate.label === label);
  const position = speaker?.position ?? [0, 0, 0];
  const marked = isMarked(context, thing);
  const name = known?.name ?? label;
  const inRange = speaker?.inRange ?? false;
  const sign = speakerSign({ channel: label, inRange }, analysis.findings);
  return {
    key: `speaker-${label}`,
    at: position,
    awayFrom: besideSpeaker(context.project, analysis.listening, context.view, position),
    mayShift: true,
    ...(marked ? { rank: RANKS.chosen } : {}),
    node: (
      <DragHandle
        className={`speaker-chip${inRange ? '' : ' outside'}${marked ? ' marked' : ''}`}
        label={`${tagText(known?.short ?? label, speaker)}: ${name}, angle to the side (azimuth) ${speaker?.azimuthDeg.toFixed(1) ?? ''}, height angle (elevation) ${speaker?.elevationDeg.toFixed(1) ?? ''} degrees, ${inRange ? 'within' : 'outside'} its window: drag, or arrow keys`}
        stage={stage}
        onStart={() => {
          hold(true);
          session.select(thing);
        }}
        onEnd={() => hold(false)}
        onPress={() => session.select(thing)}
        onDrag={(ray, startRay, fine, gesture) => {
          const start = gesture.base.speakers.placed.find((s) => s.channel === label)?.position;
          const to = start ? dragPlace(context, start, ray, startRay, fine) : null;
          if (to) {
            const at = fine ? to : againstWall(to, label, context);
            change({ kind: 'speaker', channel: label, position: at }, gesture);
          }
        }}
        onNudge={(right, up, fine, gesture) => {
          const to = nudged(position, context, right, up, fine);
          change({ kind: 'speaker', channel: label, position: to }, gesture);
        }}
      >
        {sign === null ? null : <span aria-hidden="true">{sign} </span>}
        <b>{known?.short ?? label}</b> {speaker ? `${Math.round(speaker.azimuthDeg) || 0}°` : ''}
        {speaker && Math.abs(speaker.elevationDeg) >= 0.5 ? (
          <small>
            {' '}
            {`${speaker.elevationDeg > 0 ? '↑' : '↓'}${Math.abs(speaker.elevationDeg).toFixed(0)}°`}
          </small>
        ) : null}
      </DragHandle>
    ),
  };
}
