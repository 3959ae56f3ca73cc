/** What fails outside of the drawing of components (a press, a timer, a promise) is told, not swallowed. */

import type { StoreApi } from 'zustand';
import { errorText } from '../kit/controls/error-text';
import { heldErrors } from '../kit/controls/PartBoundary';
import type { Session } from '../state/session';

const HOLD_MS = 100;

/** Returns the way to stop. */
export function tellErrors(store: Pick<StoreApi<Session>, 'getState'>): () => void {
  const tell = (error: unknown): void =>
    store.getState().notify({
      tone: 'bad',
      title: 'The last step met an error in the program',
      lines: [
        'It may not have been done. Your room is kept: look whether it is as you want it, and save it.',
        errorText(error),
      ],
    });
  // What the browser itself reports here (a resize that comes too late) carries no error.
  const onError = ({ error }: ErrorEvent): void => {
    if (!(error instanceof Error)) return;
    // The scene's own renderer reports what a part of the window then holds: wait whether it does.
    setTimeout(() => {
      if (!heldErrors.has(error)) tell(error);
    }, HOLD_MS);
  };
  const onRejection = ({ reason }: PromiseRejectionEvent): void => tell(reason);
  window.addEventListener('error', onError);
  window.addEventListener('unhandledrejection', onRejection);
  return () => {
    window.removeEventListener('error', onError);
    window.removeEventListener('unhandledrejection', onRejection);
  };
}
