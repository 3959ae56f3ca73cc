/** What is painted in the drawing: one mode, or what the subwoofers make at one frequency. */

import type { ModeOrder } from '../../core/modes/shell-modes';

export type Painted =
  | {
      readonly kind: 'mode';
      /** A mode of the plain shell, or of the room as built. */
      readonly of: 'shell' | 'built';
      readonly frequencyHz: number;
      /** Its name by the shell; null where it is mixed. */
      readonly order: ModeOrder | null;
    }
  | { readonly kind: 'frequency'; readonly frequencyHz: number };
