/** What an exception says, short enough to be shown and read out to whoever mends the program. */

import { onOneLine } from '../../../core/room/fault';

const LONGEST = 240;

export function errorText(error: unknown): string {
  const text = onOneLine(
    error instanceof Error ? `${error.name}: ${error.message}` : String(error),
  );
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
