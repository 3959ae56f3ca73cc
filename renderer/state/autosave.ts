/**
 * Keeping the work: a little after the last change, at least every two seconds while changes go on, and at
 * once when the page goes away. Where it cannot be kept that is said once, and closing the page asks.
 */

import type { StoreApi } from 'zustand';
import { readBack } from '../../core/room/read-back';
import type { Host, KeptRoom } from '../host/host';
import { faultLines } from './fault-lines';
import { isUnsaved, type Session } from './session';
import { hasUnsaved, type DocumentState } from './document';

const KEEP_AFTER_MS = 400;
/** A change is kept after this long at most, however fast others follow it. */
const KEEP_WITHIN_MS = 2000;

export interface Keeping {
  readonly keep: () => Promise<void>;
  readonly watch: () => void;
}

export function createAutosave(
  host: Host,
  store: Pick<StoreApi<Session>, 'getState' | 'subscribe'>,
): Keeping {
  let kept = true;
  let refused = false;

  /** Null where the room would not open again: what was kept last stays then. */
  const keptRoom = ({ project, file }: DocumentState): KeptRoom | null => {
    const back = readBack(project);
    if (back.ok) {
      const { name, token, stamp = null } = file;
      return { text: back.text, name, token, stamp };
    }
    if (!refused) {
      store.getState().notify({
        tone: 'bad',
        title: 'The room as it is now is not kept: it could not be opened again',
        lines: [
          ...faultLines(back.faults),
          'Undo the last change. What was kept before is still there.',
        ],
      });
    }
    refused = true;
    return null;
  };

  const keep = async (): Promise<void> => {
    const { past, present } = store.getState().work;
    const { file } = present.state;
    const before = past.findLast(({ state }) => state.file !== file && hasUnsaved(state));
    const room = keptRoom(present.state);
    if (room === null) return;
    refused = false;
    const outcome = await host.keepAutosave({
      ...room,
      savedAtMs: Date.now(),
      unsaved: isUnsaved(store.getState()),
      before: before ? keptRoom(before.state) : null,
    });
    if (outcome.kind === 'failed' && kept) {
      store.getState().notify({
        tone: 'bad',
        title: 'Your work is not kept',
        lines: [outcome.sentence],
      });
    }
    kept = outcome.kind !== 'failed';
  };

  const watch = (): void => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    /** When the oldest change that is not kept yet was made; null where all are. */
    let since: number | null = null;
    const flush = (): void => {
      clearTimeout(timer);
      since = null;
      void keep();
    };
    store.subscribe((now, before) => {
      if (now.work.present === before.work.present) return;
      since ??= Date.now();
      const left = KEEP_WITHIN_MS - (Date.now() - since);
      clearTimeout(timer);
      timer = setTimeout(flush, Math.max(0, Math.min(KEEP_AFTER_MS, left)));
    });
    window.addEventListener('pagehide', flush);
    window.addEventListener('beforeunload', (event) => {
      if (!kept && isUnsaved(store.getState())) event.preventDefault();
    });
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') flush();
    });
  };

  return { keep, watch };
}
