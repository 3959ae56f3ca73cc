/** Names to offer for a room's file: plain ones, that every system takes and that look as they are. */

import { onOneLine } from './fault';

/** Characters that some file system refuses. */
const REFUSED = /[<>:"/\\|?*]/g;
/** Names that are devices on some systems, whatever ends in them. */
const DEVICES = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;
/** Some file systems take 255 bytes; a letter may need four. */
const LONGEST = 60;

const ROOM_EXTENSION = '.room.json';

/** A plain file name, whatever is suggested: `room` where nothing is left of it. */
export function plainFileName(suggested: string): string {
  // Control characters are replaced before they would become blanks.
  const plain = onOneLine(suggested.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, '-'))
    .replace(REFUSED, '-')
    .replace(/^[.\s]+/, '')
    .replace(/[.\s]+$/, '');
  if (plain === '') return 'room';
  return DEVICES.test(plain) ? `room-${plain}` : plain;
}

/** A plain file name that ends in `ending`, such as `.pdf`. */
export function fileNameEnding(suggested: string, ending: `.${string}`): string {
  const plain = plainFileName(suggested);
  return plain.toLowerCase().endsWith(ending) ? plain : `${plain}${ending}`;
}

/** A plain name ending in `.room.json`, without doubling it where a part of it is already there. */
export function roomFileName(suggested: string): string {
  const stem = plainFileName(suggested).replace(/(\.room)?\.json$/i, '');
  const short = [...stem].slice(0, LONGEST).join('').trim();
  return `${short === '' ? 'room' : short}${ROOM_EXTENSION}`;
}
