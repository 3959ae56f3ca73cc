/**
 * Doors, windows and panels that cannot be built as they are: out of their face, over each other, behind
 * a fitting.
 */

import { faceOf } from '../room/built-face';
import { faceAxes, faceName, patchSide } from '../room/faces';
import { coveredParts, freePatch, overhangM, rectOverlapM } from '../room/free-rect';
import { isOpening, isWay, PATCH_KIND } from '../room/patch-kinds';
import type { Patch, PatchKind, Project } from '../room/project';
import type { FindingContext } from './context';
import type { Draft, Remedy } from './finding';

export function patchFindings(context: FindingContext): readonly Draft[] {
  const { patches } = context.project.room;
  return patches.flatMap((patch, i) => [
    ...outside(context, patch),
    ...patches
      .slice(0, i)
      .filter((below) => below.face === patch.face)
      .flatMap((below) => overlapping(context, patch, below)),
    ...covered(context, patch),
  ]);
}

const nameOf = ({ kind }: Patch): string => PATCH_KIND[kind].name;

function outside(context: FindingContext, patch: Patch): readonly Draft[] {
  const bounds = faceOf(context.project.room, patch.face)?.rect;
  const out = bounds ? overhangM(patch.rect, bounds) : 0;
  if (out === 0) return [];
  const message = `The ${nameOf(patch)} sticks ${context.lengthText(out)} out of the ${faceName(patch.face)}; only the part on it counts.`;
  return [finding(context, patch, `patch-outside:${patch.id}`, message, 'sticks out', out)];
}

function overlapping(context: FindingContext, patch: Patch, below: Patch): readonly Draft[] {
  const depth = rectOverlapM(patch.rect, below.rect);
  if (depth === 0) return [];
  const message = overlapText(patch, below, context.lengthText(depth));
  const id = `patch-overlap:${patch.id}:${below.id}`;
  return [finding(context, patch, id, message, 'overlap', depth)];
}

function overlapText(patch: Patch, below: Patch, much: string): string {
  const [name, under] = [nameOf(patch), nameOf(below)];
  if (isOpening(patch))
    return isOpening(below)
      ? `The ${name} and the ${under} ${below.id} take ${much} of the same place.`
      : `The ${name} takes ${much} of the place of ${below.id}.`;
  return isOpening(below)
    ? `The ${name} covers ${much} of the ${under} ${below.id}.`
    : `The ${name} lies ${much} over ${below.id}; where they overlap only ${patch.id} absorbs.`;
}

function covered(context: FindingContext, patch: Patch): readonly Draft[] {
  return coveredParts(context.project.room, patch.face).flatMap(({ solid, rect }) => {
    const depth = rectOverlapM(patch.rect, rect);
    if (depth === 0) return [];
    const much = context.lengthText(depth);
    const hung = `${much} of the ${nameOf(patch)} lie behind ${solid}, where it absorbs nothing.`;
    const messages: Readonly<Record<PatchKind, string>> = {
      door: `The door cannot open: ${solid} stands ${much} in front of it.`,
      window: `${solid} hides ${much} of the window.`,
      passage: `Nobody gets through the passage: ${solid} stands ${much} in front of it.`,
      screen: hung,
      panel: hung,
      other: hung,
    };
    const id = `patch-covered:${patch.id}:${solid}`;
    return [finding(context, patch, id, messages[patch.kind], 'hidden', depth)];
  });
}

const WAY_OUT =
  'A door that cannot open is no way out in a fire. Your local code decides what a room to live in needs: ask your building office.';

function finding(
  context: FindingContext,
  patch: Patch,
  id: string,
  message: string,
  figureName: string,
  value: number,
): Draft {
  return {
    id,
    severity: 'warning',
    // Doors and windows are part of what is built in; panels are there for the sound.
    subject: isOpening(patch) ? 'fittings' : 'decay',
    where: `${faceName(patch.face)}: ${patch.id}`,
    message,
    figureName,
    value,
    limit: 0,
    unit: 'm',
    source: 'geometry',
    ...(patch.kind === 'door' && id.startsWith('patch-covered') ? { caution: WAY_OUT } : {}),
    remedies: () => remedies(context, patch),
    otherwise: `There is no clear place of its size on this face: ${isWay(patch) ? `move what stands there, or give the ${nameOf(patch)} another wall` : 'make it smaller, or give it another face'}.`,
  };
}

/** The nearest place of its face where it is whole and clear; a door or passage stays at its height. */
function remedies({ project, lengthText }: FindingContext, patch: Patch): readonly Remedy[] {
  const free = freePatch(project.room, patch, { keepsHeight: isWay(patch) });
  if (!free) return [];
  const [u0, v0, u1, v1] = free.rect;
  const cut =
    u1 - u0 < patch.rect[2] - patch.rect[0] - 1e-4 ||
    v1 - v0 < patch.rect[3] - patch.rect[1] - 1e-4;
  const [side] = faceAxes(patchSide(patch.face));
  // The first axis of a wall runs along the floor: from the left wall, or from the screen wall.
  const from = side === 0 ? 'left wall' : 'screen wall';
  const put = isWay(patch)
    ? `its nearer edge ${lengthText(u0)} from the ${from}`
    : `its corner at ${lengthText(u0)} and ${lengthText(v0)} along the face`;
  return [
    {
      text: `${cut ? `Cut it to ${lengthText(u1 - u0)} by ${lengthText(v1 - v0)} and put` : 'Put'} ${put}.`,
      edit: { kind: 'patches', patches: replaced(project, free), what: `place of ${patch.id}` },
    },
  ];
}

const replaced = (project: Project, changed: Patch): readonly Patch[] =>
  project.room.patches.map((patch) => (patch.id === changed.id ? changed : patch));
