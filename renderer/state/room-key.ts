/** Says for which rooms an answer holds that does not ask what stands in them. */

import type { Project } from '../../core/room/project';

/** The same for rooms that differ by loudspeakers, subwoofers, target and name alone. */
export function roomKey(project: Project): string {
  const { room, air, seating, screen, objects, finishesCustom } = project;
  return JSON.stringify([room, air, seating, screen, objects, finishesCustom]);
}
