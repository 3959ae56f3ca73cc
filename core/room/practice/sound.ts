/** Modes, reflections and decay: what is judged, and what a remedy has to be worth. */

import { METRES_PER_INCH } from '../../quantity/length';
import type { Figure } from './figure';

export const SOUND = {
  'ratio-reach': {
    value: 0.05,
    unit: 'share',
    source: 'our own convention',
    what: 'A ratio of the sides within this share of a published one is as good as met.',
  },
  'coincident-modes': {
    value: 0.002,
    unit: 'share',
    source: 'our own convention',
    what: 'Modes this close, as a share of their frequency, coincide: 5 mm in 2.5 m.',
  },
  'missing-mode': {
    value: 5,
    unit: 'Hz',
    source: 'our own convention',
    what: 'What one mode too few in a third octave weighs against axial spacing.',
  },
  'early-from': {
    value: 0.1,
    unit: 'ms',
    source: 'our own convention',
    what: "Reflections earlier than this are the loudspeaker's own mounting: 3 cm.",
  },
  'early-widest-angle': {
    value: 90,
    unit: 'deg',
    source: 'common practice',
    what: 'Sound that leaves a loudspeaker farther than this from the way to the seat is shadowed by the box.',
  },
  'early-shown-to': {
    value: 20,
    unit: 'ms',
    source: 'our own convention',
    what: 'Later reflections are not reported.',
  },
  'panel-cover': {
    value: 0.05,
    unit: 'm',
    source: 'our own convention',
    what: 'Least distance from the point of a reflection to the edge of the panel.',
  },
  'panel-least-gain': {
    value: 1,
    unit: 'dB',
    source: 'our own convention',
    what: 'A panel has to take this much off to be worth its place.',
  },
  'panel-most-wider': {
    value: 0.3,
    unit: 'm',
    source: 'our own convention',
    what: 'A panel is not made wider by more than this: then a second one is as good.',
  },
  'panel-widening-step': {
    value: { metric: 0.05, imperial: 2 * METRES_PER_INCH },
    unit: 'm',
    source: 'our own convention',
    what: 'Panels are made wider in whole steps of this: 5 cm, or 2 in.',
  },
  'most-acts-on-a-face': {
    value: 6,
    unit: 'number',
    source: 'our own convention',
    what: 'More steps than this on one face are no remedy any more.',
  },
  'decay-warning-share': {
    value: 0.5,
    unit: 'share',
    source: 'our own convention',
    what: 'A share of the target outside of which a band is more than a note.',
  },
  'second-face-worth': {
    value: 0.05,
    unit: 's',
    source: 'our own convention',
    what: 'A second face has to lessen the score by this to be worth its work.',
  },
  'farther-method-share': {
    value: 0.5,
    unit: 'share',
    source: 'our own convention',
    what: 'What the decay formula that is farther from the target says of the worst band counts so much of what the nearer one says.',
  },
  'other-bands-share': {
    value: 0.1,
    unit: 'share',
    source: 'our own convention',
    what: 'What the other bands count against the worst one.',
  },
  'metres-of-a-step': {
    value: 0.1,
    unit: 'm',
    source: 'our own convention',
    what: 'Step in which the distance of a length from its limit is counted: what a builder sees at a glance.',
  },
  'degrees-of-a-step': {
    value: 5,
    unit: 'deg',
    source: 'our own convention',
    what: 'Step in which the distance of an angle from its limit is counted: the half of what layouts leave free.',
  },
  'axial-steps-per-limit': {
    value: 1,
    unit: 'number',
    source: 'our own convention',
    what: 'Steps that count for each whole limit of the axial rule, which is a rule of thumb.',
  },
} as const satisfies Readonly<Record<string, Figure>>;
