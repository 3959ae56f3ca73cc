/** Everything at once, with what the window leaves to its worker: for the batch command. */

import { refusalFinding, simplifiedFinding } from '../findings/fittings';
import { sortFindings } from '../findings/order';
import { finish } from '../quantity/slices';
import type { Project } from '../room/project';
import { SLIVER_M } from '../shape-modes/grid';
import { analyze, type Analysis } from './analyze';
import { builtModes, spaceOf, type BuiltOutcome } from './built-modes';

/** The analysis and, where the room has fittings, its modes as built. Takes up to a second or so. */
export function analyzeWhole(project: Project): Analysis {
  const built = project.room.solids.length > 0 ? finish(builtModes(spaceOf(project))) : null;
  return withBuiltModes(analyze(project), built);
}

/**
 * The analysis with the modes as built in it; where they cannot be had, a finding says so.
 */
export function withBuiltModes(analysis: Analysis, outcome: BuiltOutcome | null): Analysis {
  if (!outcome) return analysis;
  if (outcome.ok) {
    const { modes, errorPercent } = outcome.built;
    const shaped = modes.map(({ frequencyHz, likeShell: order, shiftHz, errorPercent: error }) => ({
      frequencyHz,
      likeShell: order,
      shiftHz,
      errorPercent: error,
    }));
    const { sliverM } = outcome.built.shape;
    const more = sliverM > SLIVER_M ? [simplifiedFinding(sliverM, errorPercent)] : [];
    return {
      ...analysis,
      findings: sortFindings([...analysis.findings, ...more]),
      modes: { ...analysis.modes, shaped, shapedErrorPercent: errorPercent },
    };
  }
  const finding = refusalFinding(outcome.refusal);
  if (analysis.findings.some(({ id }) => id === finding.id)) return analysis;
  return { ...analysis, findings: sortFindings([...analysis.findings, finding]) };
}
