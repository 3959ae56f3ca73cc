/** Characters that some file system refuses, and control characters. */
const REFUSED = /[<>:"/\\|?*\u0000-\u001f]/g;

const ROOM_EXTENSION = '.room.json';

/** A name to offer in a save dialog: a plain file name, whatever the room is called. */
function plainFileName(suggested: string): string {
  const plain = suggested
    .replace(REFUSED, '-')
    .replace(/^[.\s]+/, '')
    .replace(/[.\s]+$/, '');
  return plain === '' ? 'room' : plain;
}

/** As above, ending in `.room.json`, without doubling it where a part of it is already there. */
export function roomFileName(suggested: string): string {
  const stem = plainFileName(suggested).replace(/(\.room)?\.json$/i, '');
  return `${stem === '' ? 'room' : stem}${ROOM_EXTENSION}`;
}
