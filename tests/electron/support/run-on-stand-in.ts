import { readFile } from 'node:fs/promises';
import { register } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { compileFunction } from 'node:vm';
import * as standIn from './electron-stand-in';

/**
 * Runs the built main process and preload on the stand-in, and prints what happened as JSON. It is
 * a process of its own, so that the replaced module touches nothing else.
 */

const built = path.resolve(import.meta.dirname, '../../../out');
const standInUrl = pathToFileURL(path.join(import.meta.dirname, 'electron-stand-in.ts')).href;
register(
  `data:text/javascript,${encodeURIComponent(
    `export async function resolve(name, context, next) {
       return name === 'electron' ? { url: '${standInUrl}', shortCircuit: true } : next(name, context);
     }`,
  )}`,
);

const { answers, ownEvent, told } = standIn;

await import(pathToFileURL(path.join(built, 'main/main.js')).href);
await new Promise((resolve) => setImmediate(resolve));

const preload = await readFile(path.join(built, 'preload/preload.cjs'), 'utf8');
const runPreload = compileFunction(preload, ['require', 'exports']) as (
  require: () => typeof standIn,
  exports: object,
) => void;
runPreload(() => standIn, {});
const bridge = told.exposed.get('roomwrightBridge') ?? {};

answers.placeToSave = path.join(process.env['STAND_IN_FOLDER'] ?? '', 'den.room.json');
const saved = await bridge['save']?.('{"one":1}', 'den', null);
const foreign = { ...ownEvent, senderFrame: { url: 'https://example.org/', parent: null } };
const page = await told.schemes.get('app')?.({ url: 'app://roomwright/', method: 'GET' });

const heard: unknown[][] = [];
const unsubscribe = bridge['onMenuCommand']?.((...args: unknown[]) => heard.push(args));
clickMenu('undo');
if (typeof unsubscribe === 'function') (unsubscribe as () => void)();
clickMenu('redo');

console.log(
  JSON.stringify({
    sandboxed: told.sandboxed,
    privileges: told.privileges,
    channels: [...told.channels.keys()],
    webPreferences: told.windowOptions[0]?.['webPreferences'],
    loaded: told.loaded,
    permission: told.permission,
    windowOpening: told.windowOpening,
    bridge: Object.keys(bridge),
    exposed: [...told.exposed.keys()],
    saved,
    foreign: await refusal('roomwright:recent', foreign),
    misfit: await refusal('roomwright:reopen', ownEvent, '/etc/passwd'),
    page: { status: page?.status, policy: page?.headers.get('content-security-policy') },
    heard,
    sent: told.sentToWindow,
  }),
);

async function refusal(
  channel: string,
  event: standIn.StandInEvent,
  ...args: unknown[]
): Promise<string> {
  try {
    await told.channels.get(channel)?.(event, ...args);
    return 'answered';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function clickMenu(command: string): void {
  const menu = told.menu as { submenu?: { id?: string; click?: () => void }[] }[];
  const item = menu.flatMap((top) => top.submenu ?? []).find(({ id }) => id === command);
  item?.click?.();
}
