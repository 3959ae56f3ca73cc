/** What the mounts are called. */

import type { Mount } from '../room/project';

export const MOUNT_NAMES: Readonly<Record<Mount, string>> = {
  'on-wall': 'on the wall',
  'in-wall': 'in the wall',
  ceiling: 'on the ceiling',
  stand: 'on a stand',
  soffit: 'on a soffit or beam',
  'behind-screen': 'behind the screen',
};
