import type { PageAddress } from './page-address';

/** The parts of Electron's web contents and session used here. */
interface Preventable {
  preventDefault(): void;
}

interface NavigationDetails extends Preventable {
  readonly url: string;
  readonly isMainFrame: boolean;
}

export interface GuardedContents {
  on(event: 'will-frame-navigate', listener: (details: NavigationDetails) => void): unknown;
  on(event: 'will-redirect', listener: (details: NavigationDetails) => void): unknown;
  on(event: 'will-attach-webview', listener: (event: Preventable) => void): unknown;
  setWindowOpenHandler(handler: () => { action: 'deny' }): void;
}

export interface GuardedSession {
  setPermissionRequestHandler(
    handler: (contents: unknown, permission: string, answer: (granted: boolean) => void) => void,
  ): void;
  setPermissionCheckHandler(handler: () => boolean): void;
  setDevicePermissionHandler(handler: () => boolean): void;
}

/**
 * The window shows the program's page and nothing else: it may load that page again, and every
 * other navigation (a link, a dropped file, a frame, a redirect), every new window and every
 * embedded web view is refused.
 */
export function guardContents(contents: GuardedContents, page: PageAddress): void {
  const refuseElsewhere = (details: NavigationDetails): void => {
    if (!details.isMainFrame || !isOwnPage(details.url, page)) details.preventDefault();
  };
  contents.on('will-frame-navigate', refuseElsewhere);
  contents.on('will-redirect', refuseElsewhere);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** The page asks for no permission and no device; so none is granted. */
export function refusePermissions(session: GuardedSession): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

function isOwnPage(address: string, page: PageAddress): boolean {
  try {
    const asked = new URL(address);
    const own = new URL(page.url);
    return (
      asked.protocol === own.protocol &&
      asked.host === own.host &&
      asked.pathname === own.pathname &&
      asked.search === own.search &&
      asked.username === '' &&
      asked.password === ''
    );
  } catch {
    return false;
  }
}
