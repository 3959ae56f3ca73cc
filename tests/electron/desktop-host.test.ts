import { describe, expect, it } from 'vitest';
import { createDesktopHost, type HostBridge } from '../../renderer/host/desktop-host';

const refuse = (): Promise<never> => Promise.reject(new Error('refused'));

const bridge: HostBridge = {
  open: () => Promise.resolve({ kind: 'cancelled' }),
  reopen: refuse,
  save: refuse,
  exportBytes: refuse,
  openData: refuse,
  recent: refuse,
  print: refuse,
  keepAutosave: refuse,
  readAutosave: refuse,
  forgetUnreadable: refuse,
  onMenuCommand: () => () => undefined,
};

describe('the host of the desktop program', () => {
  const host = createDesktopHost(bridge);

  it('hands outcomes on as they are', async () => {
    expect(host.edition).toBe('desktop');
    expect(await host.open()).toEqual({ kind: 'cancelled' });
  });

  it('throws nothing where a question is refused', async () => {
    const outcomes = [
      await host.reopen('x'),
      await host.save('{}', 'den', null),
      await host.print(),
      await host.exportBytes('plan', 'image/svg+xml', Uint8Array.of(1)),
      await host.openData('recording'),
    ];
    for (const outcome of outcomes) expect(outcome.kind).toBe('failed');
    expect(await host.recent()).toEqual([]);
    expect(await host.readAutosave()).toEqual({ record: null, unreadable: [] });
    await expect(host.forgetUnreadable('x')).resolves.toBeUndefined();
    const room = { text: '', name: 'x', token: null, stamp: null };
    const record = { ...room, savedAtMs: 1, unsaved: true, before: null };
    expect((await host.keepAutosave(record)).kind).toBe('failed');
  });
});
