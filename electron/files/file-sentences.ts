import path from 'node:path';
import { WHY_NOT_TEXT, whyTooLarge } from '../../core/room/read-json';
import { ReadOnlyFileError } from './temporary';
import { errorCode } from './error-code';

/** What went wrong with a file, as a sentence that says what to do. */

const LOOK_WITH_OPEN = 'It may have been moved or renamed; look for it with Open.';

/** `remedy` is what the person can do instead, such as 'Choose another place with Save as.' */
export function saveFailure(file: string, error: unknown, remedy: string): string {
  const start = `Could not save "${path.basename(file)}":`;
  if (error instanceof ReadOnlyFileError) return `${start} the file is read-only. ${remedy}`;
  switch (errorCode(error)) {
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return `${start} the folder is read-only. ${remedy}`;
    case 'ENOSPC':
    case 'EDQUOT':
      return `${start} the disk is full. Free some space and save again, or choose another place.`;
    case 'ENOENT':
    case 'ENOTDIR':
      return `${start} its folder is no longer there. ${remedy}`;
    case 'EISDIR':
      return `${start} there is a folder of that name. Choose another name.`;
    case 'EEXIST':
      return `${start} a file of that name is in the way. ${remedy}`;
    case 'ENAMETOOLONG':
      return `${start} the name is too long. Choose a shorter one.`;
    case 'EBUSY':
      return `${start} another program is using it. Close it there and save again.`;
    default:
      return `${start} the computer reported "${messageOf(error)}". ${remedy}`;
  }
}

/** `remedy` is where to look instead; the window's own is the default. */
export function openFailure(file: string, error: unknown, remedy = LOOK_WITH_OPEN): string {
  const start = `Could not open "${path.basename(file)}":`;
  switch (errorCode(error)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return `${start} there is no such file. ${remedy}`;
    case 'EACCES':
    case 'EPERM':
      return `${start} you may not read it. Change its permissions, or choose another file.`;
    case 'EISDIR':
      return `${start} it is a folder. Choose a room file (.room.json).`;
    default:
      return `${start} the computer reported "${messageOf(error)}". Try again, or choose another file.`;
  }
}

export function tooLarge(file: string, sizeBytes: number): string {
  return `Could not open "${path.basename(file)}": ${whyTooLarge(sizeBytes)}`;
}

export function notText(file: string): string {
  return `Could not open "${path.basename(file)}": ${WHY_NOT_TEXT}`;
}

/** Of a file of data that is no room; `error` is null where it is a folder or a device. */
export function dataOpenFailure(file: string, error: unknown): string {
  if (error === null || errorCode(error) === 'EISDIR')
    return `Could not open "${path.basename(file)}": it is no plain file. Choose another one.`;
  return openFailure(file, error, 'It may have been moved or renamed; choose it again.');
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
