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

/** The longest that a start waits for the desktop runtime to arrive. */
const FETCH_LIMIT_MS = 60_000;

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

  say(`Fetching the desktop runtime once (up to ${FETCH_LIMIT_MS / 1000} seconds)…`);
  const result = await fetch(installer, FETCH_LIMIT_MS);
  const fetched = result === 'fetched' ? findRuntime(surroundings) : null;
  if (fetched !== null) return { kind: 'desktop', runtime: fetched };
  await remember(root, { fetchFailedAtMs: Date.now() });
  return browser(
    result === 'too-slow'
      ? 'the desktop runtime did not arrive in time; "npx install-electron" fetches it'
      : 'the desktop runtime could not be fetched; "npx install-electron" tries again',
  );
}
