/** Subwoofers: their boxes, how they are driven, and how the bass at the seats is judged. */

import type { Figure } from './figure';

export const BASS = {
  'usual-subwoofer': {
    value: [0.4, 0.4, 0.4],
    unit: 'm',
    source: 'common practice',
    what: 'Width, height and depth of the box of a subwoofer where the room names none.',
  },
  'subwoofer-least-side': {
    value: 0.15,
    unit: 'm',
    source: 'our own convention',
    what: 'A box with a smaller side is no subwoofer.',
  },
  'subwoofer-off-wall': {
    value: 3,
    unit: 'number',
    source: 'our own convention',
    what: 'To leave a wall weighs as much as so many metres along it for each metre.',
  },
  'bass-band': {
    value: [20, 120],
    unit: 'Hz',
    source: 'common practice',
    what: 'From the lowest note of a film to a little above the usual crossover at 80 Hz.',
  },
  'drive-delays': {
    value: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    unit: 'ms',
    source: 'common practice',
    what: 'Delays that a search tries.',
  },
  'drive-levels': {
    value: [0, -3, -6],
    unit: 'dB',
    source: 'common practice',
    what: 'Levels that a search tries: about a third and a half of the pressure less.',
  },
  'bass-variance-weight': {
    value: 0.25,
    unit: 'number',
    source: 'our own convention',
    what: 'What a dB2 of variance over frequency of the average weighs against one of mean spatial variance: an equaliser can mend the first and not the second.',
  },
  'most-cancelled': {
    value: 2.5,
    unit: 'dB',
    source: 'our own convention',
    what: 'How far a set of subwoofers may lie under what its members would give if they neither helped nor cancelled each other. Four at the middles of the walls, the even set of the trade, lie up to 2.1 dB under it in usual rooms.',
  },
  'seat-spread-limit': {
    value: 3,
    unit: 'dB',
    source: 'our own convention',
    what: 'Spread over the seats that one equaliser still serves.',
  },
  'seat-spread-warning': {
    value: 4.5,
    unit: 'dB',
    source: 'our own convention',
    what: 'Spread over the seats above which it is a warning.',
  },
  'bass-extreme-limit': {
    value: 6,
    unit: 'dB',
    source: 'our own convention',
    what: 'A peak over, or a dip under, the mean of the band.',
  },
  'bass-dip-warning': {
    value: 10,
    unit: 'dB',
    source: 'our own convention',
    what: 'A dip under the mean of the band that is a warning.',
  },
  'notch-band': {
    value: [40, 200],
    unit: 'Hz',
    source: 'our own convention',
    what: 'Where a notch in the bass matters most: the range of bass instruments.',
  },
} as const satisfies Readonly<Record<string, Figure>>;
