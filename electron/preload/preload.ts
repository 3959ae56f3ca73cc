import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';
import { MENU_COMMANDS, type MenuCommand } from '../../renderer/host/host';
import {
  BRIDGE_NAME,
  CHANNELS,
  MENU_CHANNEL,
  type HostBridge,
  type HostHandlers,
  type HostMethod,
} from '../ipc/channels';

/**
 * The one object that the page gets: named functions, no Electron object. An answer is data; an
 * event object never reaches a listener of the page.
 */

function question<M extends HostMethod>(method: M): HostHandlers[M] {
  const ask = (...args: unknown[]): Promise<unknown> =>
    ipcRenderer.invoke(CHANNELS[method], ...args);
  return ask as HostHandlers[M];
}

const isMenuCommand = (value: unknown): value is MenuCommand =>
  MENU_COMMANDS.some((command) => command === value);

const bridge: HostBridge = {
  open: question('open'),
  reopen: question('reopen'),
  save: question('save'),
  exportBytes: question('exportBytes'),
  openData: question('openData'),
  recent: question('recent'),
  print: question('print'),
  keepAutosave: question('keepAutosave'),
  readAutosave: question('readAutosave'),
  forgetUnreadable: question('forgetUnreadable'),
  onMenuCommand(listener) {
    const relay = (_event: IpcRendererEvent, command: unknown): void => {
      if (isMenuCommand(command)) listener(command);
    };
    ipcRenderer.on(MENU_CHANNEL, relay);
    return () => {
      ipcRenderer.removeListener(MENU_CHANNEL, relay);
    };
  },
};

contextBridge.exposeInMainWorld(BRIDGE_NAME, bridge);
