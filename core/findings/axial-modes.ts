/** Gaps and pile-ups of the axial modes, with the nearest smaller room that mends them. */

import {
  AXIAL_RULE_SOURCE,
  CLOSEST_AXIAL_HZ,
  LISTED_TO_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type PileUp,
} from '../modes/axial-spacing';
import type { ShellMode } from '../modes/shell-modes';
import { bayOf } from '../proportions/bay';
import { SIDES } from '../room/project';
import type { FindingContext } from './context';
import { LOOK_INWARD_M, nearestEvenerSize } from './evener-size';
import type { Finding, Remedy } from './finding';

/** Findings on the spacing of axial modes below the Schroeder frequency (at most 200 Hz). */
export function axialFindings({
  project,
  spacing,
  speedMS,
  schroederHz,
  lengthText,
  remedyStepM,
}: FindingContext): readonly Finding[] {
  const belowHz = Math.min(LISTED_TO_HZ, schroederHz ?? LISTED_TO_HZ);
  const gaps = spacing.gaps.filter((gap) => gap.fromHz < belowHz);
  const pileUps = spacing.pileUps.filter((pileUp) => pileUp.lowHz < belowHz);
  if (gaps.length === 0 && pileUps.length === 0) return [];

  const evener = nearestEvenerSize(
    project.room.size,
    speedMS,
    belowHz,
    remedyStepM,
    bayOf(project),
  );
  const remedies: Remedy[] = evener
    ? [
        {
          text: `Bring the ${evener.side} in to ${lengthText(evener.size[evener.side])}: the axial modes come out more even.`,
          edit: { kind: 'size', size: evener.size },
        },
      ]
    : [
        {
          text: `Within ${lengthText(LOOK_INWARD_M)} no one side alone evens them out: try two sides together, or damp these modes.`,
        },
      ];

  const findings: Finding[] = [];
  // The lowest one first: further up, tangential and oblique modes fill in.
  const [lowest] = gaps;
  if (lowest) {
    findings.push({
      id: 'axial-gap',
      severity: 'warning',
      subject: 'shell',
      where: `${lowest.fromHz.toFixed(0)} to ${lowest.toHz.toFixed(0)} Hz`,
      message: `No axial mode carries the ${lowest.widthHz.toFixed(0)} Hz between ${lowest.fromHz.toFixed(1)} and ${lowest.toHz.toFixed(1)} Hz${others(gaps.length)}: notes there sound thin and their neighbours stand out.`,
      figureName: 'widest gap',
      value: lowest.widthHz,
      limit: WIDEST_AXIAL_GAP_HZ,
      unit: 'Hz',
      source: AXIAL_RULE_SOURCE,
      remedies,
      place: { kind: 'span', fromHz: lowest.fromHz, toHz: lowest.toHz },
    });
  }
  const [first] = pileUps;
  if (first) {
    const worst = pileUps.reduce((a, b) => (b.closestHz < a.closestHz ? b : a), first);
    findings.push({
      id: 'axial-pile-up',
      severity: 'warning',
      subject: 'shell',
      where: `${worst.lowHz.toFixed(0)} Hz`,
      message: `Modes ${worst.modes.map((mode) => modeName(mode)).join(' and ')} ${nearness(worst)}${others(pileUps.length)}: they add up to one strong resonance.`,
      figureName: 'closest pair',
      value: worst.closestHz,
      limit: CLOSEST_AXIAL_HZ,
      unit: 'Hz',
      source: AXIAL_RULE_SOURCE,
      remedies,
      place: { kind: 'span', fromHz: worst.lowHz, toHz: worst.highHz },
    });
  }
  return findings;
}

const others = (count: number): string => (count > 1 ? ` (and ${count - 1} more like it)` : '');

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
