/** What the press of a finding opens: its subject, and in it the thing that it speaks of. */

import type { Finding } from '../../core/findings/finding';
import { useSpeakerEvidence } from '../subjects/speakers/shown-evidence';
import { useFace } from '../subjects/speakers/chosen-face';
import { useSession } from '../state/session';
import { SHOWN_IN } from './shown-in';

export function useGoTo(): (finding: Finding) => void {
  const { chooseFinding, setSubject, chooseChannel, chooseFitting, chooseSubwoofer } =
    useSession.getState();
  const chooseFace = useFace((store) => store.chooseFace);
  const showEvidence = useSpeakerEvidence((store) => store.show);
  return ({ id, subject, place }) => {
    chooseFinding(id);
    setSubject(SHOWN_IN[subject]);
    if (place?.kind === 'speaker') chooseChannel(place.channel);
    if (place?.kind === 'reflection') {
      chooseChannel(place.channel);
      chooseFace(place.face);
      showEvidence('early');
    }
    if (place?.kind === 'subwoofer') chooseSubwoofer(place.id);
    if (place?.kind === 'solid') chooseFitting(place.id);
  };
}
