/**
 * The one table of figures that are common practice or our own convention: what a published source
 * states stands beside its formula instead. Code takes a figure by its id.
 */

import { BASS } from './bass';
import { DRAWING } from './drawing';
import type { Figure } from './figure';
import { PEOPLE_AND_BUILDING } from './people';
import { SOUND } from './sound';
import { SPEAKERS } from './speakers';

const FIGURES = { ...PEOPLE_AND_BUILDING, ...SPEAKERS, ...BASS, ...SOUND, ...DRAWING };

export type FigureId = keyof typeof FIGURES;

/** The table is constant, but no code may count on today's value of a figure. */
type Widened<T> = T extends number
  ? number
  : T extends object
    ? { readonly [K in keyof T]: Widened<T[K]> }
    : T;

/** The figure in the unit that the table names. */
export const practice = <Id extends FigureId>(id: Id): Widened<(typeof FIGURES)[Id]['value']> =>
  FIGURES[id].value as Widened<(typeof FIGURES)[Id]['value']>;

/** The source as a finding names it. */
export const practiceSource = (id: FigureId): Figure['source'] => FIGURES[id].source;

/** Every figure with its id, in the order of the table. */
export const practiceTable = (): readonly (readonly [string, Figure])[] => Object.entries(FIGURES);
