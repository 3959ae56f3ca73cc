import { describe, expect, it } from 'vitest';
import { createDesktopHost, type HostBridge } from '../../renderer/host/desktop-host';

const refuse = (): Promise<never> => Promise.reject(new Error('refused'));

const bridge: HostBridge = {
  open: () => Promise.resolve({ kind: 'cancelled' }),
  reopen: refuse,
  save: refuse,
  recent: refuse,
  print: refuse,
  keepAutosave: refuse,
  readAutosave: refuse,
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
    ];
    for (const outcome of outcomes) expect(outcome.kind).toBe('failed');
    expect(await host.recent()).toEqual([]);
    expect(await host.readAutosave()).toBeNull();
    const record = { text: '', name: 'x', token: null, savedAtMs: 1, unsaved: true, before: null };
    await expect(host.keepAutosave(record)).resolves.toBeUndefined();
  });
});
