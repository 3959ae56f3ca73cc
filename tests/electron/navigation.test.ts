import { describe, expect, it } from 'vitest';
import { menuTemplate } from '../../electron/main/menu';
import { guardContents, refusePermissions } from '../../electron/main/navigation';
import { pageAddress } from '../../electron/main/page-address';
import { printPage } from '../../electron/main/printing';
import { MENU_COMMANDS, type MenuCommand } from '../../renderer/host/host';

interface Details {
  readonly url: string;
  readonly isMainFrame: boolean;
  preventDefault(): void;
}

/** Stand-in for web contents: `refuses` says whether an event was called off. */
function guarded() {
  const listeners = new Map<string, (details: Details) => void>();
  let openWindow: () => { action: string } = () => ({ action: 'allow' });
  guardContents(
    {
      on: (event: string, listener: (details: Details) => void) => listeners.set(event, listener),
      setWindowOpenHandler: (handler) => {
        openWindow = handler;
      },
    },
    pageAddress(undefined, true),
  );
  return {
    openWindow: () => openWindow(),
    refuses(event: string, url = '', isMainFrame = true): boolean {
      let refused = false;
      listeners.get(event)?.({
        url,
        isMainFrame,
        preventDefault: () => {
          refused = true;
        },
      });
      return refused;
    },
  };
}

describe('the window', () => {
  it.each([
    'https://example.org/',
    'http://roomwright/',
    'file:///home/person/den.room.json',
    'app://roomwright/other.html',
    'app://roomwright/?x=1',
    'app://example/',
    'app://someone@roomwright/',
    'javascript:alert(1)',
    'data:text/html,x',
    'not an address',
  ])('does not navigate to %s', (url) => {
    expect(guarded().refuses('will-frame-navigate', url)).toBe(true);
    expect(guarded().refuses('will-redirect', url)).toBe(true);
  });

  it('loads its own page again, but not inside a frame', () => {
    expect(guarded().refuses('will-frame-navigate', 'app://roomwright/')).toBe(false);
    expect(guarded().refuses('will-frame-navigate', 'app://roomwright/', false)).toBe(true);
  });

  it('opens no window and embeds no web view', () => {
    expect(guarded().openWindow()).toEqual({ action: 'deny' });
    expect(guarded().refuses('will-attach-webview')).toBe(true);
  });

  it('grants no permission and no device', () => {
    const answers: boolean[] = [];
    refusePermissions({
      setPermissionRequestHandler: (handler) =>
        handler(null, 'media', (granted) => answers.push(granted)),
      setPermissionCheckHandler: (handler) => answers.push(handler()),
      setDevicePermissionHandler: (handler) => answers.push(handler()),
    });
    expect(answers).toEqual([false, false, false]);
  });
});

describe('the menu', () => {
  it.each(['linux', 'win32', 'darwin'] as const)('has every command once on %s', (platform) => {
    const sent: MenuCommand[] = [];
    const menu = menuTemplate({
      platform,
      development: false,
      send: (command) => sent.push(command),
    });
    const items = menu.flatMap((top) => (Array.isArray(top.submenu) ? top.submenu : []));
    for (const { click } of items) (click as (() => void) | undefined)?.();
    expect(sent.sort()).toEqual([...MENU_COMMANDS].sort());
    const roles = items.map((item) => item.role);
    expect(roles).not.toContain('toggleDevTools');
    expect(roles).not.toContain('reload');
  });
});

describe('printing', () => {
  const print = (success: boolean, reason: string) =>
    printPage({ print: (_options, done) => done(success, reason) });

  it('is done, cancelled, or a sentence', async () => {
    expect(await print(true, '')).toEqual({ kind: 'done', value: null });
    expect(await print(false, 'Print job canceled')).toEqual({ kind: 'cancelled' });
    expect(await print(false, 'Invalid printer settings')).toMatchObject({
      kind: 'failed',
      sentence: expect.stringContaining('Invalid printer settings') as string,
    });
    expect((await printPage(null)).kind).toBe('failed');
  });
});
