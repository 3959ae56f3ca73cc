/** The sheet: subjects down the left, the drawing with its profile below, inputs and findings right. */

import type { ReactElement } from 'react';
import { RoomPart } from '../kit/controls/PartBoundary';
import { DrawingPane } from '../drawing/DrawingPane';
import { FindingsPanel } from '../findings/FindingsPanel';
import { TopBar } from './TopBar';
import { NoticeBar } from './NoticeBar';
import { SubjectIndex } from './SubjectIndex';
import { TitleBlock } from './TitleBlock';
import { ViewChoice } from './ViewChoice';
import type { DocumentCommands } from '../state/document-commands';
import { useOpenSubject, useSubjects } from '../subjects/registry';
import { Margin } from './Margin';
import { SkipLinks } from './SkipLinks';
import { useDroppedFiles, useShortcuts } from './use-shortcuts';
import { GlossaryPanel } from '../glossary/GlossaryPanel';

export function App({ commands }: { readonly commands: DocumentCommands }): ReactElement {
  const subjects = useSubjects();
  const { id: subject, title, Inputs, Evidence, layer } = useOpenSubject();
  useShortcuts(commands, layer.chooses);
  useDroppedFiles(commands);
  return (
    <div className="sheet">
      <SkipLinks />
      <TopBar commands={commands} />
      <SubjectIndex />
      <main className="board" aria-label="Drawing">
        <div className="paper">
          <RoomPart part="The drawing">
            <DrawingPane tools={<ViewChoice />} layer={layer} />
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
      {subjects.map(({ id, Follower }) =>
        Follower ? <Follower key={id} isOpen={id === subject} /> : null,
      )}
    </div>
  );
}
