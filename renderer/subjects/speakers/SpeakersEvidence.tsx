/** Evidence of the speakers, on tabs: each of them is one component in `TABS`. */

import type { ReactElement } from 'react';
import { SpeakerPanorama } from './SpeakerPanorama';
import { SpeakerTable } from './SpeakerTable';
import { Tabs } from '../../kit/Tabs';
import { EarlyEvidence } from './EarlyEvidence';
import { SeatAngles } from './SeatAngles';
import { WallsEvidence } from './WallsEvidence';
import { useAnalysis, useSelected, useSession, useShown } from '../../state/session';

const SPEAKER_EVIDENCE = ['angles', 'seats', 'walls', 'early'] as const;
type SpeakerEvidence = (typeof SPEAKER_EVIDENCE)[number];

const TABS: Readonly<
  Record<SpeakerEvidence, { readonly title: string; readonly body: () => ReactElement }>
> = {
  angles: { title: 'Angles', body: Angles },
  seats: { title: 'Seats', body: SeatAngles },
  walls: { title: 'Walls', body: WallsEvidence },
  early: { title: 'Early', body: EarlyEvidence },
};

export function SpeakersEvidence(): ReactElement {
  const [shown, show] = useShown<SpeakerEvidence>('speakers', 'angles');
  const Body = TABS[shown].body;
  return (
    <Tabs
      of="the speakers"
      tabs={SPEAKER_EVIDENCE.map((value) => ({ value, title: TABS[value].title }))}
      shown={shown}
      onShow={show}
    >
      <Body />
    </Tabs>
  );
}

function Angles(): ReactElement {
  const { layout, speakers, findings } = useAnalysis();
  const units = useSession((session) => session.units);
  const channel = useSelected('speaker');
  const select = useSession((session) => session.select);
  const props = {
    layout,
    speakers,
    findings,
    chosen: channel,
    onChoose: (label: string) => select({ kind: 'speaker', channel: label }),
  };
  return (
    <>
      <SpeakerPanorama {...props} />
      <SpeakerTable {...props} units={units} />
    </>
  );
}
