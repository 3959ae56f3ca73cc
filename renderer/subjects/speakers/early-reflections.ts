/** First reflections of the chosen loudspeaker at the hearing seat, asked of core once for each change. */

import { faceName } from '../../../core/room/faces';
import type { EarlyAtSeat, SeatReflection } from '../../../core/reflections/early-at-seat';
import type { Treatment } from '../../../core/reflections/treatment';
import type { Point, Project } from '../../../core/room/project';
import type { ListeningPlace } from '../../../core/room/seats';
import { results } from '../../state/results';
import { selectedId } from '../../state/selection';
import { projectOf, useProject, useSession, type Session } from '../../state/session';
import { shownSeat, useShownSeat } from '../../state/shown-seat';
import { useResult } from '../../state/use-result';
import { chosenSpeaker, useChosenSpeaker, type ChosenSpeaker } from './chosen-speaker';
import { minused } from '../../kit/chart/signed';

export interface Early {
  readonly speaker: ChosenSpeaker;
  readonly seat: ListeningPlace;
  readonly at: EarlyAtSeat;
  /** Earliest first. */
  readonly reflections: readonly SeatReflection[];
  /** The face that is chosen: by hand, else that of the loudest reflection. */
  readonly face: string | null;
  /** The face that is pointed at, else the chosen one. */
  readonly shownFace: string | null;
}

const NONE: readonly SeatReflection[] = [];

/** What is asked for: the room, and what is chosen and pointed at. */
interface Asked {
  readonly project: Project;
  readonly speaker: ChosenSpeaker | null;
  readonly seat: ListeningPlace | null;
  readonly face: string | null;
  readonly pointedFace: string | null;
}

/** Null where no loudspeaker or no seat has a place. */
function earlyOf({ project, speaker, seat, face, pointedFace }: Asked): Early | null {
  if (!speaker || !seat) return null;
  const at = results.quick('earlyReflections', project, { channel: speaker.channel, seat });
  const reflections = at.kind === 'heard' ? at.reflections : NONE;
  const known = (wanted: string | null): string | null =>
    reflections.some(({ hit }) => hit.face === wanted) ? wanted : null;
  const chosen = known(face) ?? loudest(reflections)?.hit.face ?? null;
  return { speaker, seat, at, reflections, face: chosen, shownFace: known(pointedFace) ?? chosen };
}

export function useEarly(): Early | null {
  const project = useProject();
  const speaker = useChosenSpeaker();
  const seat = useShownSeat();
  const face = useSession((session) => session.face);
  const pointedFace = useSession((session) => session.pointedFace);
  return earlyOf({ project, speaker, seat, face, pointedFace });
}

const loudest = (reflections: readonly SeatReflection[]): SeatReflection | null =>
  [...reflections].sort((a, b) => b.overDb - a.overDb || b.levelDb - a.levelDb)[0] ?? null;

/** What core proposes for a reflection over the limit. */
export function useTreatment(reflection: SeatReflection | null): Treatment | null {
  const units = useSession((session) => session.units);
  return useResult('reflectionTreatment', reflection && { reflection, units });
}

/** Where one reflection meets its face, ready to be drawn. */
export interface ReflectionMark {
  readonly face: string;
  readonly at: Point;
  readonly isOver: boolean;
}

export interface ReflectionMarks {
  readonly marks: readonly ReflectionMark[];
  /** The one that is shown: its way from loudspeaker to seat, and its name. */
  readonly shown: {
    readonly face: string;
    readonly way: readonly [Point, Point, Point];
    readonly text: string;
  } | null;
}

/** What the drawing shows of the reflections; null while their evidence is not open. */
export function reflectionMarks(
  session: Pick<
    Session,
    'work' | 'analysis' | 'selected' | 'shown' | 'seat' | 'pointedSeat' | 'face' | 'pointedFace'
  >,
): ReflectionMarks | null {
  if (session.shown['speakers'] !== 'early') return null;
  const project = projectOf(session);
  const early = earlyOf({
    project,
    speaker: chosenSpeaker(session.analysis, selectedId(session.selected, 'speaker')),
    seat: shownSeat(project, session),
    face: session.face,
    pointedFace: session.pointedFace,
  });
  return early && marksOf(early);
}

function marksOf({ reflections, shownFace, speaker, seat }: Early): ReflectionMarks {
  const shown = reflections.find(({ hit }) => hit.face === shownFace);
  return {
    marks: reflections.map(({ hit, overDb }) => ({
      face: hit.face,
      at: hit.point,
      isOver: overDb > 0,
    })),
    shown: shown
      ? {
          face: shown.hit.face,
          way: [speaker.position, shown.hit.point, seat.position],
          text: `${faceName(shown.hit.face)} ${levelText(shown.levelDb)}`,
        }
      : null,
  };
}

/** `−6.3 dB`. */
export const levelText = (levelDb: number): string => `${minused(levelDb)} dB`;
