import { app, ipcMain, Menu, protocol, session, type BrowserWindow } from 'electron';
import path from 'node:path';
import { settleWrites } from '../files/atomic-write';
import { MENU_CHANNEL } from '../ipc/channels';
import { developmentPolicy } from '../policy/content-security-policy';
import { AutosaveFile } from './autosave-file';
import { DataFiles } from './data-files';
import { nativeQuestions } from './dialogs';
import { answerQuestions } from './ipc';
import { menuTemplate } from './menu';
import { guardContents, refusePermissions } from './navigation';
import { OWN_SCHEME, pageAddress } from './page-address';
import { PathTokens } from './path-tokens';
import { printPage } from './printing';
import { OWN_SCHEME_PRIVILEGES, serveOwnScheme } from './protocol';
import { RecentFiles } from './recent-files';
import { RoomFiles, type FileQuestions } from './room-files';
import { createWindow } from './window';

/** The desktop program's start, in the order in which it happens. */

const here = import.meta.dirname;
const page = pageAddress(process.env['ELECTRON_RENDERER_URL'], app.isPackaged);
let window: BrowserWindow | null = null;

app.enableSandbox();
protocol.registerSchemesAsPrivileged([OWN_SCHEME_PRIVILEGES]);
app.on('web-contents-created', (_event, contents) => guardContents(contents, page));
app.on('window-all-closed', () => app.quit());

if (app.requestSingleInstanceLock()) {
  app.on('second-instance', showWindow);
  app.on('will-quit', finishWrites);
  void app.whenReady().then(start);
} else {
  app.quit();
}

function start(): void {
  refusePermissions(session.defaultSession);
  protocol.handle(OWN_SCHEME, (request) => serveOwnScheme(path.join(here, '../renderer'), request));
  if (page.development) relaxPolicyFor(page.origin);

  const questions = nativeQuestions(() => window, app.getPath('documents'));
  const files = roomFiles(questions);
  const data = new DataFiles(questions);
  answerQuestions(
    ipcMain,
    { page, windowContentsId: () => window?.webContents.id ?? null },
    {
      open: () => files.open(),
      reopen: (token) => files.reopen(token),
      save: (text, name, token, options) => files.save(text, name, token, options),
      exportBytes: (name, type, bytes) => data.exportBytes(name, type, bytes),
      openData: (kind) => data.openData(kind),
      recent: () => files.recent(),
      print: () => printPage(window?.webContents ?? null),
      keepAutosave: (record) => files.keepAutosave(record),
      readAutosave: () => files.readAutosave(),
      forgetUnreadable: (id) => files.forgetUnreadable(id),
    },
  );

  Menu.setApplicationMenu(
    Menu.buildFromTemplate(
      menuTemplate({
        platform: process.platform,
        development: page.development,
        send: (command) => window?.webContents.send(MENU_CHANNEL, command),
      }),
    ),
  );

  window = createWindow(page, path.join(here, '../preload/preload.cjs'));
  window.on('closed', () => {
    window = null;
  });
}

function roomFiles(ask: FileQuestions): RoomFiles {
  const settings = app.getPath('userData');
  const tokens = new PathTokens();
  return new RoomFiles({
    tokens,
    recents: new RecentFiles(path.join(settings, 'recent-rooms.json')),
    autosave: new AutosaveFile(path.join(settings, 'autosave.json'), tokens),
    ask,
  });
}

function showWindow(): void {
  if (window === null) return;
  if (window.isMinimized()) window.restore();
  window.focus();
}

/** A write that is under way when the last window closes is finished before the program ends. */
function finishWrites(event: { preventDefault(): void }): void {
  event.preventDefault();
  void settleWrites().finally(() => app.exit(0));
}

function relaxPolicyFor(origin: string): void {
  session.defaultSession.webRequest.onHeadersReceived(
    { urls: [`${origin}/*`] },
    ({ responseHeaders }, answer) => {
      const policy = [developmentPolicy(origin)];
      answer({ responseHeaders: { ...responseHeaders, 'Content-Security-Policy': policy } });
    },
  );
}
