import { BrowserWindow, dialog } from 'electron';
import type { PageAddress } from './page-address';

/** The security switches are stated, not left to defaults, so that a test can see them. */
export const WINDOW_SECURITY = {
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  webviewTag: false,
  navigateOnDragDrop: false,
} as const;

/** The program's one window. It shows itself once the first picture is ready. */
export function createWindow(page: PageAddress, preloadFile: string): BrowserWindow {
  const window = new BrowserWindow({
    title: 'Roomwright',
    width: 1440,
    height: 920,
    minWidth: 960,
    minHeight: 620,
    show: false,
    webPreferences: { ...WINDOW_SECURITY, preload: preloadFile, devTools: page.development },
  });
  window.once('ready-to-show', () => window.show());
  window.webContents.on('render-process-gone', (_event, details) => {
    if (details.reason !== 'clean-exit') void offerReload(window);
  });
  window.webContents.on('will-prevent-unload', (event) => {
    if (mayLoseWork(window)) event.preventDefault();
  });
  void window.loadURL(page.url).catch((error: unknown) => {
    if (!window.isDestroyed()) showLoadFailure(error);
  });
  return window;
}

async function offerReload(window: BrowserWindow): Promise<void> {
  if (window.isDestroyed()) return;
  const answer = await dialog.showMessageBox(window, {
    type: 'error',
    message: 'The window stopped working.',
    detail: 'Load it again: the work kept last is offered there. Close it to end the program.',
    buttons: ['Load again', 'Close'],
    defaultId: 0,
    cancelId: 1,
  });
  if (window.isDestroyed()) return;
  if (answer.response === 0) window.webContents.reload();
  else window.destroy();
}

/** The window asks not to be closed where its work could not be kept; the person has the last word. */
function mayLoseWork(window: BrowserWindow): boolean {
  const answer = dialog.showMessageBoxSync(window, {
    type: 'warning',
    message: 'Close without saving?',
    detail: 'The work could not be kept on this computer. What is not saved to a file is lost.',
    buttons: ['Stay', 'Close'],
    defaultId: 0,
    cancelId: 0,
  });
  return answer === 1;
}

function showLoadFailure(error: unknown): void {
  const reason = error instanceof Error ? error.message : String(error);
  dialog.showErrorBox(
    'Roomwright could not show its window',
    `The page could not be loaded (${reason}). Install the program again; your rooms are not touched.`,
  );
}
