import { dialog, type BrowserWindow, type FileFilter } from 'electron';
import path from 'node:path';
import { DATA_KINDS, EXPORT_ENDINGS } from '../../renderer/host/host';
import type { DataQuestions } from './data-files';
import type { FileQuestions } from './room-files';

const ALL_FILES: FileFilter = { name: 'All files', extensions: ['*'] };
const ROOMS: FileFilter[] = [{ name: 'Rooms', extensions: ['json'] }, ALL_FILES];

/** The native dialogs. They stand over the window that asked; where it is gone, nobody is asked. */
export function nativeQuestions(
  currentWindow: () => BrowserWindow | null,
  documentsFolder: string,
): FileQuestions & DataQuestions {
  return {
    async roomToOpen() {
      const window = currentWindow();
      if (window === null) return null;
      const answer = await dialog.showOpenDialog(window, {
        title: 'Open a room',
        filters: ROOMS,
        properties: ['openFile'],
      });
      return answer.canceled ? null : (answer.filePaths[0] ?? null);
    },
    async placeForRoom(name) {
      const window = currentWindow();
      if (window === null) return null;
      const answer = await dialog.showSaveDialog(window, {
        title: 'Save the room',
        defaultPath: path.join(documentsFolder, name),
        filters: ROOMS,
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      });
      return answer.canceled || answer.filePath === '' ? null : answer.filePath;
    },
    async placeForExport(name, type) {
      const window = currentWindow();
      if (window === null) return null;
      const answer = await dialog.showSaveDialog(window, {
        title: 'Save a file',
        defaultPath: path.join(documentsFolder, name),
        filters: [{ name: type, extensions: [EXPORT_ENDINGS[type]] }],
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      });
      return answer.canceled || answer.filePath === '' ? null : answer.filePath;
    },
    async dataToOpen(kind) {
      const window = currentWindow();
      if (window === null) return null;
      const { title, endings } = DATA_KINDS[kind];
      const answer = await dialog.showOpenDialog(window, {
        title: `Open: ${title.toLowerCase()}`,
        filters: [{ name: title, extensions: [...endings] }, ALL_FILES],
        properties: ['openFile'],
      });
      return answer.canceled ? null : (answer.filePaths[0] ?? null);
    },
    async writeOverChanged(name) {
      const window = currentWindow();
      if (window === null) return false;
      const answer = await dialog.showMessageBox(window, {
        type: 'warning',
        message: `Replace "${name}"?`,
        detail:
          'What is in the file now is not what was opened or saved here. ' +
          'Its present content is kept beside it, with the ending .bak.',
        buttons: ['Cancel', 'Replace'],
        defaultId: 0,
        cancelId: 0,
      });
      return answer.response === 1;
    },
  };
}
