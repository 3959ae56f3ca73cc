import path from 'node:path';

/**
 * A stand-in for the desktop runtime's module, as far as the program's main process and preload use
 * it. It shows that the built files start, declare, register and refuse. It proves nothing about
 * the real sandbox, menus, dialogs or schemes.
 */

type Listener = (...args: never[]) => unknown;

export interface StandInEvent {
  readonly sender: { readonly id: number };
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

const WINDOW_ID = 11;

/** Everything that the program told the runtime. */
export const told = {
  sandboxed: false,
  privileges: [] as unknown[],
  schemes: new Map<string, (request: { url: string; method: string }) => Promise<Response>>(),
  channels: new Map<string, (event: StandInEvent, ...args: unknown[]) => Promise<unknown>>(),
  windowOptions: [] as Record<string, unknown>[],
  loaded: [] as string[],
  menu: null as unknown,
  permission: null as boolean | null,
  windowOpening: null as unknown,
  sentToWindow: [] as unknown[][],
  exposed: new Map<string, Record<string, (...args: unknown[]) => unknown>>(),
  windowListeners: new Map<string, Listener>(),
};

/** What the person answers in the save dialog. */
export const answers = { placeToSave: '' };

export const ownEvent: StandInEvent = {
  sender: { id: WINDOW_ID },
  senderFrame: { url: 'app://roomwright/', parent: null },
};

const appListeners = new Map<string, Listener>();

export const app = {
  isPackaged: true,
  enableSandbox: () => {
    told.sandboxed = true;
  },
  on: (event: string, listener: Listener) => appListeners.set(event, listener),
  requestSingleInstanceLock: () => true,
  whenReady: () => Promise.resolve(),
  getPath: (name: string) => path.join(process.env['STAND_IN_FOLDER'] ?? '', name),
  quit: () => undefined,
  exit: () => undefined,
};

export const protocol = {
  registerSchemesAsPrivileged: (schemes: unknown[]) => told.privileges.push(...schemes),
  handle: (
    scheme: string,
    answer: (request: { url: string; method: string }) => Promise<Response>,
  ) => told.schemes.set(scheme, answer),
};

export const session = {
  defaultSession: {
    setPermissionRequestHandler: (
      handler: (contents: null, permission: string, answer: (granted: boolean) => void) => void,
    ) =>
      handler(null, 'media', (granted) => {
        told.permission = granted;
      }),
    setPermissionCheckHandler: () => undefined,
    setDevicePermissionHandler: () => undefined,
  },
};

export const ipcMain = {
  handle: (
    channel: string,
    answer: (event: StandInEvent, ...args: unknown[]) => Promise<unknown>,
  ) => told.channels.set(channel, answer),
};

export const Menu = {
  buildFromTemplate: (template: unknown) => template,
  setApplicationMenu: (menu: unknown) => {
    told.menu = menu;
  },
};

export const dialog = {
  showSaveDialog: () => Promise.resolve({ canceled: false, filePath: answers.placeToSave }),
  showOpenDialog: () => Promise.resolve({ canceled: true, filePaths: [] }),
  showMessageBox: () => Promise.resolve({ response: 0 }),
  showErrorBox: () => undefined,
};

export class BrowserWindow {
  readonly webContents = {
    id: WINDOW_ID,
    on: () => undefined,
    setWindowOpenHandler: (handler: () => unknown) => {
      told.windowOpening = handler();
    },
    send: (...args: unknown[]) => {
      told.sentToWindow.push(args);
      const [channel, ...rest] = args;
      rendererListeners.get(channel as string)?.({ sender: 'an event object' }, ...rest);
    },
  };

  constructor(options: Record<string, unknown>) {
    told.windowOptions.push(options);
    const created = appListeners.get('web-contents-created') as
      ((event: unknown, contents: unknown) => void) | undefined;
    created?.({}, this.webContents);
  }

  on(event: string, listener: Listener): void {
    told.windowListeners.set(event, listener);
  }

  once(event: string, listener: Listener): void {
    told.windowListeners.set(event, listener);
  }

  show(): void {}

  loadURL(url: string): Promise<void> {
    told.loaded.push(url);
    return Promise.resolve();
  }
}

/** The preload's side: a question goes straight to the main process, as if the own page asked. */
const rendererListeners = new Map<string, (...args: unknown[]) => void>();

export const ipcRenderer = {
  invoke: (channel: string, ...args: unknown[]) => told.channels.get(channel)?.(ownEvent, ...args),
  on: (channel: string, listener: (...args: unknown[]) => void) =>
    rendererListeners.set(channel, listener),
  removeListener: (channel: string) => rendererListeners.delete(channel),
};

export const contextBridge = {
  exposeInMainWorld: (name: string, value: Record<string, (...args: unknown[]) => unknown>) =>
    told.exposed.set(name, value),
};
