/** Evidence of the speakers, on tabs: each of them is one component in `TABS`. */

import type { ReactElement } from 'react';
import { SpeakerPanorama } from '../charts/SpeakerPanorama';
import { SpeakerTable } from '../charts/SpeakerTable';
import { EarlyEvidence } from '../speakers/EarlyEvidence';
import { SeatAngles } from '../speakers/SeatAngles';
import { WallsEvidence } from '../speakers/WallsEvidence';
import { useSpeakerEvidence, type SpeakerEvidence } from '../speakers/evidence-store';
import { useAnalysis, useSession } from '../state/session';

const TABS: Partial<
  Readonly<Record<SpeakerEvidence, { readonly title: string; readonly body: () => ReactElement }>>
> = {
  angles: { title: 'Angles', body: Angles },
  seats: { title: 'Seats', body: SeatAngles },
  walls: { title: 'Walls', body: WallsEvidence },
  early: { title: 'Early', body: EarlyEvidence },
};

export function SpeakersEvidence(): ReactElement {
  const { shown, show } = useSpeakerEvidence();
  const Body = TABS[shown]?.body ?? Angles;
  return (
    <>
      <div className="evidence-tabs" role="group" aria-label="Evidence for the speakers">
        {Object.entries(TABS).map(([key, { title }]) => (
          <button
            key={key}
            type="button"
            aria-pressed={key === shown}
            onClick={() => show(key as SpeakerEvidence)}
          >
            {title}
          </button>
        ))}
      </div>
      <Body />
    </>
  );
}

function Angles(): ReactElement {
  const { layout, speakers } = useAnalysis();
  const units = useSession((session) => session.units);
  const channel = useSession((session) => session.channel);
  const chooseChannel = useSession((session) => session.chooseChannel);
  const props = { layout, speakers, chosen: channel, onChoose: chooseChannel };
  return (
    <>
      <SpeakerPanorama {...props} />
      <SpeakerTable {...props} units={units} />
    </>
  );
}
