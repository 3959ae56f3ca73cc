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
import { SUBJECT_TITLES } from '../subjects/subject-titles';
import { SpeakersEvidence } from '../subjects/SpeakersEvidence';
import { SpeakersInputs } from '../subjects/SpeakersSubject';
import { Margin } from './Margin';
import { SkipLinks } from './SkipLinks';
import { useDroppedFiles, useShortcuts } from './use-shortcuts';
import { GlossaryPanel } from '../glossary/GlossaryPanel';

const SUBJECTS: Readonly<
  Record<OpenSubject, { inputs: () => ReactElement; evidence: () => ReactElement | null }>
> = {
  shell: { inputs: ShellInputs, evidence: ShellEvidence },
  fittings: { inputs: FittingsInputs, evidence: FittingsEvidence },
  speakers: { inputs: SpeakersInputs, evidence: SpeakersEvidence },
  bass: { inputs: BassInputs, evidence: BassEvidence },
  decay: { inputs: DecayInputs, evidence: DecayEvidence },
};

export function App({ filing }: { readonly filing: Filing }): ReactElement {
  const subject = useSession((session) => session.subject);
  useShortcuts(filing);
  useDroppedFiles(filing);
  useFollowedResponses(subject === 'bass');
  const { inputs: Inputs, evidence: Evidence } = SUBJECTS[subject];
  const { title } = SUBJECT_TITLES[subject];
  return (
    <div className="sheet">
      <SkipLinks />
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
      <Margin
        inputs={
          <section key={subject} id="inputs" tabIndex={-1} className="inputs" aria-label={title}>
            <h2>{title}</h2>
            <RoomPart part="This pane">
              <Inputs />
            </RoomPart>
          </section>
        }
        findings={
          <RoomPart part="The list of findings">
            <FindingsPanel />
          </RoomPart>
        }
      />
      <GlossaryPanel />
    </div>
  );
}
