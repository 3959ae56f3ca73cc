import { createBrowserHost } from './browser-host';
import { createDesktopHost } from './desktop-host';
import type { Host } from './host';

/** The host of this window: the desktop one where the preload put its bridge, else the browser one. */
export function chooseHost(): Host {
  const bridge = window.roomwrightBridge;
  return bridge === undefined ? createBrowserHost() : createDesktopHost(bridge);
}
