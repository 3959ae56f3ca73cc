/** How a drawing is made. */

import type { Figure } from './figure';

export const DRAWING = {
  'figure-lettering': {
    value: 3.5,
    unit: 'mm',
    source: 'common practice',
    after: 'ISO 3098',
    what: 'Height of the figures of the shell on paper.',
  },
  'name-lettering': {
    value: 2.5,
    unit: 'mm',
    source: 'common practice',
    after: 'ISO 3098',
    what: 'Height of names on paper.',
  },
  'line-weights': {
    value: { cut: 0.5, seen: 0.25, light: 0.18 },
    unit: 'mm',
    source: 'common practice',
    after: 'ISO 128',
    what: 'Widths of lines on paper, a step of √2 twice apart.',
  },
  'hatch-distance': {
    value: 0.08,
    unit: 'm',
    source: 'our own convention',
    what: 'Distance of the lines of a hatch from each other: 1.6 mm at 1 to 50.',
  },
  'plan-cut': {
    value: 1.2,
    unit: 'm',
    source: 'common practice',
    what: 'Height at which plans are cut.',
  },
  'drawn-opening-depth': {
    value: 0.08,
    unit: 'm',
    source: 'our own convention',
    what: 'Drawn depth of an opening in its wall.',
  },
  'drawn-panel-depth': {
    value: 0.05,
    unit: 'm',
    source: 'our own convention',
    what: 'Drawn depth of a panel before its wall.',
  },
} as const satisfies Readonly<Record<string, Figure>>;
