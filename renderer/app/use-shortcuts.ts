/** Keys that work everywhere in the window. */

import { useEffect } from 'react';
import { isRemovable, removeThing } from '../state/remove-thing';
import { chosenThing, type ThingKind } from '../state/selection';
import type { DocumentCommands } from '../state/document-commands';
import { projectOf, useSession, VIEWS } from '../state/session';

/** What takes letters, or a choice by its first letter. */
const TEXT_FIELDS = 'input:not([type="radio"], [type="checkbox"]), textarea, select';

/** `chooses` are the kinds of things that are chosen in the open subject, which Delete takes out. */
export function useShortcuts(commands: DocumentCommands, chooses: readonly ThingKind[]): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const session = useSession.getState();
      const field = event.target instanceof HTMLElement ? event.target : null;
      const typing = field?.matches('[data-typing="true"]') ?? false;
      const inField = field?.matches('[data-typing]') ?? false;
      const inText = field?.matches(TEXT_FIELDS) ?? false;
      const command = event.ctrlKey || event.metaKey;
      const key = event.key.toLowerCase();
      const run = (action: () => unknown): void => {
        event.preventDefault();
        action();
      };
      // What stands in a field counts as typed: leaving the field takes it.
      if (command && (key === 's' || key === 'o') && typing) field?.blur();
      if (command && key === 's') run(event.shiftKey ? commands.saveAs : commands.save);
      else if (command && key === 'o') run(commands.open);
      else if (command && key === 'p') run(commands.print);
      else if (typing) return;
      else if (command && key === 'z') run(event.shiftKey ? session.redo : session.undo);
      else if (command && key === 'y') run(session.redo);
      else if (event.key === 'Delete' || event.key === 'Backspace') {
        const chosen = chosenThing(projectOf(session), session.selected, chooses);
        if (!command && !event.defaultPrevented && !inText && isRemovable(chosen))
          run(() => removeThing(chosen));
      } else if (!command && !event.altKey && !inField) {
        const view = VIEWS[Number(event.key) - 1];
        if (view) run(() => session.setView(view));
      }
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [commands, chooses]);
}

/** A file dropped anywhere on the window is opened; the browser must not show it in the page's place. */
export function useDroppedFiles(commands: DocumentCommands): void {
  useEffect(() => {
    const carriesFile = ({ dataTransfer }: DragEvent): boolean =>
      dataTransfer?.types.includes('Files') ?? false;
    const onDragOver = (event: DragEvent): void => {
      if (carriesFile(event)) event.preventDefault();
    };
    const onDrop = (event: DragEvent): void => {
      if (!carriesFile(event) || event.dataTransfer === null) return;
      event.preventDefault();
      void commands.openDropped(event.dataTransfer);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, [commands]);
}
