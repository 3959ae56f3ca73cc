/** Everything at once, with what the window leaves to its worker: for the batch command. */

import { bassFindings, type FoundBass } from '../findings/bass';
import type { Finding } from '../findings/finding';
import { refusalFinding, simplifiedFinding } from '../findings/fittings';
import { sortFindings } from '../findings/order';
import type { LengthUnits } from '../quantity/length';
import { measuresIn, type Measures } from '../quantity/measures';
import { finish, scaled } from '../quantity/slices';
import type { Project } from '../room/project';
import { SLIVER_M } from '../room-modes/grid';
import { analyze, type Analysis } from './analyze';
import { namedModes, spaceOf, type NamedModesOutcome } from './named-modes';
import { seatResponses, type SeatResponses } from './seat-response';

/** What takes longer than a moment, of one and the same room; null where it is not known (yet). */
export interface SlowAnswers {
  /** The fine modes as built; null too where nothing fills the shell. */
  readonly built: NamedModesOutcome | null;
  /** The bass at the seats, as built where that can be solved. */
  readonly bass: Pick<SeatResponses, 'figures' | 'of'> | null;
  /** The best set of a search for places. */
  readonly found: FoundBass | null;
}

/**
 * The analysis with the modes as built and the bass at the seats; `units` are those that findings
 * speak in. Takes a second or two.
 */
export const analyzeWhole = (project: Project, units: LengthUnits = 'metric'): Analysis =>
  finish(wholeAnalysis(project, units));

/** The same in slices: yields the share done every few milliseconds. */
export function* wholeAnalysis(project: Project, units: LengthUnits): Generator<number, Analysis> {
  const built =
    project.room.solids.length > 0
      ? yield* scaled(namedModes(spaceOf(project), { keepFactor: true }), 0, 0.9)
      : null;
  const bass = yield* scaled(seatResponses(project, built?.ok ? built.built.shape : null), 0.9, 1);
  const analysis = withBuiltModes(analyze(project, units), built);
  const findings = joinFindings(
    analysis.findings,
    slowFindings({ built, bass, found: null }, units),
  );
  return { ...analysis, findings };
}

/** What the slow answers have to tell: the same for the window and for the batch command. */
export function slowFindings(
  { built, bass, found }: SlowAnswers,
  units: LengthUnits,
): readonly Finding[] {
  return [
    ...(built ? builtFindings(built, measuresIn(units)) : []),
    ...(bass?.figures ? bassFindings({ figures: bass.figures, of: bass.of }, found) : []),
  ];
}

function builtFindings(outcome: NamedModesOutcome, measures: Measures): readonly Finding[] {
  if (!outcome.ok) return [refusalFinding(outcome.refusal)];
  const { shape, errorPercent } = outcome.built;
  return shape.sliverM > SLIVER_M ? [simplifiedFinding(shape.sliverM, errorPercent, measures)] : [];
}

/** Both lists as one, in their order; what both tell is told once. */
export function joinFindings(
  quick: readonly Finding[],
  slow: readonly Finding[],
): readonly Finding[] {
  const more = slow.filter(({ id }) => !quick.some((finding) => finding.id === id));
  return more.length === 0 ? quick : sortFindings([...quick, ...more]);
}

/** The analysis with the modes as built in it. */
function withBuiltModes(analysis: Analysis, outcome: NamedModesOutcome | null): Analysis {
  if (!outcome?.ok) return analysis;
  const { modes, errorPercent } = outcome.built;
  const shaped = modes.map(({ frequencyHz, likeShell: order, shiftHz, errorPercent: error }) => ({
    frequencyHz,
    likeShell: order,
    shiftHz,
    errorPercent: error,
  }));
  return {
    ...analysis,
    modes: { ...analysis.modes, shaped, shapedErrorPercent: errorPercent },
  };
}
