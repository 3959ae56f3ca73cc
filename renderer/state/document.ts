/** What the history keeps of each moment: the room and the file it belongs to. */

import type { Project } from '../../core/room/project';
import type { FileStamp, FileToken } from '../host/host';

/** The file that the present room came from or went to. */
export interface FileState {
  readonly name: string;
  readonly token: FileToken | null;
  /** What the file looked like when it was last read or written for this room. */
  readonly stamp?: FileStamp | null;
  /** The project as it stands in the file; null where it was never saved. */
  readonly saved: Project | null;
  /** Which opening of a room it belongs to, counted over the session; absent for the first room. */
  readonly opening?: number;
}

export interface DocumentState {
  readonly project: Project;
  readonly file: FileState;
}

/** True where the room differs from what its file holds. */
export const hasUnsaved = ({ project, file }: DocumentState): boolean => project !== file.saved;
