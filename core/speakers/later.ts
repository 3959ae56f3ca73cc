/**
 * A larger layout that is to come: which of its channels the present one already has, under which
 * label, and where the others go, so that their wires are laid while the walls are open.
 */

import type { PlacedSpeaker, Project } from '../room/project';
import { layoutOf, type Channel, type Layout } from './layouts';

/** Layer and side of a label, and its angle: `M+110` is `M+` and 110. */
function parts(label: string): { readonly side: string; readonly deg: number } {
  return { side: label.replace(/\d+$/, ''), deg: Number(/\d+$/.exec(label)?.[0] ?? 0) };
}

/**
 * What each channel of `from` is called in `to`: the same label where both have it, else the first one
 * left of the same layer and side, from the front to the back. The surrounds of 5.1 (M+110) so become
 * the sides of 7.1 (M+090). What `to` has no channel for is left out.
 */
export function relabelled(from: Layout, to: Layout): ReadonlyMap<string, string> {
  const labels = ({ channels }: Layout): readonly string[] => channels.map(({ label }) => label);
  const [old, next] = [labels(from), labels(to)];
  const byAngle = (list: readonly string[], side: string): readonly string[] =>
    list.filter((label) => parts(label).side === side).sort((a, b) => parts(a).deg - parts(b).deg);
  const gone = old.filter((label) => !next.includes(label));
  const free = next.filter((label) => !old.includes(label));
  return new Map([
    ...old.filter((label) => next.includes(label)).map((label) => [label, label] as const),
    ...gone.flatMap((label): readonly (readonly [string, string])[] => {
      const { side } = parts(label);
      const target = byAngle(free, side)[byAngle(gone, side).indexOf(label)];
      return target === undefined ? [] : [[label, target]];
    }),
  ]);
}

export interface LaterPlan {
  readonly layout: Layout;
  /** Channels that the later layout adds. */
  readonly channels: readonly Channel[];
  /** Those of them that have a place. */
  readonly placed: readonly PlacedSpeaker[];
}

/** What the layout to come adds to the present one; null where the room names none that adds any. */
export function laterPlan(project: Project): LaterPlan | null {
  const { speakers } = project;
  const present = layoutOf(speakers.layout, speakers.recommendation);
  const later = speakers.later === undefined ? undefined : layoutOf(speakers.later);
  if (!present || !later) return null;
  const channels = added(present, later);
  if (channels.length === 0) return null;
  const placed = speakers.placed.filter(({ channel }) =>
    channels.some(({ label }) => label === channel),
  );
  return { layout: later, channels, placed };
}

/** Channels that `later` has beyond those of `present`. */
export function added(present: Layout, later: Layout): readonly Channel[] {
  const known = new Set(relabelled(present, later).values());
  return later.channels.filter(({ label }) => !known.has(label));
}
