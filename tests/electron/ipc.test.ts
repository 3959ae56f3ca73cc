import { describe, expect, it } from 'vitest';
import { CHANNELS, type HostHandlers } from '../../electron/ipc/channels';
import { answerQuestions, type AskingEvent } from '../../electron/main/ipc';
import { originOf, pageAddress } from '../../electron/main/page-address';

type Answer = (event: AskingEvent, ...args: unknown[]) => Promise<unknown>;

const TOKEN = 'abcdefghijklmnop_-1234';
const page = pageAddress(undefined, true);
const ownFrame = { url: 'app://roomwright/', parent: null };
const own: AskingEvent = { sender: { id: 7 }, senderFrame: ownFrame };

function aDesk() {
  const answers = new Map<string, Answer>();
  const calls: unknown[][] = [];
  const record = (name: string) =>
    ((...args: unknown[]) => {
      calls.push([name, ...args]);
      return Promise.resolve({ kind: 'cancelled' });
    }) as never;
  const handlers = Object.fromEntries(
    Object.keys(CHANNELS).map((name) => [name, record(name)]),
  ) as unknown as HostHandlers;
  answerQuestions(
    { handle: (channel, answer) => void answers.set(channel, answer) },
    { page, windowContentsId: () => 7 },
    handlers,
  );
  const ask = (channel: string, event: AskingEvent, ...args: unknown[]): Promise<unknown> => {
    const answer = answers.get(channel);
    if (answer === undefined) throw new Error(`no channel ${channel}`);
    return answer(event, ...args);
  };
  return { answers, calls, ask };
}

describe('questions from the window', () => {
  it('are answered on every channel of the map and on no other', () => {
    expect([...aDesk().answers.keys()].sort()).toEqual(Object.values(CHANNELS).sort());
  });

  it('reach their handler with their arguments', async () => {
    const { ask, calls } = aDesk();
    await ask(CHANNELS.save, own, '{}', 'den.room.json', TOKEN);
    await ask(CHANNELS.save, own, '{}', 'den.room.json', null);
    await ask(CHANNELS.recent, own);
    await ask(CHANNELS.exportBytes, own, 'plan', 'image/svg+xml', Uint8Array.of(1));
    await ask(CHANNELS.openData, own, 'recording');
    expect(calls).toEqual([
      ['save', '{}', 'den.room.json', TOKEN],
      ['save', '{}', 'den.room.json', null],
      ['recent'],
      ['exportBytes', 'plan', 'image/svg+xml', Uint8Array.of(1)],
      ['openData', 'recording'],
    ]);
  });

  const foreign: readonly (readonly [string, AskingEvent])[] = [
    ['another window', { sender: { id: 8 }, senderFrame: ownFrame }],
    ['a frame in the page', { ...own, senderFrame: { ...ownFrame, parent: ownFrame } }],
    ['a frame that is gone', { ...own, senderFrame: null }],
    ['another site', { ...own, senderFrame: { url: 'https://example.org/', parent: null } }],
    ['another name', { ...own, senderFrame: { url: 'app://roomwright.example/', parent: null } }],
    ['a page of the file system', { ...own, senderFrame: { url: 'file:///x.html', parent: null } }],
    ['an empty page', { ...own, senderFrame: { url: 'about:blank', parent: null } }],
  ];

  it.each(foreign)('are refused from %s', async (_who, event) => {
    const { ask, calls } = aDesk();
    await expect(ask(CHANNELS.open, event)).rejects.toThrow('refused');
    expect(calls).toEqual([]);
  });

  const misfits: readonly (readonly [string, keyof typeof CHANNELS, unknown[]])[] = [
    ['too few arguments', 'save', ['{}']],
    ['too many arguments', 'open', ['/etc/passwd']],
    ['a path for a token', 'reopen', ['/home/person/den.room.json']],
    ['a number for a text', 'save', [1, 'den', null]],
    ['an object for a token', 'save', ['{}', 'den', { toString: 'x' }]],
    ['an empty name', 'save', ['{}', '', null]],
    ['a type that is not exported', 'exportBytes', ['x', 'text/html', Uint8Array.of(1)]],
    ['a list for bytes', 'exportBytes', ['x', 'text/csv', [1, 2]]],
    ['a kind of data that there is not', 'openData', ['room']],
    ['a record without its time', 'keepAutosave', [{ text: '', name: 'x', token: null }]],
    [
      'a record with more than its fields',
      'keepAutosave',
      [{ text: '', name: 'x', token: null, savedAtMs: 1, unsaved: true, before: null, path: '/x' }],
    ],
  ];

  it.each(misfits)('are refused with %s', async (_what, method, args) => {
    const { ask, calls } = aDesk();
    await expect(ask(CHANNELS[method], own, ...args)).rejects.toThrow('refused');
    expect(calls).toEqual([]);
  });
});

describe('the address of the page', () => {
  it('is the own scheme, unless a development server is named and the program is not packed', () => {
    expect(pageAddress(undefined, false).url).toBe('app://roomwright/');
    expect(pageAddress('http://localhost:5173', true)).toEqual(page);
    expect(pageAddress('nonsense', false)).toEqual(page);
    expect(pageAddress('https://example.org/', false)).toEqual(page);
    expect(pageAddress('http://localhost.example.org/', false)).toEqual(page);
    expect(pageAddress('http://localhost:5173', false)).toEqual({
      url: 'http://localhost:5173',
      origin: 'http://localhost:5173',
      development: true,
    });
  });

  it('has an origin of scheme, host and port', () => {
    expect(originOf('app://roomwright/index.html?x#y')).toBe('app://roomwright');
    expect(originOf('http://localhost:5173/a')).toBe('http://localhost:5173');
    expect(originOf('about:blank')).toBeNull();
    expect(originOf('')).toBeNull();
  });
});
