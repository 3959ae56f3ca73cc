/**
 * Every criterion on size and proportions, each with value, limit, verdict, source and where it holds.
 * They disagree, and are meant to: two famous good ratios fail the inequality. None is merged into a
 * single verdict; the search ranks by `unevennessHz`, and says so.
 */

import {
  AXIAL_RULE_SOURCE,
  CLOSEST_AXIAL_HZ,
  WIDEST_AXIAL_GAP_HZ,
  type AxialSpacing,
} from '../modes/axial-spacing';
import { modalBandwidthHz } from '../modes/schroeder';
import type { ShellMode } from '../modes/shell-modes';
import type { ShellSize } from '../room/project';
import {
  AREA_SOURCE,
  inequalityMargin,
  keepsInequality,
  INEQUALITY_SOURCE,
  isInArea,
  nearestGoodRatio,
  proportionsOf,
  RATIO_REACH,
  WHOLE_RATIO_SHARE,
  wholeRatioDistance,
} from './proportion-rules';
import { smoothnessDb, SMOOTHNESS_SOURCE } from './smoothness';
import {
  COINCIDENT_SHARE,
  MASKING_MODES,
  THIRD_OCTAVE_RULE_SOURCE,
  thirdOctaveRule,
} from './third-octave-rule';
import { unevennessOf, UNEVENNESS_SOURCE } from './unevenness';
import { practiceSource } from '../room/practice/practice';

/** One criterion; value null where the room gives none, limit and verdict null where none is published. */
export interface Criterion {
  readonly title: string;
  readonly value: number | null;
  readonly limit: number | null;
  readonly pass: boolean | null;
  readonly unit: string;
  /** What the value says, in a few words. */
  readonly says: string;
  readonly source: string;
  readonly validity: string;
}

export const CRITERIA = [
  'unevenness',
  'axialWidestGap',
  'axialClosest',
  'axialOverlap',
  'thirdOctaveDensity',
  'coincidentModes',
  'proportionInequality',
  'wholeRatios',
  'proportionArea',
  'goodRatio',
  'smoothness',
] as const;
export type CriterionName = (typeof CRITERIA)[number];
export type Criteria = Readonly<Record<CriterionName, Criterion>>;

export interface CriteriaInput {
  readonly size: ShellSize;
  readonly speedMS: number;
  /** All modes to 224 Hz, rising. */
  readonly modes: readonly ShellMode[];
  readonly spacing: AxialSpacing;
  /** Mid-band decay time, s; null where unknown. */
  readonly midS: number | null;
}

/** Decay time that the smoothness of a room without a known one is computed with, s. */
export const ASSUMED_DECAY_S = 0.4;

export function criteriaOf(input: CriteriaInput): Criteria {
  const { size, speedMS, modes, spacing, midS } = input;
  const proportions = proportionsOf(size);
  const margin = inequalityMargin(proportions);
  const whole = wholeRatioDistance(size);
  const nearest = nearestGoodRatio(proportions);
  const bands = thirdOctaveRule(modes);
  const inArea = isInArea(proportions);
  return {
    axialWidestGap: {
      title: 'Widest axial gap',
      value: spacing.widestHz,
      limit: WIDEST_AXIAL_GAP_HZ,
      pass: spacing.widestHz === null || spacing.widestHz <= WIDEST_AXIAL_GAP_HZ,
      unit: 'Hz',
      says: 'between neighbouring axial modes to 200 Hz',
      source: AXIAL_RULE_SOURCE,
      validity: 'small rooms, a rule of thumb',
    },
    axialClosest: {
      title: 'Closest axial pair',
      value: spacing.closestHz,
      limit: CLOSEST_AXIAL_HZ,
      pass: spacing.closestHz === null || spacing.closestHz >= CLOSEST_AXIAL_HZ,
      unit: 'Hz',
      says: 'between neighbouring axial modes to 200 Hz',
      source: AXIAL_RULE_SOURCE,
      validity: 'small rooms, a rule of thumb',
    },
    axialOverlap: axialOverlap(modes, midS),
    thirdOctaveDensity: {
      title: 'Rising third octaves',
      value: bands.falling.length,
      limit: 0,
      pass: bands.falling.length === 0,
      unit: '',
      says: listed(bands.falling, 'bands fall', 'every band holds at least as many modes'),
      source: THIRD_OCTAVE_RULE_SOURCE,
      validity: 'rooms under 120 m3; all kinds of modes weigh the same',
    },
    coincidentModes: {
      title: 'Coincident modes',
      value: bands.coinciding.length,
      limit: 0,
      pass: bands.coinciding.length === 0,
      unit: '',
      says: listed(
        bands.coinciding.map((hz) => Math.round(hz)),
        `in bands of under ${MASKING_MODES} modes`,
        'none that are not masked',
      ),
      source: THIRD_OCTAVE_RULE_SOURCE,
      validity: `rooms under 120 m3; coincident within ${100 * COINCIDENT_SHARE} % (${practiceSource('coincident-modes')})`,
    },
    proportionInequality: {
      title: 'Proportion inequality',
      value: margin,
      limit: 0,
      pass: keepsInequality(proportions),
      unit: '',
      says: `margin at 1 : ${proportions.width.toFixed(2)} : ${proportions.length.toFixed(2)}`,
      source: INEQUALITY_SOURCE,
      validity: 'reference listening rooms; a basement is often smaller',
    },
    wholeRatios: {
      title: 'No whole ratios',
      value: 100 * whole,
      limit: 100 * WHOLE_RATIO_SHARE,
      pass: whole >= WHOLE_RATIO_SHARE,
      unit: '%',
      says: 'nearest ratio of two sides to a whole number',
      source: INEQUALITY_SOURCE,
      validity: 'reference listening rooms',
    },
    proportionArea: {
      title: 'Proportion area',
      value: inArea ? 1 : 0,
      limit: 1,
      pass: inArea,
      unit: '',
      says: inArea ? 'within the outline' : 'outside the outline',
      source: AREA_SOURCE,
      validity: 'a rough outline: do not build by it alone',
    },
    goodRatio: {
      title: 'Nearest good ratio',
      value: 100 * nearest.distance,
      limit: 100 * RATIO_REACH,
      pass: nearest.distance <= RATIO_REACH,
      unit: '%',
      says: `from ${nearest.ratio.name}, 1 : ${nearest.ratio.width.toFixed(2)} : ${nearest.ratio.length.toFixed(2)}`,
      source: nearest.ratio.source,
      validity: `within ${100 * RATIO_REACH} % counts as met (${practiceSource('ratio-reach')})`,
    },
    smoothness: {
      title: 'Smoothness, corner to corner',
      value: smoothnessDb(size, speedMS, midS ?? ASSUMED_DECAY_S),
      limit: null,
      pass: null,
      unit: 'dB',
      says:
        midS === null ? `rms, decay taken as ${ASSUMED_DECAY_S} s` : 'rms about a straight line',
      source: SMOOTHNESS_SOURCE,
      validity:
        '20 to 200 Hz, equal damping; notches weigh as much as peaks, so it compares lightly damped rooms best',
    },
    unevenness: {
      title: 'Unevenness (ranks the search)',
      value: unevennessOf(size, speedMS),
      limit: null,
      pass: null,
      unit: 'Hz',
      says: '0 is an even row of modes',
      source: UNEVENNESS_SOURCE,
      validity: 'plain shell to 200 Hz; compares rooms',
    },
  };
}

/** Axial neighbours nearer than one modal bandwidth are heard as one: how many pairs. */
function axialOverlap(modes: readonly ShellMode[], midS: number | null): Criterion {
  const bandwidthHz = midS === null || midS <= 0 ? null : modalBandwidthHz(midS);
  const axial = modes.filter((mode) => mode.kind === 'axial');
  const value =
    bandwidthHz === null
      ? null
      : axial.filter(
          (mode, i) => i > 0 && mode.frequencyHz - (axial[i - 1]?.frequencyHz ?? 0) < bandwidthHz,
        ).length;
  return {
    title: 'Axial pairs within a bandwidth',
    value,
    limit: 0,
    pass: value === null ? null : value === 0,
    unit: '',
    says:
      bandwidthHz === null ? 'decay unknown' : `closer than ${bandwidthHz.toFixed(1)} Hz (2.2/T)`,
    source: 'bandwidth: Schroeder, JASA 99 (1996) 3240; rule from memory',
    validity: 'T of the middle bands stands in for the modes’ own',
  };
}

function listed(values: readonly number[], what: string, none: string): string {
  return values.length === 0 ? none : `${what}: ${values.join(', ')} Hz`;
}
