import { readFileSync } from 'node:fs';
import type { ReadStream } from 'node:tty';

/** Calls back at every Enter in the terminal, until it is stopped by what it returns. */
export type EnterKey = (pressed: () => void) => () => void;

/**
 * The Enter key of the person's terminal; null where there is none to press: standard input is no
 * terminal, or the program runs in the background, where reading from the terminal would halt it.
 */
export function enterKey(
  input: ReadStream | NodeJS.ReadStream = process.stdin,
  foreground: () => boolean = inForeground,
): EnterKey | null {
  if (!input.isTTY || !foreground()) return null;
  return (pressed) => {
    const onData = (typed: Buffer | string): void => {
      if (/[\r\n]/.test(typed.toString())) pressed();
    };
    // A terminal that is closed gives an error; the program then ends by its own signal.
    const onError = (): void => undefined;
    input.on('data', onData).on('error', onError);
    return () => {
      input.off('data', onData);
      input.pause();
    };
  };
}

/** Whether the terminal is this program's to read. Known on Linux; elsewhere it is taken for granted. */
function inForeground(): boolean {
  try {
    const stat = readFileSync('/proc/self/stat', 'utf8');
    // After the program's name in brackets: state, parent, group, session, terminal, its front group.
    const [, , group, , , front] = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return group === front;
  } catch {
    return true;
  }
}
