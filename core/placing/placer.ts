/**
 * Places for the channels of the layout that are not pinned: on surfaces that can be built on, within
 * the windows at the reference seat, in nothing's way, with the least harm to the other seats (the
 * cost is stated in harm.ts), and pairs as even as the room allows. Same room, same places. A generator:
 * it yields its progress from 0 to 1.
 */

import type { LengthUnits } from '../quantity/length';
import type { Edit } from '../room/edits';
import type { PlacedSpeaker, Project } from '../room/project';
import { directionFrom } from '../speakers/direction';
import { LAYOUTS } from '../speakers/layouts';
import { candidatesFor, type Candidate, type Candidates } from './candidates';
import { choose } from './choose';
import { otherLayouts, unplacedOf, type Unplaced } from './unplaced';
import { placingContext, type PlacerOptions, type PlacingContext } from './placing-context';
import { tradeOffsOf, type TradeOff } from './trade-offs';

export type { PlacerOptions } from './placing-context';

export interface PlacerResult {
  /** The list for the room: what is pinned or rests as it was, what was chosen with its mount. */
  readonly placed: readonly PlacedSpeaker[];
  /** The change that puts all of it into the room. */
  readonly edit: Edit;
  readonly chosen: readonly Candidate[];
  readonly unplaced: readonly Unplaced[];
  /** Ids of layouts that would have a place for every channel; looked for where this one has not. */
  readonly otherLayouts: readonly string[];
  readonly trades: readonly TradeOff[];
}

export function* placeSpeakers(
  project: Project,
  options: PlacerOptions = {},
  units: LengthUnits = 'metric',
): Generator<number, PlacerResult> {
  const context = placingContext(project, options, units);
  if (!context) return nothing(project);
  const { placed } = project.speakers;
  const free = context.layout.channels.filter(
    ({ label }) => !placed.some(({ channel, pinned }) => channel === label && pinned === true),
  );
  const all: Candidates[] = [];
  for (const channel of free) {
    const own = placed.find((speaker) => speaker.channel === channel.label);
    all.push(candidatesFor(context, channel, own));
    yield (0.6 * all.length) / free.length;
  }
  const chosen = choose(all, pinnedDirections(context));
  yield 0.7;
  const without = all.filter(
    ({ channel }) => !chosen.some((place) => place.channel === channel.label),
  );
  const unplaced: Unplaced[] = [];
  for (const candidates of without) {
    unplaced.push(unplacedOf(context, candidates, options, units));
    yield 0.7 + (0.2 * unplaced.length) / without.length;
  }
  const others = LAYOUTS.map(({ id }) => id).filter((id) => id !== context.layout.id);
  return {
    ...answer(project, chosen),
    chosen,
    unplaced,
    otherLayouts: unplaced.length > 0 ? otherLayouts(project, others, options) : [],
    trades: tradeOffsOf(context, chosen, units),
  };
}

/** Directions of what stays where it is, for the twins of a pinned loudspeaker. */
function pinnedDirections({
  project,
  reference,
  pinned,
}: PlacingContext): Map<string, Candidate['direction']> {
  const directions = new Map<string, Candidate['direction']>();
  for (const { channel } of pinned) {
    const speaker = project.speakers.placed.find((placed) => placed.channel === channel);
    if (speaker) directions.set(channel, directionFrom(reference.position, speaker.position));
  }
  return directions;
}

/** Chosen places go into the list where the channel was, new ones to its end. */
function answer(
  { speakers }: Project,
  chosen: readonly Candidate[],
): Pick<PlacerResult, 'placed' | 'edit'> {
  const kept = speakers.placed.map((speaker): PlacedSpeaker => {
    const place = chosen.find(({ channel }) => channel === speaker.channel);
    return place ? { ...speaker, position: place.position, mount: place.mount } : speaker;
  });
  const added = chosen
    .filter(({ channel }) => !speakers.placed.some((speaker) => speaker.channel === channel))
    .map(({ channel, position, mount }): PlacedSpeaker => ({ channel, position, mount }));
  const placed = [...kept, ...added];
  return { placed, edit: { kind: 'layout', layout: speakers.layout, placed } };
}

/** Without a seat, or a layout that is known, there are no angles to place by. */
function nothing(project: Project): PlacerResult {
  return { ...answer(project, []), chosen: [], unplaced: [], otherLayouts: [], trades: [] };
}
