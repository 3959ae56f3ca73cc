/** Gaps and pile-ups of the axial modes of the plain shell, with the size of the bay that mends them. */

import {
  AXIAL_RULE_SOURCE,
  CLOSEST_AXIAL_HZ,
  LISTED_TO_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type PileUp,
} from '../modes/axial-spacing';
import type { ShellMode } from '../modes/shell-modes';
import { THIRD_OCTAVE_RULE_SOURCE } from '../proportions/third-octave-rule';
import { SIDES } from '../room/project';
import { axialMatters, type GapMatter, type PileUpMatter } from './axial-matters';
import { bestSizeRemedy } from './best-size';
import type { FindingContext } from './context';
import type { Draft, Remedy } from './finding';

const NO_SIZE =
  'No room of the bay mends it without making another such matter: it is one for absorbers in the corners, or to live with.';

/**
 * Findings on the spacing of axial modes below the Schroeder frequency (at most 200 Hz). A rule of
 * thumb on the plain shell: a note where other modes cover what it finds, or where fittings make the
 * room another one than the shell.
 */
export function axialFindings(context: FindingContext): readonly Draft[] {
  const { project, spacing, modes, schroederHz } = context;
  const belowHz = Math.min(LISTED_TO_HZ, schroederHz ?? LISTED_TO_HZ);
  const matters = axialMatters(spacing, modes, belowHz);
  const isShell = project.room.solids.length === 0;
  // One proposal serves both findings.
  let proposal: readonly Remedy[] | null = null;
  const remedies = (): readonly Remedy[] => {
    if (proposal === null) {
      const size = bestSizeRemedy(context, matters, belowHz);
      proposal = size ? [size] : [];
    }
    return proposal;
  };
  const shared = { subject: 'shell', remedies, otherwise: NO_SIZE } as const;
  return [
    ...(matters.gap ? [{ ...shared, ...gapFinding(matters.gap, isShell) }] : []),
    ...(matters.pileUp ? [{ ...shared, ...pileUpFinding(matters.pileUp, isShell) }] : []),
  ];
}

type Told = Omit<Draft, 'subject' | 'remedies' | 'otherwise'>;

/** What is added where the room is not the shell. */
const FITTINGS =
  ' That is the plain shell; the fittings shift and mix its modes, as the modes as built show.';

function gapFinding({ gap, count, others, emptyHz, isFilled }: GapMatter, isShell: boolean): Told {
  const { fromHz, toHz, widthHz } = gap;
  const between = `between ${fromHz.toFixed(1)} and ${toHz.toFixed(1)} Hz`;
  const filled = isFilled
    ? ` ${others} tangential and oblique modes fill it, no more than ${emptyHz.toFixed(0)} Hz apart: it will hardly be heard.`
    : ` No mode of any kind lies in ${emptyHz.toFixed(0)} Hz of it: notes there sound thin and their neighbours stand out.`;
  return {
    id: 'axial-gap',
    severity: isShell && !isFilled ? 'warning' : 'note',
    where: `${fromHz.toFixed(0)} to ${toHz.toFixed(0)} Hz`,
    message: `In the plain shell no axial mode carries the ${widthHz.toFixed(0)} Hz ${between}${more(count)}.${filled}${isShell ? '' : FITTINGS}`,
    figureName: 'axial gap',
    value: widthHz,
    limit: WIDEST_AXIAL_GAP_HZ,
    unit: 'Hz',
    source: `${AXIAL_RULE_SOURCE}; that other modes fill a gap is our own convention`,
    place: { kind: 'span', fromHz, toHz },
  };
}

function pileUpFinding(matter: PileUpMatter, isShell: boolean): Told {
  const { pileUp, count, inBand, isMasked } = matter;
  const { lowHz, highHz, modes, closestHz } = pileUp;
  const masked = isMasked
    ? ` With ${inBand} modes in their third octave they stand out little.`
    : ` They add up to one strong resonance, with ${inBand} modes in their third octave to hide it.`;
  return {
    id: 'axial-pile-up',
    severity: isShell && !isMasked ? 'warning' : 'note',
    where: `${lowHz.toFixed(0)} Hz`,
    message: `In the plain shell modes ${modes.map((mode) => modeName(mode)).join(' and ')} ${nearness(pileUp)}${more(count)}.${masked}${isShell ? '' : FITTINGS}`,
    figureName: 'closest axial pair',
    value: closestHz,
    limit: CLOSEST_AXIAL_HZ,
    unit: 'Hz',
    source: `${AXIAL_RULE_SOURCE}; ${THIRD_OCTAVE_RULE_SOURCE}`,
    place: { kind: 'span', fromHz: lowHz, toHz: highHz },
  };
}

const more = (count: number): string => (count > 1 ? ` (and ${count - 1} more like it)` : '');

/** How close the modes of a pile-up lie, and where. */
function nearness({ lowHz, highHz }: PileUp): string {
  const spanHz = highHz - lowHz;
  const at = `at ${lowHz.toFixed(1)} Hz`;
  return spanHz < 0.05 ? `coincide ${at}` : `lie within ${spanHz.toFixed(1)} Hz ${at}`;
}

/** `length 4` for (0,4,0). */
function modeName({ order }: ShellMode): string {
  const axis = order.findIndex((n) => n > 0);
  return `${SIDES[axis] ?? ''} ${order[axis] ?? 0}`;
}
