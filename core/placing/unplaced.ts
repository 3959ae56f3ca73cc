/** Why a channel has no place, and what would give it one: found by trying. */

import { roundLength, type LengthUnits } from '../quantity/length';
import { measuresIn } from '../quantity/measures';
import { applyEdit, type Edit } from '../room/edits';
import { MOUNTS, type Project } from '../room/project';
import { MOUNT_NAMES } from '../speakers/mount-names';
import { layoutOf, type Channel } from '../speakers/layouts';
import { candidatesFor, type Candidates } from './candidates';
import { placingContext, type PlacerOptions, type PlacingContext } from './placing-context';
import { practice } from '../room/practice/practice';

export interface Help {
  readonly text: string;
  readonly edit?: Edit;
}

export interface Unplaced {
  readonly channel: string;
  readonly name: string;
  readonly reason: string;
  readonly helps: readonly Help[];
}

/** How far and in what steps the row of the reference seat is tried, m. */
const ROW_REACH_M = 1.5;
const ROW_STEP_M = 0.1;
/** Ears stay so far from the walls, m. */
const ROW_OFF_WALL_M = practice('ears-off-wall');

export function unplacedOf(
  context: PlacingContext,
  candidates: Candidates,
  options: PlacerOptions,
  units: LengthUnits,
): Unplaced {
  const { channel } = candidates;
  return {
    channel: channel.label,
    name: channel.name,
    reason: reasonOf(candidates),
    helps: [
      ...byRecommendation(context, channel, options),
      ...byRow(context, channel, options, units),
      ...byMount(context, channel, options),
    ],
  };
}

function reasonOf({ channel, list, blockers }: Candidates): string {
  if (list.length > 0) return `Other loudspeakers take every place of ${channel.name}.`;
  const [worst] = blockers;
  if (!worst) return `No surface that may carry ${channel.name} lies within its window.`;
  const words: Readonly<Record<typeof worst.kind, string>> = {
    solid: `the fitting "${worst.what}" stands`,
    door: `the door "${worst.what}" is`,
    window: `the window "${worst.what}" is`,
    passage: `the passage "${worst.what}" is`,
    way: `one walks through "${worst.what}"`,
    seat: `seat ${worst.what} stands`,
    aisle: `people walk past row "${worst.what}"`,
    swing: `the leaf of "${worst.what}" swings`,
    screen: 'the picture is',
    subwoofer: `the subwoofer "${worst.what}" stands`,
    speaker: `the pinned loudspeaker ${worst.what} is`,
    head: `the head of seat ${worst.what} is`,
    walkway: 'people walk',
    shell: 'a wall or the ceiling is',
  };
  return `Wherever ${channel.name} could go within its window, ${words[worst.kind]} in the way or too near.`;
}

/** Another published recommendation for the same layout. */
function byRecommendation(
  context: PlacingContext,
  channel: Channel,
  options: PlacerOptions,
): readonly Help[] {
  const { project, layout } = context;
  return layout.recommendations
    .filter(({ id }) => id !== layout.recommendation.id)
    .flatMap(({ id, title }): readonly Help[] => {
      const edit: Edit = { kind: 'recommendation', recommendation: id };
      return hasPlace(applyEdit(project, edit), channel.label, options)
        ? [{ text: `Judge by ${title}: its window has a place.`, edit }]
        : [];
    });
}

/** The least move of the reference seat's row, forwards or back, that gives a place. */
function byRow(
  { project, reference }: PlacingContext,
  channel: Channel,
  options: PlacerOptions,
  units: LengthUnits,
): readonly Help[] {
  const row = project.seating.rows.find(({ id }) => id === reference.row);
  if (!row) return [];
  const { length } = project.room.size;
  for (let step = 1; step <= Math.round(ROW_REACH_M / ROW_STEP_M); step++) {
    for (const sign of [1, -1]) {
      const y = roundLength(row.y + sign * step * ROW_STEP_M);
      if (y < ROW_OFF_WALL_M || y > length - ROW_OFF_WALL_M) continue;
      const edit: Edit = { kind: 'row', id: row.id, change: { y } };
      if (!hasPlace(applyEdit(project, edit), channel.label, options)) continue;
      const way = sign === 1 ? 'towards the back' : 'towards the screen';
      const much = measuresIn(units).length(step * ROW_STEP_M);
      const number = project.seating.rows.indexOf(row) + 1;
      return [{ text: `Move row ${number} by ${much} ${way}: then it has a place.`, edit }];
    }
  }
  return [];
}

/** Mounts that were not allowed. */
function byMount(
  { project, mounts }: PlacingContext,
  channel: Channel,
  options: PlacerOptions,
): readonly Help[] {
  return MOUNTS.filter((mount) => !mounts.includes(mount)).flatMap((mount): readonly Help[] => {
    const behind = mount === 'behind-screen';
    const edit: Edit = { kind: 'screen', change: { soundThrough: true } };
    const room = behind ? applyEdit(project, edit) : project;
    if (!hasPlace(room, channel.label, { ...options, mounts: [mount] })) return [];
    return behind
      ? [{ text: 'Take a picture that lets sound through: then it has a place behind it.', edit }]
      : [{ text: `Let it be held ${MOUNT_NAMES[mount]}: then it has a place.` }];
  });
}

function hasPlace(project: Project, label: string, options: PlacerOptions): boolean {
  const context = placingContext(project, options);
  const channel = context?.layout.channels.find((candidate) => candidate.label === label);
  if (!context || !channel) return false;
  const own = project.speakers.placed.find((speaker) => speaker.channel === label);
  return candidatesFor(context, channel, own).list.length > 0;
}

/** Layouts in which every channel has a place by itself, other than the present one. */
export function otherLayouts(
  project: Project,
  ids: readonly string[],
  options: PlacerOptions,
): readonly string[] {
  return ids.filter((id) => {
    const changed: Project = { ...project, speakers: { ...project.speakers, layout: id } };
    const channels = layoutOf(id, project.speakers.recommendation)?.channels ?? [];
    return channels.every(({ label }) => hasPlace(changed, label, options));
  });
}
