/** Faces whose reflections reach a seat too early and too loud, with the panel that catches the worst. */

import { bandName } from '../quantity/bands';
import { faceAxes, faceName, patchSide } from '../room/faces';
import { finishLookup } from '../room/finishes';
import type { Edit } from '../room/edits';
import type { Patch } from '../room/project';
import { referencePlace } from '../room/seats';
import {
  EARLY_LIMIT,
  EARLY_LIMIT_SOURCE,
  earlyReflections,
  excessDb,
  facesOverLimit,
  type EarlyReflection,
  type FaceReflections,
} from '../reflections/early-limit';
import { coveredDb, panelFor, type Panel } from '../reflections/panel';
import type { FindingContext } from './context';
import { REMEDY_FINISHES } from './decay';
import type { Finding, Remedy } from './finding';

/** The three worst faces are told one by one, the others by their number. */
const MOST_FACES = 3;
/** More panels than this on one face are no remedy any more (our own convention). */
const MOST_PANELS = 6;

export function earlyReflectionFindings(context: FindingContext): readonly Finding[] {
  const { project, speedMS } = context;
  const reference = referencePlace(project);
  // The limit is one for the listening position; what other seats get is shown with the loudspeakers.
  const heard = earlyReflections(project, speedMS, EARLY_LIMIT, reference ? [reference] : []);
  const faces = facesOverLimit(heard);
  const told = faces.slice(0, MOST_FACES);
  const others = faces.length - told.length;
  return told.map((face, i) => {
    const more = i === told.length - 1 && others > 0 ? ` ${moreText(others)}` : '';
    return finding(context, face, more);
  });
}

const moreText = (others: number): string =>
  others === 1
    ? 'One more face has reflections over the limit.'
    : `${others} more faces have reflections over the limit.`;

function finding(context: FindingContext, faceOver: FaceReflections, more: string): Finding {
  const { face, worst, over, count } = faceOver;
  const { channel, path, hit, levelDb, octaveHz } = worst;
  return {
    id: `early-reflection:${face}`,
    // A note: no loudspeaker radiates alike to all sides, so the figure is on the loud side.
    severity: 'note',
    subject: 'speakers',
    where: faceName(face),
    message: `${channelName(context, channel)} reaches the reference seat by way of the ${faceName(face)} ${path.delayMs.toFixed(1)} ms after its direct sound, ${(-levelDb).toFixed(1)} dB below it at ${bandName(octaveHz)}; ${-EARLY_LIMIT.levelDb} dB below is the limit within ${EARLY_LIMIT.withinMs} ms. ${over.length} of the ${count} early reflections of this face are over it.${more}`,
    figureName: `reflection at ${bandName(octaveHz)}`,
    value: Math.round(levelDb * 100) / 100,
    limit: EARLY_LIMIT.levelDb,
    unit: 'dB',
    source: EARLY_LIMIT_SOURCE,
    remedies: remedies(context, faceOver),
    place: { kind: 'reflection', channel, face, at: hit.point },
  };
}

function remedies(context: FindingContext, { over, worst }: FaceReflections): readonly Remedy[] {
  const { project } = context;
  const first = panelFor(project, worst, finishesFor(worst), EARLY_LIMIT, context.measures.units);
  if (!first) return [{ text: withoutPanel(worst) }];
  const change = (panels: readonly Patch[], what: string): Edit => ({
    kind: 'patches',
    patches: [...project.room.patches, ...panels],
    what: `${what} on the ${faceName(worst.hit.face)}`,
  });
  const one: Remedy = { text: panelText(context, first), edit: change([first.patch], 'panel') };
  const { panels, kept } = panelsFor(context, over, first);
  if (panels.length < 2) return [one];
  const text = `Put ${panels.length} such panels where the loudest reflections meet it: ${kept} of the ${over.length} then keep the limit.`;
  return [one, { text, edit: change(panels, 'panels') }];
}

/**
 * Panels for the loudest of `over` that no other panel catches, and how many then keep the limit. That
 * of the loudest of all is known already.
 */
function panelsFor(
  { project, measures }: FindingContext,
  over: readonly EarlyReflection[],
  { patch: first }: Panel,
): { readonly panels: readonly Patch[]; readonly kept: number } {
  const lookup = finishLookup(project);
  const panels: Patch[] = [first];
  for (const reflection of over.slice(1)) {
    if (panels.length === MOST_PANELS) break;
    if (panels.some((panel) => isOn(panel, reflection))) continue;
    const patches = [...project.room.patches, ...panels];
    const changed = { ...project, room: { ...project.room, patches } };
    const panel = panelFor(
      changed,
      reflection,
      finishesFor(reflection),
      EARLY_LIMIT,
      measures.units,
    );
    if (panel) panels.push(panel.patch);
  }
  const keeps = (reflection: EarlyReflection): boolean => {
    const panel = panels.find((one) => isOn(one, reflection));
    const afterDb = panel ? coveredDb(reflection, panel.finish, lookup) : null;
    return afterDb !== null && excessDb(afterDb) === 0;
  };
  return { panels, kept: over.filter(keeps).length };
}

/** True where the panel catches the reflection. */
function isOn({ face, rect }: Patch, { hit }: EarlyReflection): boolean {
  const [u, v] = faceAxes(patchSide(face));
  const [atU, atV] = [hit.point[u], hit.point[v]];
  return atU >= rect[0] && atU <= rect[2] && atV >= rect[1] && atV <= rect[3];
}

/** What can be laid, hung or set there: the top of a solid is a floor, its underside a ceiling. */
export function finishesFor({ hit }: Pick<EarlyReflection, 'hit'>): readonly string[] {
  const side = patchSide(hit.face);
  if (side !== 'floor' && side !== 'ceiling') return REMEDY_FINISHES.wall;
  const isFloor = hit.face.includes(':') ? side === 'ceiling' : side === 'floor';
  return REMEDY_FINISHES[isFloor ? 'floor' : 'ceiling'];
}

/** The panel in a sentence: how big, of what, where, and what it leaves. */
export function panelText(
  { project, lengthText }: Pick<FindingContext, 'project' | 'lengthText'>,
  panel: Panel,
): string {
  const { patch, levelDb, isEnough } = panel;
  const [u0, v0, u1, v1] = patch.rect;
  const name = finishLookup(project)(patch.finish)?.name ?? patch.finish;
  const after = `${(-levelDb).toFixed(1)} dB below the direct sound`;
  return `Put ${lengthText(u1 - u0)} by ${lengthText(v1 - v0)} of "${name}" where it meets the ${faceName(patch.face)}, corner at ${lengthText(u0)} and ${lengthText(v0)} along the face: then it is ${after}${isEnough ? '' : ', which is not enough, but the best of these finishes'}.`;
}

/** What to try where no panel is proposed. */
export function withoutPanel({ hit }: Pick<EarlyReflection, 'hit'>): string {
  return hit.patch === null
    ? 'No panel of a usual finish fits there and helps: move the loudspeaker or the seats, so that the reflection comes later or meets another face.'
    : `It meets the patch "${hit.patch}": give that a finish that absorbs more, or move the loudspeaker.`;
}

function channelName({ speakers }: FindingContext, label: string): string {
  const channel = speakers.layout?.channels.find((candidate) => candidate.label === label);
  return channel ? `${channel.name} (${label})` : label;
}
