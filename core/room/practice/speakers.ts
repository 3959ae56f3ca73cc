/** Loudspeakers: what they take of a room, how they are held, and what a place for one costs. */

import type { Figure } from './figure';

export const SPEAKERS = {
  'usual-cabinet': {
    value: [0.2, 0.35, 0.2],
    unit: 'm',
    source: 'common practice',
    what: 'Width, height and depth of a loudspeaker where the room names none.',
  },
  'wall-clearance': {
    value: 0.12,
    unit: 'm',
    source: 'common practice',
    what: 'Acoustic centre of a shallow box before the wall that carries it.',
  },
  'flush-within': {
    value: 0.02,
    unit: 'm',
    source: 'our own convention',
    what: 'A baffle nearer to its surface than this is flush with it.',
  },
  'bracket-reach': {
    value: 0.35,
    unit: 'm',
    source: 'common practice',
    what: 'Farther than this from every surface a loudspeaker stands: as far as a wall bracket reaches.',
  },
  'stand-from-ears': {
    value: 1.2,
    unit: 'm',
    source: 'common practice',
    what: 'A stand comes no nearer to the ears than this.',
  },
  'stand-off-wall': {
    value: 0.4,
    unit: 'm',
    source: 'common practice',
    what: 'A stand comes no nearer to the wall than this.',
  },
  'stand-heights': {
    value: [0.5, 1.6],
    unit: 'm',
    source: 'common practice',
    what: 'A stand holds a loudspeaker between these heights.',
  },
  'picture-frame-gap': {
    value: 0.02,
    unit: 'm',
    source: 'common practice',
    what: 'Gap for a frame between a loudspeaker and the picture.',
  },
  'picture-hidden': {
    value: 0.02,
    unit: 'm',
    source: 'our own convention',
    what: 'Less of the picture than this may be hidden from a seat.',
  },
  'angle-allowance': {
    value: 0.5,
    unit: 'deg',
    source: 'our own convention',
    what: 'Allowance around a window of angles: what a tape measure can set, 9 mm at 1 m.',
  },
  'angle-warning': {
    value: 5,
    unit: 'deg',
    source: 'our own convention',
    what: 'A loudspeaker that is farther outside its window than this is a warning.',
  },
  'centre-height-traded': {
    value: 15,
    unit: 'deg',
    source: 'common practice',
    what: 'A picture keeps most centre loudspeakers so far from ear height: no more than a note.',
  },
  'wide-off-axis': {
    value: 30,
    unit: 'deg',
    source: 'common practice',
    what: 'Seats farther off the axis than this hear less treble from most boxes.',
  },
  'least-from-ears': {
    value: 0.3,
    unit: 'm',
    source: 'our own convention',
    what: 'Nearer to the ears than this is no place for a loudspeaker: angle, delay and level say nothing.',
  },
  'degree-along-wall': {
    value: 0.05,
    unit: 'm',
    source: 'our own convention',
    what: 'A degree outside its window weighs as much as this way along the wall.',
  },
  'degrees-per-db': {
    value: 1,
    unit: 'deg',
    source: 'our own convention',
    what: 'A decibel that one seat hears more than another counts like so many degrees.',
  },
  'uneven-pair-weight': {
    value: 2,
    unit: 'number',
    source: 'our own convention',
    what: 'A degree by which a pair is uneven counts like so many degrees outside a window.',
  },
  'nominal-azimuth-weight': {
    value: 0.02,
    unit: 'number',
    source: 'our own convention',
    what: 'A degree away from the nominal azimuth counts like so many degrees outside a window.',
  },
  'pair-unlike-mounts': {
    value: 5,
    unit: 'deg',
    source: 'our own convention',
    what: 'What a pair that is held in two ways costs.',
  },
  'mount-costs': {
    value: {
      'on-wall': 0,
      'behind-screen': 0,
      soffit: 1,
      ceiling: 1,
      'in-wall': 10,
      stand: 15,
    },
    unit: 'deg',
    source: 'our own convention',
    what: 'What a mount costs against a cabinet on the wall: more work, or floor that is taken.',
  },
} as const satisfies Readonly<Record<string, Figure>>;
