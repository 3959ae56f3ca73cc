/** The change to another layout, and the plan for one to come. */

import type { LengthUnits } from '../quantity/length';
import type { Edit } from '../room/edits';
import type { PlacedSpeaker, Project } from '../room/project';
import { firstPlaces } from './first-place';
import { added, laterPlan, relabelled } from './later';
import { layoutOf, type Layout } from './layouts';

/**
 * Every loudspeaker keeps its place, under the label that the new layout gives it; what the new layout
 * has no channel for stays planned for later, so that going back loses nothing. New channels come at
 * their first place, where the reference place has one.
 */
export function layoutEdit(project: Project, layout: Layout, units: LengthUnits = 'metric'): Edit {
  const { speakers } = project;
  const from = layoutOf(speakers.layout);
  const names = from ? relabelled(from, layout) : new Map<string, string>();
  const taken = new Set(speakers.placed.map(({ channel }) => channel));
  const placed = speakers.placed.map((speaker): PlacedSpeaker => {
    const channel = names.get(speaker.channel);
    // A place that waits under the new label keeps it: nothing is lost, nothing named twice.
    return channel === undefined || taken.has(channel) ? speaker : { ...speaker, channel };
  });
  const missing = layout.channels.filter(
    ({ label }) => !placed.some(({ channel }) => channel === label),
  );
  return {
    kind: 'layout',
    layout: layout.id,
    placed: [...placed, ...firstPlaces(project, missing, units)],
    later: laterOf(project, from, layout),
  };
}

/** The layout to come: the one planned, else the larger one that was left; none that adds nothing. */
function laterOf({ speakers }: Project, from: Layout | undefined, to: Layout): string | null {
  const planned = speakers.later === undefined ? undefined : layoutOf(speakers.later);
  const larger = [planned, from].find(
    (known) => known && known.id !== to.id && added(to, known).length > 0,
  );
  return larger?.id ?? null;
}

/** Plan for the layout `id` as well, with places for what it adds; null takes plan and places out. */
export function laterEdit(
  project: Project,
  id: string | null,
  units: LengthUnits = 'metric',
): Edit {
  const { layout, placed } = project.speakers;
  const old = laterPlan(project);
  const present = layoutOf(layout, project.speakers.recommendation);
  const later = id === null ? undefined : layoutOf(id);
  const channels = present && later ? added(present, later) : [];
  const kept = placed.filter(
    (speaker) =>
      !old?.placed.includes(speaker) || channels.some(({ label }) => label === speaker.channel),
  );
  const missing = channels.filter(({ label }) => !kept.some(({ channel }) => channel === label));
  return {
    kind: 'layout',
    layout,
    placed: [...kept, ...firstPlaces(project, missing, units)],
    later: channels.length > 0 ? id : null,
  };
}
