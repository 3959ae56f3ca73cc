/** Patches that cannot be built as they are: out of their face, over each other, behind a fitting. */

import type { Patch, Project } from '../room/project';
import type { FindingContext } from './context';
import type { Finding, Remedy } from './finding';
import { coveredParts, faceBounds, freePatch, overhangM, overlapM } from '../room/free-rect';

export function patchFindings(context: FindingContext): readonly Finding[] {
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

function outside(context: FindingContext, patch: Patch): readonly Finding[] {
  const bounds = faceBounds(context.project.room, patch.face);
  const out = bounds ? overhangM(patch.rect, bounds) : 0;
  if (out === 0) return [];
  const message = `It sticks ${context.lengthText(out)} out of its face; only the part on the face counts.`;
  return [finding(context, patch, `patch-outside:${patch.id}`, message, 'sticks out', out)];
}

function overlapping(context: FindingContext, patch: Patch, below: Patch): readonly Finding[] {
  const depth = overlapM(patch.rect, below.rect);
  if (depth === 0) return [];
  const message = `It lies ${context.lengthText(depth)} over ${below.id}; where they overlap only ${patch.id} counts, because it is later in the list.`;
  return [
    finding(context, patch, `patch-overlap:${patch.id}:${below.id}`, message, 'overlap', depth),
  ];
}

function covered(context: FindingContext, patch: Patch): readonly Finding[] {
  return coveredParts(context.project.room, patch.face).flatMap(({ solid, rect }) => {
    const depth = overlapM(patch.rect, rect);
    if (depth === 0) return [];
    const message = `It lies ${context.lengthText(depth)} behind ${solid}, which stands against that face: the part behind it does not absorb.`;
    return [
      finding(context, patch, `patch-covered:${patch.id}:${solid}`, message, 'hidden', depth),
    ];
  });
}

function finding(
  context: FindingContext,
  patch: Patch,
  id: string,
  message: string,
  figureName: string,
  value: number,
): Finding {
  return {
    id,
    severity: 'warning',
    subject: 'decay',
    where: `${patch.face}: ${patch.id}`,
    message,
    figureName,
    value,
    limit: 0,
    unit: 'm',
    source: 'geometry',
    remedies: [remedy(context, patch)],
  };
}

/** The nearest place of its face where it is whole and clear; words where there is none. */
function remedy({ project, lengthText }: FindingContext, patch: Patch): Remedy {
  const free = freePatch(project.room, patch);
  if (!free) {
    return {
      text: 'There is no clear place of its size on this face: make it smaller, or give it another face.',
    };
  }
  const [u0, v0, u1, v1] = free.rect;
  const cut =
    u1 - u0 < patch.rect[2] - patch.rect[0] - 1e-4 ||
    v1 - v0 < patch.rect[3] - patch.rect[1] - 1e-4;
  return {
    text: `${cut ? `Cut it to ${lengthText(u1 - u0)} by ${lengthText(v1 - v0)} and put` : 'Put'} its corner at ${lengthText(u0)} and ${lengthText(v0)} along the face.`,
    edit: { kind: 'patches', patches: replaced(project, free), what: `place of ${patch.id}` },
  };
}

const replaced = (project: Project, changed: Patch): readonly Patch[] =>
  project.room.patches.map((patch) => (patch.id === changed.id ? changed : patch));
