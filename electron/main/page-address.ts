/** The scheme and name under which the built page is served to the window. */
export const OWN_SCHEME = 'app';
export const OWN_NAME = 'roomwright';

/** Where the window's page comes from, and how an address is recognised as ours. */
export interface PageAddress {
  readonly url: string;
  /** Scheme and host (and port) of the page: `app://roomwright` unless in development. */
  readonly origin: string;
  readonly development: boolean;
}

/** A development server runs on this computer. */
const LOCAL_HOST = /^http:\/\/(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/;

/**
 * The built page under the own scheme, or the development server where one is named and the
 * program is not packed: a packed program never loads an address from its surroundings, and an
 * unpacked one no address of another computer.
 */
export function pageAddress(developmentUrl: string | undefined, packed: boolean): PageAddress {
  if (developmentUrl !== undefined && developmentUrl !== '' && !packed) {
    const origin = originOf(developmentUrl);
    if (origin !== null && LOCAL_HOST.test(origin)) {
      return { url: developmentUrl, origin, development: true };
    }
  }
  const origin = `${OWN_SCHEME}://${OWN_NAME}`;
  return { url: `${origin}/`, origin, development: false };
}

/** Scheme, host and port of an address; own schemes too, for which URL.origin may say "null". */
export function originOf(address: string): string | null {
  try {
    const url = new URL(address);
    return url.host === '' ? null : `${url.protocol}//${url.host}`;
  } catch {
    return null;
  }
}
