import '@fontsource/barlow/400.css';
import '@fontsource/barlow/500.css';
import '@fontsource/barlow/600.css';
import '@fontsource/barlow-semi-condensed/400.css';
import '@fontsource/barlow-semi-condensed/500.css';
import '@fontsource/barlow-semi-condensed/600.css';
import './style/window.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App';
import { BrokenWindow } from './app/BrokenWindow';
import { tellErrors } from './app/tell-errors';
import { PartBoundary } from './kit/controls/PartBoundary';
import { followRoom } from './pressure/built-store';
import { chooseHost } from './host/choose-host';
import { createDocumentCommands } from './state/document-commands';
import { useSession } from './state/session';
import { SUBJECTS } from './subjects/registry';
import { keepPlaceOnPaper, onLightPaper } from './state/paper';

tellErrors(useSession);
const commands = createDocumentCommands(chooseHost(), useSession, onLightPaper);
void commands.start();
keepPlaceOnPaper();
followRoom();
useSession.getState().setSubject(SUBJECTS[0].id);

const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <PartBoundary
        part="The window"
        instead={(error, retry) => (
          <BrokenWindow error={error} commands={commands} onRetry={retry} />
        )}
      >
        <App commands={commands} />
      </PartBoundary>
    </StrictMode>,
  );
}
