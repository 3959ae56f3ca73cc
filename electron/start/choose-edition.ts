import {
  fetchRuntime,
  findRuntime,
  reasonAgainstDesktop,
  runtimeInstaller,
  type Surroundings,
} from './desktop-runtime';
import type { StartOptions } from './options';
import { failedToday, recall, remember } from './start-memory';

export type Edition =
  | { readonly kind: 'desktop'; readonly runtime: string }
  | { readonly kind: 'browser'; readonly reason: string };

/** When no byte of the desktop runtime has come for so long, the start goes on without it. */
const STALL_MS = 30_000;
const LOOK_MS = 1_000;
/** How often the person hears how much has come. */
const SAY_MS = 5_000;
/** What the runtime's own installer asks for, by its package; older ones may do, and are tried. */
const INSTALLER_NODE = [22, 12] as const;

/**
 * The desktop program where its runtime is here or can be fetched; else the browser edition, with
 * the reason. A fetch that failed is not tried again on the same day.
 */
export async function chooseEdition(
  options: StartOptions,
  surroundings: Surroundings,
  say: (line: string) => void,
  fetch: typeof fetchRuntime = fetchRuntime,
): Promise<Edition> {
  const browser = (reason: string): Edition => ({ kind: 'browser', reason });
  if (options.browser) return browser('it was asked for');

  const against = reasonAgainstDesktop(surroundings);
  if (against !== null) return browser(against);

  const present = findRuntime(surroundings);
  if (present !== null) return { kind: 'desktop', runtime: present };

  const { root, env } = surroundings;
  if (env['ROOMWRIGHT_OFFLINE'] === '1') {
    return browser('the desktop runtime is missing, and ROOMWRIGHT_OFFLINE=1 forbids fetching it');
  }
  const installer = runtimeInstaller(root);
  if (installer === null) return browser('the desktop runtime is missing; run "npm ci" to get it');
  if (failedToday(await recall(root), Date.now())) {
    return browser(
      'the desktop runtime is missing and could not be fetched earlier today; ' +
        '"npx install-electron" tries again',
    );
  }

  say('Fetching the desktop runtime once, about 100 MB…');
  let saidAtMs = Date.now();
  const result = await fetch(installer, {
    stallMs: STALL_MS,
    lookMs: LOOK_MS,
    onBytes: (bytes) => {
      if (Date.now() - saidAtMs < SAY_MS) return;
      saidAtMs = Date.now();
      say(`  ${(bytes / 1e6).toFixed(0)} MB so far`);
    },
  });
  const fetched = result === 'fetched' ? findRuntime(surroundings) : null;
  if (fetched !== null) return { kind: 'desktop', runtime: fetched };
  await remember(root, { fetchFailedAtMs: Date.now() });
  return browser(
    result === 'stopped-coming'
      ? `nothing more of the desktop runtime came for ${STALL_MS / 1000} seconds; "npx install-electron" fetches it`
      : `the desktop runtime could not be fetched${nodeTooOld(surroundings.node)}; "npx install-electron" tries again`,
  );
}

function nodeTooOld(node: string): string {
  const [major = 0, minor = 0] = node.replace(/^v/, '').split('.').map(Number);
  const [needed, least] = INSTALLER_NODE;
  if (major > needed || (major === needed && minor >= least)) return '';
  return ` (its installer asks for Node ${needed}.${least} or newer, this is ${node})`;
}
