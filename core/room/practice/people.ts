/** What people need of a room, and what the building and its fittings take of it. */

import { METRES_PER_INCH } from '../../quantity/length';
import type { Figure } from './figure';

export const PEOPLE_AND_BUILDING = {
  'seat-pitch': {
    value: 0.7,
    unit: 'm',
    source: 'common practice',
    what: 'From the middle of a seat to the middle of the next one in its row.',
  },
  'ear-height': {
    value: 1.1,
    unit: 'm',
    source: 'common practice',
    what: 'Ears above the floor of the row, in an upright home-cinema seat.',
  },
  'eye-height': {
    value: 1.2,
    unit: 'm',
    source: 'common practice',
    what: 'Eyes above the floor of the row, in an upright home-cinema seat.',
  },
  'seat-behind-ears': {
    value: 0.3,
    unit: 'm',
    source: 'common practice',
    what: 'What a seat covers behind the ears.',
  },
  'seat-before-ears': {
    value: 0.6,
    unit: 'm',
    source: 'common practice',
    what: 'What a seat covers before the ears.',
  },
  'row-spacing': {
    value: 0.9,
    unit: 'm',
    source: 'common practice',
    what: 'Ears of two rows are no nearer than this: legroom and a back.',
  },
  'row-sharing': {
    value: 0.6,
    unit: 'm',
    source: 'common practice',
    what: 'Two rows whose ears are nearer than this share a place.',
  },
  'ears-off-wall': {
    value: 0.3,
    unit: 'm',
    source: 'our own convention',
    what: 'Ears stay so far from the walls, where a row is moved.',
  },
  'walk-width': {
    value: 0.6,
    unit: 'm',
    source: 'common practice',
    what: 'Least width that one person walks through.',
  },
  'walk-off-wall': {
    value: 0.3,
    unit: 'm',
    source: 'our own convention',
    what: 'Nobody walks nearer to a wall than this.',
  },
  headroom: {
    value: 2,
    unit: 'm',
    source: 'common practice',
    what: 'What hangs over a place where people walk hangs no lower than this.',
  },
  'head-clearance': {
    value: 0.3,
    unit: 'm',
    source: 'common practice',
    what: 'Ears are no nearer to a cabinet than this.',
  },
  'casing-depth': {
    value: 0.05,
    unit: 'm',
    source: 'common practice',
    what: 'How far the casing of a door or a window stands before the wall.',
  },
  'screen-depth': {
    value: 0.05,
    unit: 'm',
    source: 'common practice',
    what: 'How far a screen and its frame stand before the wall.',
  },
  'stud-depth': {
    value: 0.089,
    unit: 'm',
    source: 'common practice',
    what: 'Depth of the studs of a wall (3 1/2 in), and of what is built between them.',
  },
  'stud-pitch': {
    value: { metric: 0.4, imperial: 16 * METRES_PER_INCH },
    unit: 'm',
    source: 'common practice',
    what: 'From the middle of a stud to the middle of the next: 400 mm, or 16 in.',
  },
  'usual-openings': {
    value: {
      metric: { door: [80, 200], window: [90, 60], sill: 120, passage: [90, 200] },
      imperial: { door: [32, 80], window: [36, 24], sill: 48, passage: [36, 80] },
    },
    unit: 'cm, in',
    source: 'common practice',
    what: 'Width and height of a door, a window and a passage as they are sold, and the height of a sill.',
  },
  'usual-panel': {
    value: {
      metric: { size: [60, 120], aboveFloor: 60 },
      imperial: { size: [24, 48], aboveFloor: 24 },
    },
    unit: 'cm, in',
    source: 'common practice',
    what: 'Width and height of an absorber panel as it is sold, and how high it is hung.',
  },
  'lumber-thickness': {
    value: 1.5,
    unit: 'in',
    source: 'common practice',
    what: 'Actual thickness of North American nominal lumber of two inches.',
  },
  'lumber-widths': {
    value: { '2x4': 3.5, '2x6': 5.5, '2x8': 7.25, '2x10': 9.25, '2x12': 11.25 },
    unit: 'in',
    source: 'common practice',
    what: 'Actual widths of North American nominal lumber.',
  },
  'plywood-thickness': {
    value: 0.75,
    unit: 'in',
    source: 'common practice',
    what: 'Floor sheathing of a platform in North America.',
  },
  'timber-thickness': {
    value: 45,
    unit: 'mm',
    source: 'common practice',
    what: 'Thickness of planed construction timber in metric countries.',
  },
  'timber-widths': {
    value: [95, 120, 145, 170, 195, 220],
    unit: 'mm',
    source: 'common practice',
    what: 'Usual widths of planed construction timber in metric countries.',
  },
  'floor-board-thickness': {
    value: 22,
    unit: 'mm',
    source: 'common practice',
    what: 'Floor board of a platform in metric countries.',
  },
  'most-tiers': {
    value: 3,
    unit: 'number',
    source: 'our own convention',
    what: 'Tiers of a platform that are built on one another at most.',
  },
} as const satisfies Readonly<Record<string, Figure>>;
