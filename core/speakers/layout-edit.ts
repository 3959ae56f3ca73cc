/** The change to another layout. */

import type { Edit } from '../room/edits';
import type { Project } from '../room/project';
import type { Layout } from './layouts';
import { firstPlaces } from './first-place';

/**
 * Channels that have a place keep it, also those that the new layout lacks, so that going back finds
 * them where they were; new ones come at their nominal angle, where the reference seat has one.
 */
export function layoutEdit(project: Project, layout: Layout): Edit {
  const { placed } = project.speakers;
  const added = firstPlaces(
    project,
    layout.channels.filter(({ label }) => !placed.some(({ channel }) => channel === label)),
  );
  return { kind: 'layout', layout: layout.id, placed: [...placed, ...added] };
}
