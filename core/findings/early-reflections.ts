/** Faces whose reflections reach a seat too early and too loud, with what catches the loudest of them. */

import { bandName } from '../quantity/bands';
import type { LengthUnits } from '../quantity/length';
import { faceName } from '../room/faces';
import { finishLookup, quotableName, type FacePlace } from '../room/finishes';
import { roleOf } from '../room/faces';
import type { Patch, Project } from '../room/project';
import { referencePlace } from '../room/seats';
import {
  EARLY_LIMIT,
  EARLY_LIMIT_SOURCE,
  earlyReflections,
  facesOverLimit,
  type EarlyReflection,
  type FaceReflections,
} from '../reflections/early-limit';
import { treatmentFor, type Treatment } from '../reflections/treatment';
import type { FindingContext } from './context';
import type { Draft, Remedy } from './finding';
import { practice } from '../room/practice/practice';

/** More acts than this on one face are no remedy any more. */
const MOST_ACTS = practice('most-acts-on-a-face');

/** Every face with a reflection over the limit: it leaves the list when all of its reflections keep it. */
export function earlyReflectionFindings(context: FindingContext): readonly Draft[] {
  return facesOverLimit(heardAt(context, context.project)).map((face) => finding(context, face));
}

/** The limit is one for the listening position; what other seats get is shown with the loudspeakers. */
function heardAt({ speedMS }: FindingContext, project: Project): readonly EarlyReflection[] {
  const reference = referencePlace(project);
  return earlyReflections(project, speedMS, EARLY_LIMIT, reference ? [reference] : []);
}

function finding(context: FindingContext, faceOver: FaceReflections): Draft {
  const { face, worst, over, count } = faceOver;
  const { channel, path, hit, levelDb, octaveHz } = worst;
  return {
    id: `early-reflection:${face}`,
    // A note: no loudspeaker radiates alike to all sides, so the figure is on the loud side.
    severity: 'note',
    subject: 'speakers',
    where: faceName(face),
    message: `${channelName(context, channel)} reaches the reference place by way of the ${faceName(face)} ${path.delayMs.toFixed(1)} ms after its direct sound, ${(-levelDb).toFixed(1)} dB below it at ${bandName(octaveHz)}; ${-EARLY_LIMIT.levelDb} dB below is the limit within ${EARLY_LIMIT.withinMs} ms. ${overText(over.length, count)}`,
    figureName: `reflection at ${bandName(octaveHz)}`,
    value: Math.round(levelDb * 100) / 100,
    limit: EARLY_LIMIT.levelDb,
    unit: 'dB',
    source: EARLY_LIMIT_SOURCE,
    remedies: () => remedies(context, faceOver),
    otherwise: withoutPanel(worst),
    place: { kind: 'reflection', channel, face, at: hit.point },
  };
}

function overText(over: number, count: number): string {
  if (count === 1) return 'It is the only early reflection of this face.';
  return over === count
    ? `All ${count} early reflections of this face are over it.`
    : `${over} of the ${count} early reflections of this face are over it.`;
}

function remedies(
  context: FindingContext,
  { over, worst, face }: FaceReflections,
): readonly Remedy[] {
  const { project, measures } = context;
  const first = treatmentFor(project, worst, finishesFor(worst), measures.units);
  const { acts, patches, kept } = planFor(context, face, over);
  const what = `panels on the ${faceName(face)}`;
  const plan: Remedy = {
    text: `${planText(context, acts)}: ${kept} of the ${over.length} then keep the limit.`,
    edit: { kind: 'patches', patches, what },
  };
  const one = first && {
    text: treatmentText(context, first),
    // What brings nothing to the limit is no way home.
    ...(first.isEnough ? { edit: { kind: 'patches', patches: first.patches, what } as const } : {}),
  };
  return [...(acts.length > 1 && kept > 0 ? [plan] : []), ...(one ? [one] : [])];
}

interface Plan {
  readonly acts: readonly Treatment[];
  readonly patches: readonly Patch[];
  /** Of the reflections that were over the limit, those that then keep it. */
  readonly kept: number;
}

/** Treat the loudest reflection of the face, then the loudest that is left, until all keep the limit. */
function planFor(context: FindingContext, face: string, over: readonly EarlyReflection[]): Plan {
  const acts: Treatment[] = [];
  let { project } = context;
  let left = over;
  while (left.length > 0 && acts.length < MOST_ACTS) {
    const act = firstTreatment(project, left, context.measures.units, acts);
    if (!act) break;
    acts.push(act);
    project = { ...project, room: { ...project.room, patches: act.patches } };
    left = facesOverLimit(heardAt(context, project)).find((one) => one.face === face)?.over ?? [];
  }
  return { acts, patches: project.room.patches, kept: over.length - left.length };
}

function firstTreatment(
  project: Project,
  reflections: readonly EarlyReflection[],
  units: LengthUnits,
  before: readonly Treatment[],
): Treatment | null {
  // New panels stay what they are, and the next one is to be of the same finish.
  const panels = before.filter(({ kind }) => kind === 'panel').map(({ patch }) => patch);
  const whole = panels.map(({ id }) => id);
  for (const reflection of reflections) {
    const finishes = new Set([...panels.map(({ finish }) => finish), ...finishesFor(reflection)]);
    const act = treatmentFor(project, reflection, [...finishes], units, whole);
    if (act) return act;
  }
  return null;
}

/** Finishes that panels may be of, ids of the library, thin before thick; rugs on a floor. */
export const PANEL_FINISHES: Readonly<Record<FacePlace, readonly string[]>> = {
  floor: ['carpet-heavy-concrete', 'carpet-heavy-pad', 'carpet-9-felt'],
  wall: ['gf-25-rigid', 'gf48-25-A', 'gf48-50-A'],
  ceiling: ['gf-25-rigid', 'fabric-gf-25', 'gf48-25-A', 'gf48-50-A'],
};

/** What can be laid or set there: the top of a solid is a floor, its underside a ceiling. */
export function finishesFor({ hit }: Pick<EarlyReflection, 'hit'>): readonly string[] {
  return PANEL_FINISHES[roleOf(hit.face)];
}

type Words = Pick<FindingContext, 'project' | 'measures'>;

const nameOf = ({ project, measures }: Words, { finish }: Patch): string => {
  const known = finishLookup(project)(finish);
  return known ? quotableName(known, measures.units) : finish;
};

/** The treatment in a sentence: what to do, where, and what it leaves. */
export function treatmentText(words: Words, act: Treatment): string {
  const { levelDb, isEnough } = act;
  const after = `${(-levelDb).toFixed(1)} dB below the direct sound`;
  return isEnough
    ? `${actText(words, act, true)}: then it is ${after}.`
    : `No usual finish is enough here; the best: ${lowered(actText(words, act, true))}, and it is ${after}.`;
}

function actText(words: Words, { kind, patch, byM, towards }: Treatment, isAlone: boolean): string {
  const { length, part } = words.measures;
  const [u0, v0, u1, v1] = patch.rect;
  const on = isAlone ? ` where it meets the ${faceName(patch.face)}` : '';
  switch (kind) {
    case 'widen':
      return `Widen ${patch.id} by ${part(byM)}${towards ? ` towards the ${faceName(towards)}` : ''}`;
    case 'finish':
      return `Make ${patch.id} of "${nameOf(words, patch)}"`;
    case 'panel':
      return `Put ${length(u1 - u0)} by ${length(v1 - v0)} of "${nameOf(words, patch)}"${on}, corner at ${length(u0)} and ${length(v0)} along the face`;
  }
}

/** All acts in one sentence, new panels of one size and finish counted together. */
function planText(words: Words, acts: readonly Treatment[]): string {
  const { length } = words.measures;
  const panels = new Map<string, number>();
  for (const { kind, patch } of acts) {
    if (kind !== 'panel') continue;
    const [u0, v0, u1, v1] = patch.rect;
    const name = `of ${length(u1 - u0)} by ${length(v1 - v0)} of "${nameOf(words, patch)}"`;
    panels.set(name, (panels.get(name) ?? 0) + 1);
  }
  const parts = [
    ...acts
      .filter(({ kind }) => kind !== 'panel')
      .map((act) => lowered(actText(words, act, false))),
    ...[...panels].map(([name, n]) => `put ${n} ${n === 1 ? 'panel' : 'panels'} ${name}`),
  ];
  const [first = '', ...others] = parts;
  return [first[0]?.toUpperCase() + first.slice(1), ...others].join(', ');
}

const lowered = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

/** What to try where no treatment is proposed. */
export function withoutPanel({ hit }: Pick<EarlyReflection, 'hit'>): string {
  return hit.patch === null
    ? 'No panel of a usual finish fits there and helps: move the loudspeaker or the seats, so that the reflection comes later or meets another face.'
    : `It meets ${hit.patch}, and no usual finish does more there: move the loudspeaker or the seats.`;
}

function channelName({ speakers }: FindingContext, label: string): string {
  const channel = speakers.layout?.channels.find((candidate) => candidate.label === label);
  return channel ? `${channel.name} (${label})` : label;
}
