/** The sheet: subjects down the left, the drawing with its profile below, inputs and findings right. */

import type { ReactElement } from 'react';
import { useFollowedResponses } from '../bass/response-store';
import { RoomPart } from '../controls/PartBoundary';
import { DrawingSheet } from '../drawing/DrawingSheet';
import { FindingsPanel } from '../findings/FindingsPanel';
import { HeadStrip } from '../sheet/HeadStrip';
import { NoticeBar } from '../sheet/NoticeBar';
import { SubjectIndex } from '../sheet/SubjectIndex';
import { TitleBlock } from '../sheet/TitleBlock';
import { ViewChoice } from '../sheet/ViewChoice';
import type { Filing } from '../state/filing';
import { useSession, type OpenSubject } from '../state/session';
import { BassEvidence, BassInputs } from '../subjects/BassSubject';
import { DecayEvidence, DecayInputs } from '../subjects/DecaySubject';
import { FittingsEvidence, FittingsInputs } from '../subjects/FittingsSubject';
import { ShellEvidence, ShellInputs } from '../subjects/ShellSubject';
import { SpeakersEvidence } from '../subjects/SpeakersEvidence';
import { SpeakersInputs } from '../subjects/SpeakersSubject';
import { useShortcuts } from './use-shortcuts';

const SUBJECTS: Readonly<
  Record<
    OpenSubject,
    { title: string; inputs: () => ReactElement; evidence: () => ReactElement | null }
  >
> = {
  shell: { title: 'Shell', inputs: ShellInputs, evidence: ShellEvidence },
  fittings: { title: 'Fittings', inputs: FittingsInputs, evidence: FittingsEvidence },
  speakers: { title: 'Speakers', inputs: SpeakersInputs, evidence: SpeakersEvidence },
  bass: { title: 'Bass', inputs: BassInputs, evidence: BassEvidence },
  decay: { title: 'Decay', inputs: DecayInputs, evidence: DecayEvidence },
};

export function App({ filing }: { readonly filing: Filing }): ReactElement {
  const subject = useSession((session) => session.subject);
  useShortcuts(filing);
  useFollowedResponses(subject === 'bass');
  const { title, inputs: Inputs, evidence: Evidence } = SUBJECTS[subject];
  return (
    <div className="sheet">
      <HeadStrip filing={filing} />
      <SubjectIndex />
      <main className="board" aria-label="Drawing">
        <div className="paper">
          <RoomPart part="The drawing">
            <DrawingSheet tools={<ViewChoice />} />
          </RoomPart>
          <TitleBlock />
          <NoticeBar />
        </div>
        <section className={`evidence evidence-${subject}`} aria-label={`Evidence: ${title}`}>
          <RoomPart key={subject} part="This evidence">
            <Evidence />
          </RoomPart>
        </section>
      </main>
      <aside className="margin">
        <section className="inputs" aria-label={title}>
          <h2>{title}</h2>
          <RoomPart key={subject} part="This pane">
            <Inputs />
          </RoomPart>
        </section>
        <RoomPart part="The list of findings">
          <FindingsPanel />
        </RoomPart>
      </aside>
    </div>
  );
}
