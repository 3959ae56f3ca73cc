/** A window with one subject more than the program has, invented for a test: a record, and nothing else. */

import { createRoot } from 'react-dom/client';
import { App } from '../../../renderer/app/App';
import { chooseHost } from '../../../renderer/host/choose-host';
import { createDocumentCommands } from '../../../renderer/state/document-commands';
import { useSession } from '../../../renderer/state/session';
import { SUBJECTS, SubjectsContext } from '../../../renderer/subjects/registry';
import type { Subject } from '../../../renderer/subjects/subject';

const MADE_UP: Subject = {
  id: 'made-up',
  title: 'Made up',
  about: 'invented',
  Inputs: () => <p>Inputs of the made-up subject</p>,
  Evidence: () => <p>Evidence of the made-up subject</p>,
  layer: {
    chooses: ['subwoofer'],
    labels: ({ project }) => [
      {
        key: 'made-up',
        at: [project.room.size.width / 2, project.room.size.length / 2, 1],
        node: <span>made-up label</span>,
      },
    ],
    Scene: () => <group name="made-up" />,
  },
  tells: [],
};

const commands = createDocumentCommands(chooseHost(), useSession, (print) => print());
const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <SubjectsContext value={[...SUBJECTS, MADE_UP]}>
      <App commands={commands} />
    </SubjectsContext>,
  );
}
