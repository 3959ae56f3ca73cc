import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const KEY_BYTES = 24;

/**
 * The keys of one run of the server. A person shows a token in the address once and gets a session
 * cookie for it. A launch token holds for one visit: it is printed in the person's own terminal, and
 * handed to a browser on a command line, which other users of the computer can read; what stays of it
 * in a browser's history opens nothing. The run token holds until the server stops: it is for a start
 * without a terminal, where no fresh one can be asked for.
 */
export class AccessKeys {
  readonly runToken = newKey();
  /** The cookie's value; the same for every browser that was let in. */
  readonly session = newKey();
  private readonly launchTokens: string[] = [];

  newLaunchToken(): string {
    const token = newKey();
    this.launchTokens.push(token);
    return token;
  }

  /** True where `token` opens the door now; a launch token is used up by this. */
  admits(token: string): boolean {
    // Every known token is compared, so that the time taken does not tell which one came close.
    const used = this.launchTokens.map((known) => sameKey(known, token)).indexOf(true);
    const isRunToken = sameKey(this.runToken, token);
    if (used >= 0) this.launchTokens.splice(used, 1);
    return isRunToken || used >= 0;
  }

  isSession(value: string): boolean {
    return sameKey(this.session, value);
  }
}

function newKey(): string {
  return randomBytes(KEY_BYTES).toString('base64url');
}

/** Compares in a time that depends neither on the content nor on the length. */
function sameKey(known: string, shown: string): boolean {
  return timingSafeEqual(digest(known), digest(shown));
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text, 'utf8').digest();
}
