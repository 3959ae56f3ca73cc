/** The sheet: subjects down the left, the drawing with its profile below, inputs and findings right. */

import type { ReactElement } from 'react';
import { useFollowedResponses } from '../subjects/bass/response-store';
import { RoomPart } from '../kit/controls/PartBoundary';
import { DrawingPane } from '../drawing/DrawingPane';
import { FindingsPanel } from '../findings/FindingsPanel';
import { TopBar } from './TopBar';
import { NoticeBar } from './NoticeBar';
import { SubjectIndex } from './SubjectIndex';
import { TitleBlock } from './TitleBlock';
import { ViewChoice } from './ViewChoice';
import type { DocumentCommands } from '../state/document-commands';
import { useSession, type OpenSubject } from '../state/session';
import { BassEvidence, BassInputs } from '../subjects/bass/BassSubject';
import { DecayEvidence, DecayInputs } from '../subjects/decay/DecaySubject';
import { FittingsEvidence, FittingsInputs } from '../subjects/fittings/FittingsSubject';
import { ShellEvidence, ShellInputs } from '../subjects/shell/ShellSubject';
import { SUBJECT_TITLES } from '../subjects/subject-titles';
import { SpeakersEvidence } from '../subjects/speakers/SpeakersEvidence';
import { SpeakersInputs } from '../subjects/speakers/SpeakersSubject';
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

export function App({ commands }: { readonly commands: DocumentCommands }): ReactElement {
  const subject = useSession((session) => session.subject);
  useShortcuts(commands);
  useDroppedFiles(commands);
  useFollowedResponses(subject === 'bass');
  const { inputs: Inputs, evidence: Evidence } = SUBJECTS[subject];
  const { title } = SUBJECT_TITLES[subject];
  return (
    <div className="sheet">
      <SkipLinks />
      <TopBar commands={commands} />
      <SubjectIndex />
      <main className="board" aria-label="Drawing">
        <div className="paper">
          <RoomPart part="The drawing">
            <DrawingPane tools={<ViewChoice />} />
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
