import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../../renderer/host/host';

export interface MenuSurroundings {
  readonly platform: NodeJS.Platform;
  readonly development: boolean;
  readonly send: (command: MenuCommand) => void;
}

/**
 * The native menu. Its commands only tell the window what was chosen. A text field that has the
 * focus still gets its own undo, because the page sees a key before the menu does.
 */
export function menuTemplate(surroundings: MenuSurroundings): MenuItemConstructorOptions[] {
  const { platform, development, send } = surroundings;
  const mac = platform === 'darwin';
  const item = (label: string, command: MenuCommand, accelerator: string) => ({
    label,
    accelerator,
    id: command,
    click: () => send(command),
  });
  const separator = { type: 'separator' } as const;

  const file: MenuItemConstructorOptions = {
    label: '&File',
    submenu: [
      item('&New room', 'new', 'CmdOrCtrl+N'),
      item('&Open…', 'open', 'CmdOrCtrl+O'),
      separator,
      item('&Save', 'save', 'CmdOrCtrl+S'),
      item('Save &as…', 'save-as', 'CmdOrCtrl+Shift+S'),
      separator,
      item('&Print…', 'print', 'CmdOrCtrl+P'),
      ...(mac ? [] : [separator, { role: 'quit' } as const]),
    ],
  };
  const edit: MenuItemConstructorOptions = {
    label: '&Edit',
    submenu: [
      item('&Undo', 'undo', 'CmdOrCtrl+Z'),
      item('&Redo', 'redo', platform === 'win32' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z'),
      separator,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: '&View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      separator,
      { role: 'togglefullscreen' },
      ...(development
        ? [separator, { role: 'reload' } as const, { role: 'toggleDevTools' } as const]
        : []),
    ],
  };
  const ends: MenuItemConstructorOptions[] = mac ? [{ role: 'windowMenu' }] : [];
  return [...(mac ? [{ role: 'appMenu' } as const] : []), file, edit, view, ...ends];
}
