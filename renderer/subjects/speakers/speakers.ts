import { selectedId } from '../../state/selection';
import { projectOf, useSession, type Session } from '../../state/session';
import { shownSeat } from '../../state/shown-seat';
import type { Subject } from '../subject';
import { aimLabels } from './aim-label';
import { chosenSpeaker } from './chosen-speaker';
import { reflectionMarks } from './early-reflections';
import { reflectionLabels } from './reflection-labels';
import { SpeakersEvidence } from './SpeakersEvidence';
import { SpeakersInputs } from './SpeakersSubject';
import { SpeakersFlat } from './SpeakersFlat';
import { SpeakersScene } from './SpeakersScene';

const channelOf = ({ analysis, selected }: Session): string | null =>
  chosenSpeaker(analysis, selectedId(selected, 'speaker'))?.channel ?? null;

export const SPEAKERS: Subject = {
  id: 'speakers',
  title: 'Speakers',
  about: 'angles and places',
  Inputs: SpeakersInputs,
  Evidence: SpeakersEvidence,
  layer: {
    chooses: ['speaker'],
    labels: (context) => [
      ...reflectionLabels(reflectionMarks(context.session), context.view),
      ...aimLabels(context, channelOf(context.session)),
    ],
    Scene: SpeakersScene,
    Flat: SpeakersFlat,
    marks: (session) => ({
      channel: channelOf(session),
      ears: shownSeat(projectOf(session), session)?.position ?? null,
    }),
    pointsAtSeats: true,
  },
  tells: ['seats', 'speakers'],
  goTo: (place) => {
    if (place.kind !== 'reflection') return;
    const session = useSession.getState();
    session.select({ kind: 'speaker', channel: place.channel });
    // It is told of the reference place.
    session.chooseSeat(null);
    session.chooseFace(place.face);
    session.show('speakers', 'early');
  },
};
