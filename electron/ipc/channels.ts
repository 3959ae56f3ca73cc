import type { Host } from '../../renderer/host/host';

/**
 * The one map of what the window may ask of the main process. The preload calls by it, the main
 * process answers by it, and the types of both follow from the host interface.
 */

/** The host's functions that travel as a question with an answer. */
export type HostMethod = Exclude<keyof Host, 'edition' | 'onMenuCommand' | 'openDropped'>;

export type HostHandlers = {
  readonly [M in HostMethod]: (...args: Parameters<Host[M]>) => ReturnType<Host[M]>;
};

/** What the preload exposes to the page: the host without its label and what the page does itself. */
export type HostBridge = Omit<Host, 'edition' | 'openDropped'>;

export const CHANNELS = {
  open: 'roomwright:open',
  reopen: 'roomwright:reopen',
  save: 'roomwright:save',
  exportBytes: 'roomwright:export-bytes',
  openData: 'roomwright:open-data',
  recent: 'roomwright:recent',
  print: 'roomwright:print',
  keepAutosave: 'roomwright:keep-autosave',
  readAutosave: 'roomwright:read-autosave',
  forgetUnreadable: 'roomwright:forget-unreadable',
} as const satisfies Record<HostMethod, string>;

export const HOST_METHODS = Object.keys(CHANNELS) as HostMethod[];

/** Main process to window: a menu command was chosen. */
export const MENU_CHANNEL = 'roomwright:menu-command';

/** The name under which the page finds the bridge. */
export const BRIDGE_NAME = 'roomwrightBridge';
